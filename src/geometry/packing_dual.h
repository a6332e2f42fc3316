// Dual feasible functions: functions of a length, as a fraction of a whole, such that lengths which
// fit side by side in x have values that sum to at most the value of x. They turn lengths into
// weights for the bounds of packing_bound.h. S. Fekete, J. Schepers, "New classes of fast lower
// bounds for bin packing problems", Mathematical Programming 91 (2001) 11-31.
#pragma once

#include <cstddef>
#include <set>
#include <vector>

namespace splay::packing {

struct DualFeasible {
  int parts = 0;     // if any: (parts + 1) x rounded down, over parts; whole numbers give x itself
  double small = 0;  // if not: x, but 0 under `small` and 1 over 1 - small
  double operator()(double x) const;
};

// A choice of such functions for lengths in [0, 1]: the identity, roundings into up to `most_parts`
// parts, and thresholds at up to about `most_small` of the lengths.
std::vector<DualFeasible> dual_feasible_functions(const std::set<double>& lengths, int most_parts,
                                                  std::size_t most_small);

}  // namespace splay::packing
