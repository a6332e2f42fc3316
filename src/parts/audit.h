// The audit after building: what may not be so in any piece.
#pragma once

#include "model/project.h"
#include "parts/part.h"

namespace splay::parts {

// Findings: "overlap" (two parts in the same place), "floating" (a part that touches nothing),
// "open-joint" (mated surfaces that don't meet), "nothing-left" (a part cut away),
// "too-large-for-stock", "thickness" (a part thicker than its stock).
std::vector<Finding> audit(const Assembly& assembly, const model::Project& project);

// Which surfaces are taken for a joint's own: no further from where the joint puts them, and no
// more turned from there.
struct Search {
  double reach = 1;        // mm
  double cosine = 0.9999;  // of about 0.8 degrees
};
// Of parts whose cuts are as far off as printed figures and a hand's paring may be.
inline constexpr Search loose_search{3, 0.96};  // of about 16 degrees

// How far the two surfaces of a mate are apart at the most, mm, over their common area; and that
// area. The gap is infinite when they share none.
struct MateMeasure {
  double gap = 0;
  double area = 0;
};
MateMeasure measure(const Mate& mate, const Solid& a, const Solid& b, const Search& search = {});

// The surface that a mate's two parts have in common: convex anticlockwise pieces in the x and y of
// a frame on the mate's plane, its z along the mate's normal.
struct Contact {
  Rigid frame;
  std::vector<Polygon> pieces;
};
Contact contact(const Mate& mate, const Solid& a, const Solid& b);

// The largest of its mates; `search` is asked for those that show no surface in common else.
double joint_gap(const Joint& joint, const Assembly& assembly, const Search& search = {});

}  // namespace splay::parts
