// The directions along which parts may come apart, each once however many faces suggest it.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <unordered_map>

#include "fabrication/gluing.h"

namespace splay::fabrication {

namespace {

constexpr double same_way = 1e-9;  // sine of the angle between directions that are one

// Directions found again by the little cube that their ends lie in.
class WayList {
 public:
  // The number of a direction, entered with its opposite when it is new; -1 when it has no length.
  int number_of(Vec3 way) {
    const double length = norm(way);
    if (length < same_way) return -1;
    const Vec3 zero;  // added, it makes -0 to 0
    const Vec3 u = way * (1 / length) + zero;
    if (const int known = find(u); known >= 0) return known;
    const int number = static_cast<int>(ways.size());
    enter(u);
    enter(-u + zero);
    return number;
  }

  void add_both(Vec3 way, std::vector<int>& found) {
    const int number = number_of(way);
    if (number >= 0) found.insert(found.end(), {number & ~1, number | 1});
  }

  std::vector<Vec3> ways;

 private:
  static constexpr double pitch = 1e-4;

  // Shifted, so that round figures lie inside their cubes.
  static std::int64_t step(double at) { return std::llround(std::floor((at + 3.0000371) / pitch)); }
  static std::int64_t cube(std::int64_t x, std::int64_t y, std::int64_t z) {
    return (x * 100000 + y) * 100000 + z;
  }

  int find(Vec3 u) const {
    constexpr double reach = 10 * same_way;
    for (std::int64_t x = step(u.x - reach); x <= step(u.x + reach); ++x)
      for (std::int64_t y = step(u.y - reach); y <= step(u.y + reach); ++y)
        for (std::int64_t z = step(u.z - reach); z <= step(u.z + reach); ++z) {
          const auto here = cubes_.find(cube(x, y, z));
          if (here == cubes_.end()) continue;
          for (const int number : here->second)
            if (parallel(ways[static_cast<std::size_t>(number)], u)) return number;
        }
    return -1;
  }

  void enter(Vec3 u) {
    cubes_[cube(step(u.x), step(u.y), step(u.z))].push_back(static_cast<int>(ways.size()));
    ways.push_back(u);
  }

  std::unordered_map<std::int64_t, std::vector<int>> cubes_;
};

void tidy(std::vector<int>& numbers) {
  std::ranges::sort(numbers);
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
}

}  // namespace

bool parallel(Vec3 a, Vec3 b) { return norm(cross(a, b)) < same_way; }

bool guides(const parts::Fitting& fitting) {
  return fitting.kind == "dowel" || fitting.kind == "loose tenon";
}

LikelyWays likely_ways(const parts::Assembly& assembly) {
  WayList list;
  LikelyWays likely;
  for (const Vec3 axis : {Vec3{0, 0, 1}, Vec3{1, 0, 0}, Vec3{0, 1, 0}})
    list.add_both(axis, likely.of_piece);
  for (const parts::Fitting& fitting : assembly.fittings) {
    likely.of_fitting.emplace_back();
    if (guides(fitting)) list.add_both(fitting.axis, likely.of_fitting.back());
  }
  for (const parts::Slide& slide : assembly.slides) list.add_both(slide.way, likely.of_piece);
  for (const parts::Joint& joint : assembly.joints) {
    std::vector<int>& found = likely.of_joint.emplace_back();
    std::vector<Vec3> normals;
    for (const parts::Mate& mate : joint.mates) {
      list.add_both(mate.plane.n, found);
      if (std::ranges::none_of(normals, [&](Vec3 n) { return parallel(n, mate.plane.n); }))
        normals.push_back(mate.plane.n);
    }
    for (const Vec3 a : normals)
      for (const Vec3 b : normals) list.add_both(cross(a, b), found);
    tidy(found);
  }
  for (const parts::Part& part : assembly.parts) {
    std::vector<int>& found = likely.of_part.emplace_back();
    for (const Vec3 axis : {part.place.ex, part.place.ey, part.place.ez})
      list.add_both(axis, found);
  }
  tidy(likely.of_piece);
  likely.ways = std::move(list.ways);
  return likely;
}

}  // namespace splay::fabrication
