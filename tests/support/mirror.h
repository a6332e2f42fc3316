// A piece and its mirror image, compared solid by solid.
#pragma once

#include <cmath>
#include <functional>
#include <vector>

#include "support/piece.h"

namespace splay::test {

inline Box bounds_of(const std::vector<Solid>& solids) {
  Box all;
  for (const Solid& solid : solids) {
    const Box box = solid.bounds();
    all.add(box.low);
    all.add(box.high);
  }
  return all;
}

// Alike to 1e-5 mm: as far in every one of these directions, the same volume, and (unless only the
// outside matters) the same area and middle.
inline bool same_solid(const Solid& one, const Solid& other, bool outside_only) {
  for (const Vec3 direction : {Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}, Vec3{0.6, 0.8, 0},
                               Vec3{0.8, 0, 0.6}, Vec3{0, 0.6, -0.8}, unit(Vec3{-2, 1, 2})}) {
    const auto a = one.extent(direction), b = other.extent(direction);
    if (std::abs(a[0] - b[0]) > 1e-5 || std::abs(a[1] - b[1]) > 1e-5) return false;
  }
  if (std::abs(one.volume() - other.volume()) > 1e-8 * one.volume()) return false;
  return outside_only || (std::abs(one.area() - other.area()) < 1e-7 * one.area() &&
                          norm(one.centroid() - other.centroid()) < 1e-5);
}

// Parts of a piece that have no image where a mirror that swaps left and right puts it, whatever
// their names, a line each. `outside_only` picks the parts of which only that is compared.
inline std::string unmirrored(const Built& built, const Built& mirror,
                              const std::function<bool(const parts::Part&)>& outside_only) {
  std::vector<Solid> images, found;
  for (const parts::Part& part : built.plan.assembly.parts)
    images.push_back(part.world.mirrored_x());
  for (const parts::Part& part : mirror.plan.assembly.parts) found.push_back(part.world);
  if (images.size() != found.size() ||
      built.plan.assembly.joints.size() != mirror.plan.assembly.joints.size())
    return "mirrored: other parts or joints\n";
  if (images.empty()) return "";
  Rigid shift;
  shift.origin = bounds_of(found).low - bounds_of(images).low;
  std::vector<char> taken(found.size(), 0);
  std::string text;
  for (std::size_t i = 0; i < images.size(); ++i) {
    const parts::Part& part = built.plan.assembly.parts[i];
    const Solid image = images[i].transformed(shift);
    const bool outside = outside_only(part);
    std::size_t at = 0;
    while (at < found.size() && (taken[at] != 0 || !same_solid(image, found[at], outside))) ++at;
    if (at == found.size())
      text += "mirrored: no image of " + part.name + "\n";
    else
      taken[at] = 1;
  }
  return text;
}

inline void check_mirrored(const Built& built, const Built& mirror) {
  CHECK(unmirrored(built, mirror, [](const parts::Part&) { return false; }) == "");
}

}  // namespace splay::test
