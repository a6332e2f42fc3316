// Points and directions in the plane and in space. Coordinates are millimetres; right-handed axes.
#pragma once

#include <cmath>

namespace splay {

struct Vec2 {
  double x = 0, y = 0;
  constexpr Vec2 operator+(Vec2 o) const { return {x + o.x, y + o.y}; }
  constexpr Vec2 operator-(Vec2 o) const { return {x - o.x, y - o.y}; }
  constexpr Vec2 operator-() const { return {-x, -y}; }
  constexpr Vec2 operator*(double k) const { return {x * k, y * k}; }
  constexpr bool operator==(const Vec2&) const = default;
};
constexpr Vec2 operator*(double k, Vec2 v) { return v * k; }
constexpr double dot(Vec2 a, Vec2 b) { return a.x * b.x + a.y * b.y; }
constexpr double cross(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }
inline double norm(Vec2 a) { return std::hypot(a.x, a.y); }
inline Vec2 unit(Vec2 a) { return a * (1 / norm(a)); }
constexpr Vec2 left_of(Vec2 a) { return {-a.y, a.x}; }  // turned a quarter anticlockwise

struct Vec3 {
  double x = 0, y = 0, z = 0;
  constexpr Vec3 operator+(Vec3 o) const { return {x + o.x, y + o.y, z + o.z}; }
  constexpr Vec3 operator-(Vec3 o) const { return {x - o.x, y - o.y, z - o.z}; }
  constexpr Vec3 operator-() const { return {-x, -y, -z}; }
  constexpr Vec3 operator*(double k) const { return {x * k, y * k, z * k}; }
  constexpr bool operator==(const Vec3&) const = default;
};
constexpr Vec3 operator*(double k, Vec3 v) { return v * k; }
constexpr double dot(Vec3 a, Vec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
constexpr Vec3 cross(Vec3 a, Vec3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double norm(Vec3 a) { return std::sqrt(dot(a, a)); }
inline Vec3 unit(Vec3 a) { return a * (1 / norm(a)); }

// A unit vector square to another, which has some length; of the many always the same.
inline Vec3 square_to(Vec3 a) {
  return unit(cross(a, std::abs(a.x) < 0.7 ? Vec3{1, 0, 0} : Vec3{0, 1, 0}));
}

// The angle between two directions in radians, 0 to pi, exact near both ends.
inline double angle_between(Vec3 a, Vec3 b) { return std::atan2(norm(cross(a, b)), dot(a, b)); }

}  // namespace splay
