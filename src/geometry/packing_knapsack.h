// The constrained guillotine knapsack: the greatest value that can be cut from one sheet with at
// most the offered number of copies of every piece. Exact when the effort suffices.
//
// Rectangles are built from smaller ones, side by side or one above the other, the most promising
// first: P. Wang, "Two algorithms for constrained two-dimensional cutting stock problems",
// Operations Research 31 (1983); K. Viswanathan, A. Bagchi, "Best-first search methods for
// constrained two-dimensional cutting stock problems", Operations Research 41 (1993). What the area
// outside a rectangle can still bring is bounded by the unconstrained table (packing_table.h), at
// prices that charge for each copy taken of a scarce piece (Lagrangian relaxation; N. Christofides,
// E. Hadjiconstantinou, "An exact algorithm for orthogonal 2-D cutting problems using guillotine
// cuts", European Journal of Operational Research 83 (1995)).
#pragma once

#include "geometry/packing_table.h"

namespace splay::packing {

struct Knapsack {
  double value = 0;
  double bound = 0;     // no layout is worth more
  bool proven = false;  // value equals the bound
  std::int64_t steps = 0;
  CutTree tree;  // pieces are indices of offers
};

// A step is one rectangle taken up to be joined with all earlier ones. Sheet sizes as for
// GuillotineTable.
Knapsack best_cutting(const std::vector<Offer>& offers, Units width, Units height,
                      const Effort& effort);

}  // namespace splay::packing
