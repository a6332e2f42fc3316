#include "parts/part.h"

#include <cmath>

namespace splay::parts {

Box bounds(const Assembly& assembly) {
  Box box;
  for (const Part& part : assembly.parts)
    for (const Vec3& vertex : part.world.vertices()) box.add(vertex);
  return box;
}

Vec3 local_front(const Part& part) { return part.place.local_direction({0, -1, 0}); }
Vec3 local_up(const Part& part) { return part.place.local_direction({0, 0, 1}); }

const std::string& side_name(const Part& part, Side side) {
  return part.side_names[static_cast<std::size_t>(side)];
}

Side opposite(Side side) { return static_cast<Side>(static_cast<int>(side) ^ 1); }

Vec3 outward(Side side) {
  const double sign = (static_cast<int>(side) & 1) != 0 ? 1 : -1;
  switch (static_cast<int>(side) / 2) {
    case 0:
      return {sign, 0, 0};
    case 1:
      return {0, sign, 0};
    default:
      return {0, 0, sign};
  }
}

Side front_edge(const Part& part) { return local_front(part).y > 0.5 ? Side::y_high : Side::y_low; }

std::array<Side, 2> datums(const Part& part, Side side) {
  std::array<Side, 2> found{};
  std::size_t n = 0;
  for (const Side datum : {Side::x_low, front_edge(part), Side::z_high})
    if (datum != side && datum != opposite(side) && n < 2) found[n++] = datum;
  return found;
}

}  // namespace splay::parts
