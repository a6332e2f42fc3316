// The regions that directed segments in one plane enclose. Internal to src/geometry.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "geometry/vec.h"

namespace splay {

// From vertex a to vertex b: the winding number is `weight` greater on the left than on the right.
struct WeightedSegment {
  std::int32_t a = 0, b = 0;
  int weight = 1;
};

// Sums up coincident segments; what cancels is gone. Sorted by vertex, a < b.
std::vector<WeightedSegment> net_segments(std::vector<WeightedSegment> segments);

// A loop of the arrangement with the region on its left; positive area when it is an outline.
struct PlanarCycle {
  std::vector<std::int32_t> loop;
  int winding = 0;  // of the region on its left
  double area = 0;
};

// An orthonormal basis of a plane: right-handed with its normal.
struct PlaneBasis {
  Vec3 x, y;
  explicit PlaneBasis(Vec3 normal);
  Vec2 flat(Vec3 p) const { return {dot(p, x), dot(p, y)}; }
};

// The cycles of net segments that cross nowhere but in common vertices. Cycles touch themselves in
// no vertex. one_side: +1 when every winding number is 0 or 1, -1 when every one is 0 or -1 (saves
// time), 0 when unknown.
std::vector<PlanarCycle> planar_cycles(std::span<const WeightedSegment> net,
                                       std::span<const Vec3> vertices, const PlaneBasis& basis,
                                       int one_side);

// Outlines each with the holes in them: loops of vertices, outline first, region on the left.
struct PlanarFace {
  std::vector<std::vector<std::int32_t>> loops;
};
std::vector<PlanarFace> planar_faces(std::vector<PlanarCycle> cycles,
                                     std::span<const Vec3> vertices, const PlaneBasis& basis);

}  // namespace splay
