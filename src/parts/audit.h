// The audit after building: what may not be so in any piece.
#pragma once

#include "model/project.h"
#include "parts/part.h"

namespace splay::parts {

// Findings: "overlap" (two parts in the same place), "floating" (a part that touches nothing),
// "open-joint" (mated surfaces that don't meet), "nothing-left" (a part cut away),
// "too-large-for-stock", "thickness" (a part thicker than its stock).
std::vector<Finding> audit(const Assembly& assembly, const model::Project& project);

// How far the two surfaces of a mate are apart at the most, mm, over their common area; and that
// area. The gap is infinite when they share none.
struct MateMeasure {
  double gap = 0;
  double area = 0;
};
MateMeasure measure(const Mate& mate, const Solid& a, const Solid& b);

// The surface that a mate's two parts have in common: convex anticlockwise pieces in the x and y of
// a frame on the mate's plane, its z along the mate's normal.
struct Contact {
  Rigid frame;
  std::vector<Polygon> pieces;
};
Contact contact(const Mate& mate, const Solid& a, const Solid& b);

double joint_gap(const Joint& joint, const Assembly& assembly);  // the largest of its mates

}  // namespace splay::parts
