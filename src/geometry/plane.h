// Planes and rigid motions.
#pragma once

#include <vector>

#include "geometry/vec.h"

namespace splay {

// The points p with dot(n, p) == d. n is a unit vector and points outwards: as a bound of a region
// a plane keeps dot(n, p) <= d.
struct Plane {
  Vec3 n{0, 0, 1};
  double d = 0;
  static Plane through(Vec3 point, Vec3 normal) {
    const Vec3 u = unit(normal);
    return {u, dot(u, point)};
  }
  constexpr double distance(Vec3 p) const { return dot(n, p) - d; }  // positive outside
  constexpr Plane flipped() const { return {-n, -d}; }
};

// A convex region: the points inside every plane. It may be unbounded.
using Region = std::vector<Plane>;

// A frame or rigid motion: local (x, y, z) goes to origin + x*ex + y*ey + z*ez. The axes are
// orthonormal and right-handed.
struct Rigid {
  Vec3 ex{1, 0, 0}, ey{0, 1, 0}, ez{0, 0, 1};
  Vec3 origin;
  constexpr Vec3 direction(Vec3 v) const { return ex * v.x + ey * v.y + ez * v.z; }
  constexpr Vec3 point(Vec3 p) const { return origin + direction(p); }
  constexpr Plane plane(const Plane& p) const {
    const Vec3 n = direction(p.n);
    return {n, p.d + dot(n, origin)};
  }
  constexpr Vec3 local_direction(Vec3 v) const { return {dot(v, ex), dot(v, ey), dot(v, ez)}; }
  constexpr Vec3 local_point(Vec3 p) const { return local_direction(p - origin); }
  constexpr Plane local_plane(const Plane& p) const {
    return {local_direction(p.n), p.d - dot(p.n, origin)};
  }
  constexpr Rigid inverse() const {
    Rigid r{{ex.x, ey.x, ez.x}, {ex.y, ey.y, ez.y}, {ex.z, ey.z, ez.z}, {}};
    r.origin = -r.direction(origin);
    return r;
  }
  // First `inner`, then this.
  constexpr Rigid operator*(const Rigid& inner) const {
    return {direction(inner.ex), direction(inner.ey), direction(inner.ez), point(inner.origin)};
  }
};

// The frame at `origin` with local x along `x` and local z along `z` made square to x.
inline Rigid frame(Vec3 origin, Vec3 x, Vec3 z) {
  const Vec3 ex = unit(x);
  const Vec3 ey = unit(cross(z, ex));
  return {ex, ey, cross(ex, ey), origin};
}

// The turn by `radians` about a line through `at` along the unit vector `axis`, anticlockwise as
// seen against its direction.
inline Rigid turn_about(Vec3 at, Vec3 axis, double radians) {
  const double c = std::cos(radians), s = std::sin(radians);
  const auto turned = [&](Vec3 v) {
    return v * c + cross(axis, v) * s + axis * (dot(axis, v) * (1 - c));
  };
  Rigid motion{turned({1, 0, 0}), turned({0, 1, 0}), turned({0, 0, 1}), {}};
  motion.origin = at - motion.direction(at);
  return motion;
}

}  // namespace splay
