// The six sides of a board, as steps use them. Internal to src/fabrication.
#pragma once

#include <array>

#include "parts/part.h"

namespace splay::fabrication {

inline constexpr double no_angle = 1e-9;  // radians: less is none
inline constexpr std::array<parts::Side, 6> all_sides = {parts::Side::z_low, parts::Side::z_high,
                                                         parts::Side::y_low, parts::Side::y_high,
                                                         parts::Side::x_low, parts::Side::x_high};

inline bool along_x(parts::Side side) {
  return side == parts::Side::x_low || side == parts::Side::x_high;
}
inline bool same_axis(parts::Side a, parts::Side b) { return a == b || a == parts::opposite(b); }
// The side whose outward direction is nearest to an axis-parallel direction.
inline parts::Side side_towards(Vec3 way) {
  for (const parts::Side side : all_sides)
    if (dot(parts::outward(side), way) > 0.5) return side;
  return parts::Side::x_low;
}

}  // namespace splay::fabrication
