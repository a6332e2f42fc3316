// Cutting lengths from bars: bin packing and cutting stock in one dimension, with bars of several
// lengths and with parts of bars that cannot be used.
//
// Bars are filled one by one by a bounded search for the best subset of the pieces (minimum bin
// slack: J. Gupta, J. Ho, "A new heuristic algorithm for the one-dimensional bin-packing problem",
// Production Planning & Control 10 (1999)), then a few bars at a time are emptied and filled anew
// towards a lower cost (after K. Fleszar, K. Hindi, "New heuristics for one-dimensional
// bin-packing", Computers & Operations Research 29 (2002) 821-839).
//
// Lengths are whole units without kerf (packing_types.h); packing_boards.h works in millimetres.
#pragma once

#include "geometry/packing_types.h"

namespace splay::packing {

// A kind of bar: the lengths of its usable stretches. `count` is -1 for as many as wanted.
struct Bar {
  std::vector<Units> stretches;
  std::int64_t count = -1;
  double cost = 1;
};

struct FilledBar {
  int bar = -1;
  std::vector<std::vector<int>> pieces;  // indices, by stretch
};

struct LengthPlan {
  std::vector<FilledBar> bars;
  std::vector<int> unplaced;
  double cost = 0;
  double bound = 0;  // no plan costs less
  std::int64_t steps = 0;
};

// A step empties and refills a few bars.
LengthPlan cut_lengths(const std::vector<Bar>& bars, const std::vector<Units>& lengths,
                       const Effort& effort);

// The proven lower bound on the cost (dual feasible functions).
double length_bound(const std::vector<Bar>& bars, const std::vector<Units>& lengths);

}  // namespace splay::packing
