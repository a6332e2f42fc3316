// Crosscutting lengths from boards: boards of several lengths, defects to be cut around, kerf and
// end trims. Millimetres, measured from the left end of a board. The search is that of
// packing_lengths.h.
//
// The kerf lies between neighbours; the last cut of a stretch may run partly off its end, so that n
// parts need n lengths and n - 1 kerfs at least.
#pragma once

#include "geometry/packing_types.h"

namespace splay::packing {

struct Interval {
  double from = 0, to = 0;
};

// Boards alike in length and defects. Boards with defects of their own are entries with count 1.
struct BoardStock {
  double length = 0;
  std::int64_t count = -1;  // -1: as many as wanted
  double cost = 1;
  double trim_left = 0, trim_right = 0;  // cut away at the ends, the kerf of that cut included
  std::vector<Interval> blocked;         // defects: no part may reach into one
};

struct BoardPart {
  double length = 0;
  int count = 1;
};

struct BoardTask {
  std::vector<BoardStock> boards;
  std::vector<BoardPart> parts;
  double kerf = 0;
  double least_off_cut = 200;  // a clear leftover of at least this counts as an off-cut
};

struct BoardLayout {
  struct Placed {
    int part = -1;
    double at = 0;  // left end
    double length = 0;
  };
  int stock = -1;
  std::vector<Placed> parts;       // from left to right
  std::vector<double> cuts;        // left side of each kerf, from left to right
  std::vector<Interval> off_cuts;  // from left to right
};

struct BoardPlan {
  std::vector<BoardLayout> layouts;  // by stock
  std::vector<int> unplaced;         // part index, once for each copy that fits no board on hand
  double cost = 0;
  double bound = 0;  // proven: cutting all parts costs no less; 0 if some are unplaced
  std::int64_t steps = 0;
};

// The parts of a board that can be used: between the end trims, around the defects, and so that a
// cut on each side of a defect narrower than the kerf still takes only one kerf.
std::vector<Interval> clear_stretches(const BoardStock& board, double kerf);

// Throws std::invalid_argument if a length is not positive, or a kerf, trim or cost is negative.
BoardPlan plan_boards(const BoardTask& task, const Effort& effort);

}  // namespace splay::packing
