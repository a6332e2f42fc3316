// The front plane of a piece as paper: (x, y) on it is (x, z) in the world, the world's y is depth.
#pragma once

#include "constructs/ring_layout.h"
#include "geometry/plane.h"

namespace splay::constructs {

inline Vec3 lift(Vec2 p, double y = 0) { return {p.x, y, p.y}; }
inline Vec3 lift_direction(Vec2 v) { return {v.x, 0, v.y}; }
inline Plane lift(const Line2& line) { return {lift_direction(line.n), line.d}; }
inline Line2 flipped(const Line2& line) { return {-line.n, -line.d}; }
inline constexpr Vec3 world_front{0, -1, 0};

// A direction along a member that a maker reads naturally: upwards when it rises more than it runs,
// else to the right.
inline Vec2 reading_direction(Vec2 v) {
  const bool steep = std::abs(v.y) > std::abs(v.x) * 1.0000001;
  return (steep ? v.y : v.x) < 0 ? -v : v;
}

}  // namespace splay::constructs
