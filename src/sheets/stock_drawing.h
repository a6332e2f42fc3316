// The drawing of one sheet or board with its parts, cuts and leftovers. Internal to src/sheets.
#pragma once

#include "drafting/scale.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// How a layout lies on paper. Boards may be drawn wider than they are, for the sake of their marks.
struct StockScale {
  drafting::Scale along;  // and across, times `widened`
  int widened = 1;
  bool upright = false;  // the length up the page
  double length(double mm) const { return mm * along.ratio(); }
  double width(double mm) const { return mm * along.ratio() * widened; }
};

// The least scale at which every part has room for its mark, or the greatest that fits the room
// (paper mm, margins for cut numbers included). `sparing`: a sheet of few parts smaller than that.
StockScale sheet_scale(const Context& context, const fabrication::StockLayout& layout,
                       const fabrication::CutSheet& sheet, drafting::Room2 room, bool sparing);
StockScale board_scale(const Context& context, const fabrication::StockLayout& layout,
                       drafting::Room2 room);

// Parts with their marks (linked), cuts numbered in their order, off-cuts named, waste and defects
// hatched, the grain. Its size on paper is that of the sheet and `stock_margin` on every side.
// What is too small for its words at this scale is left without them and listed.
struct StockDrawing {
  drafting::Picture picture;
  std::vector<std::string> unmarked;  // "C, 3 × 1", "cut 9"
};
StockDrawing stock_drawing(const Context& context, const fabrication::StockLayout& layout,
                           const fabrication::CutSheet& sheet, const StockScale& scale);
inline constexpr double stock_margin = 6;  // mm: cut numbers stand in it
inline constexpr double grain_strip = 5;   // under the drawing

// "off-cut 3": without the stock, which the drawing's heading names.
std::string off_cut_words(const fabrication::Leftover& left);
// "A", "A, strip", "A, resaw into 2": what a piece is marked with.
std::string piece_words(const Context& context, const fabrication::Wanted& wanted);

}  // namespace splay::sheets
