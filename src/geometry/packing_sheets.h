// Cutting rectangular parts from sheets with a saw that cuts from edge to edge: which part lies
// where on which sheet, the cuts in the order to make them, and what is left over. Millimetres; the
// origin of a sheet is its lower left corner, x along its width, y along its height.
//
// The kerf lies between neighbours. Beyond the last part of a strip a cut may run partly off the
// edge, so that a strip of n parts takes n parts and n - 1 kerfs at least. The searches and bounds
// behind this are described, with their papers, in packing_search.h and packing_bound.h.
#pragma once

#include "geometry/packing_types.h"

namespace splay::packing {

// What is cut away along each edge of a sheet before anything else, the kerf of that cut included.
struct EdgeTrim {
  double left = 0, right = 0, bottom = 0, top = 0;
};

// Sheets of one size. Off-cuts on hand are sheets with a count and, as a rule, a low or no cost.
struct SheetStock {
  double width = 0;
  double height = 0;
  std::int64_t count = -1;  // -1: as many as wanted
  double cost = 1;          // of using one; any unit
  EdgeTrim trim;
};

// Parts of one size. Width lies along the sheet's width unless the part may turn by a quarter.
struct SheetPart {
  double width = 0;
  double height = 0;
  int count = 1;
  bool may_turn = false;  // false: the grain is kept
};

// Copies of parts that must come from one strip in the order given, from the left along x or from
// the bottom along y, next to each other. Each entry takes one copy of a part from its count. If
// all of them may turn, the strip may turn as a whole.
struct Sequence {
  std::vector<int> parts;
  Axis axis = Axis::x;
};

struct SheetTask {
  std::vector<SheetStock> sheets;
  std::vector<SheetPart> parts;
  std::vector<Sequence> sequences;
  double kerf = 0;
  double least_off_cut = 100;  // a leftover counts as an off-cut if both sides are at least this
};

struct PlacedPart {
  int part = -1;
  int sequence = -1;                           // -1: none
  double x = 0, y = 0, width = 0, height = 0;  // as it lies
  bool turned = false;
};

// One saw cut through a region that has been cut free before. The blade takes the kerf from `at`
// upwards along the axis.
struct SheetCut {
  Axis axis = Axis::x;  // x: a line of constant x
  double at = 0;
  double from = 0, to = 0;  // extent of the region along the line
  bool trim = false;        // an edge of the sheet is trimmed
};

struct OffCut {
  double x = 0, y = 0, width = 0, height = 0;
};

struct SheetLayout {
  int stock = -1;
  std::vector<PlacedPart> parts;  // in the order of cutting
  std::vector<SheetCut> cuts;     // in the order to make them: edges, long cuts, shorter cuts
  std::vector<OffCut> off_cuts;   // largest first
  double area = 0, parts_area = 0, off_cut_area = 0;  // mm2; the rest is waste
};

struct SheetPlan {
  std::vector<SheetLayout> layouts;  // by stock, fullest first
  std::vector<int> unplaced;  // part index, once for each copy that no sheet on hand could take
  double cost = 0;            // of the sheets used
  double bound = 0;  // proven: no guillotine layout of all parts costs less; 0 if some are unplaced
  std::int64_t steps = 0;
};

// Throws std::invalid_argument if a size is not positive, the kerf, a trim or a cost is negative, a
// sequence names a part that is not there or more copies than there are. With no steps the first
// layout is returned at once.
SheetPlan plan_sheets(const SheetTask& task, const Effort& effort);

}  // namespace splay::packing
