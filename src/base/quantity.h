// Length and Angle: what an author states and a page prints.
//
// Inside the geometry coordinates are plain doubles, millimetres and radians; these two types stand
// at the doors (the project file, named results, figures on paper) so that a length is never taken
// for an angle.
#pragma once

#include <compare>
#include <numbers>

namespace splay {

// A length in millimetres. One inch is 25.4 mm exactly (international yard and pound agreement,
// 1959).
struct Length {
  double mm = 0;
  static constexpr double mm_per_inch = 25.4;
  static constexpr Length inches(double in) { return {in * mm_per_inch}; }
  constexpr double inches() const { return mm / mm_per_inch; }
  constexpr auto operator<=>(const Length&) const = default;
};
constexpr Length operator+(Length a, Length b) { return {a.mm + b.mm}; }
constexpr Length operator-(Length a, Length b) { return {a.mm - b.mm}; }
constexpr Length operator*(Length a, double k) { return {a.mm * k}; }
constexpr Length operator*(double k, Length a) { return {a.mm * k}; }

// An angle in radians.
struct Angle {
  double rad = 0;
  static constexpr Angle degrees(double deg) { return {deg * std::numbers::pi / 180}; }
  constexpr double degrees() const { return rad * 180 / std::numbers::pi; }
  constexpr auto operator<=>(const Angle&) const = default;
};

}  // namespace splay
