// Building and reading cut trees (packing_types.h).
#pragma once

#include "geometry/packing_types.h"

namespace splay::packing {

// Divides the region `node` by a cut at `size` from its lower or left side; returns the near side,
// the far side is the next index.
int split_region(CutTree& tree, int node, Axis axis, Units size);

// Cuts `node` down to a size at its lower left corner, the cut that leaves the larger off-cut
// first; returns the region of that size.
int trim_region(CutTree& tree, int node, Units width, Units height);

// The regions that hold a piece, or are left over, as indices, in the order of cutting.
std::vector<int> regions_with(const CutTree& tree, Content content);

// The cuts (indices of split regions) in the order to make them: a sheet is first cut all the way
// down to its strips, then each strip to blocks, so that the few long cuts come first. Cuts of one
// level follow one another, near sides before far ones.
std::vector<int> cut_order(const CutTree& tree);

}  // namespace splay::packing
