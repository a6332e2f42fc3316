// Which blank is cut from which sheet or board, by which cuts, and what is left over.
//
// Frame of a layout: x along the length of the sheet or board, which is its grain, y across it;
// millimetres from its lower left corner. Every layout is a guillotine layout
// (geometry/packing_sheets.h). A board with defects is first crosscut to its clear stretches, and
// each of them is laid out as a small sheet of its own.
#pragma once

#include <string>
#include <vector>

#include "geometry/packing_sheets.h"
#include "model/project.h"

namespace splay::fabrication {

struct Plan;

// What a sheet of the task stands for: a whole sheet, board or off-cut, or a stretch of a board.
struct Supplied {
  std::string name;              // the author's name of an off-cut or of a board on the rack, or ""
  bool on_hand = false;          // not bought
  double length = 0, width = 0;  // of the whole, mm
  double from = 0;               // where the stretch begins, along the board
  int board = -1;                // stretches of one board have one number; -1: the whole
};

// What a part of the task stands for: pieces for one row of the plan.
struct Wanted {
  int row = -1;
  int parts = 0;       // finished parts these pieces make
  int strips = 1;      // glued edge to edge to make one part
  int layers = 1;      // one piece is resawn into so many
  bool turns = false;  // its grain is free
};

struct Leftover {
  std::string name;  // "panel off-cut 1"
  packing::OffCut place;
};

// One drawing: a sheet or board, or several that are cut alike.
struct CutSheet {
  std::string name;                        // "panel 2", "cherry 1 to 3"
  std::size_t supply = 0;                  // index of StockLayout::supplies
  int count = 1;                           // cut alike
  std::vector<packing::PlacedPart> parts;  // `part` is an index of StockLayout::wanted
  std::vector<packing::SheetCut> cuts;     // in the order to make them
  std::vector<double> settings;            // by cut: how wide the side nearer the origin is left
  std::vector<Leftover> off_cuts;          // kept; names of all sheets alike are one
  std::vector<packing::OffCut> waste;
  std::vector<packing::OffCut> defects;  // of a board
};

struct StockLayout {
  std::string stock;
  model::StockKind kind = model::StockKind::sheet;
  packing::SheetTask task;
  packing::SheetPlan plan;
  std::vector<Supplied> supplies;  // by sheet of the task
  std::vector<Wanted> wanted;      // by part of the task
  std::vector<CutSheet> sheets;
  int bought = 0, on_hand = 0;  // sheets or boards used
  int bound = 0;                // proven: no layout of the same blanks buys fewer
  int bought_if_free = 0;    // if the grain of every part were free; `bought` when that gains none
  double shortest_kept = 0;  // mm along the grain: off-cuts shorter than this are waste
  bool boards_named = true;  // false: the author has not said which boards there are
  double used_area = 0, off_cut_area = 0, whole_area = 0;  // mm2: blanks, off-cuts kept, sheets

  double waste_percent() const {
    return whole_area > 0 ? 100 * (1 - (used_area + off_cut_area) / whole_area) : 0;
  }
  const model::Stock& of(const model::Project& project) const {
    return *project.stocks.find(stock);
  }
};

// Lays out the blanks of all rows, stock by stock in file order, into plan.layouts, and appends
// findings: "fits-no-stock" (stop), "unknown-part", "match-broken", "thin-rough-stock",
// "off-its-name" (caution), "grain-costs" and "glued-up" (notes).
void lay_out(Plan& plan, const packing::Effort& effort);

// The task of one stock; without parts when nothing is made of it.
StockLayout sheet_task(const Plan& plan, const model::Stock& stock);
// `wide_rack`: parts may be as wide as the widest board on the rack, else as wide as those that can
// be bought in any number.
StockLayout board_task(const Plan& plan, const model::Stock& stock, bool wide_rack);

// Fills `sheets`, the areas and the numbers of sheets from the task and its plan.
void draw_up(StockLayout& layout);

// What is left of a sheet of the task when its cuts are made, parts and off-cuts taken out.
std::vector<packing::OffCut> waste_of(const packing::SheetTask& task,
                                      const packing::SheetLayout& layout);

}  // namespace splay::fabrication
