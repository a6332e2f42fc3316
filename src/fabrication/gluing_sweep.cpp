// The straight run of one solid past another: separating axes of each pair of convex cells, each
// giving the stretch of the run in which it doesn't separate them.
#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "fabrication/gluing.h"

namespace splay::fabrication {

namespace {

void add_direction(std::vector<Vec3>& list, Vec3 direction) {
  const double length = norm(direction);
  if (length < tolerance::weld) return;
  const Vec3 unit_direction = direction * (1 / length);
  for (const Vec3& known : list)
    if (norm(cross(known, unit_direction)) < 1e-12) return;
  list.push_back(unit_direction);
}

std::vector<SweepSolid::Hull> hulls(const Solid& solid) {
  std::vector<SweepSolid::Hull> result;
  for (const Cell& cell : solid.cells()) {
    SweepSolid::Hull hull;
    for (const CellFace& face : cell.faces) {
      add_direction(hull.normals, solid.planes()[static_cast<std::size_t>(face.plane)].n);
      for (std::size_t i = 0; i < face.loop.size(); ++i) {
        const Vec3 p = solid.vertices()[static_cast<std::size_t>(face.loop[i])];
        const auto next = static_cast<std::size_t>(face.loop[(i + 1) % face.loop.size()]);
        add_direction(hull.edges, solid.vertices()[next] - p);
        if (std::find(hull.points.begin(), hull.points.end(), p) == hull.points.end())
          hull.points.push_back(p);
        hull.box.add(p);
      }
    }
    result.push_back(std::move(hull));
  }
  return result;
}

std::array<double, 2> reach(const std::vector<Vec3>& points, Vec3 axis) {
  std::array<double, 2> result{1e300, -1e300};
  for (const Vec3& p : points) {
    result[0] = std::min(result[0], dot(axis, p));
    result[1] = std::max(result[1], dot(axis, p));
  }
  return result;
}

// The stretch of the run in which the two may still overlap.
struct Stretch {
  double from = 0, to = 1e300;
  bool empty() const { return from >= to; }
  void narrow(std::array<double, 2> a, std::array<double, 2> b, double speed) {
    constexpr double depth = tolerance::on_plane;
    const double first = b[0] + depth - a[1], last = b[1] - depth - a[0];
    if (std::abs(speed) < 1e-12) {
      if (first >= 0 || last <= 0) to = from;
      return;
    }
    from = std::max(from, std::min(first / speed, last / speed));
    to = std::min(to, std::max(first / speed, last / speed));
  }
};

bool meets(const SweepSolid::Hull& moving, const SweepSolid::Hull& obstacle, Vec3 way) {
  Stretch stretch;
  const auto narrowed_away = [&](Vec3 axis) {
    stretch.narrow(reach(moving.points, axis), reach(obstacle.points, axis), dot(axis, way));
    return stretch.empty();
  };
  for (const Vec3& axis : moving.normals)
    if (narrowed_away(axis)) return false;
  for (const Vec3& axis : obstacle.normals)
    if (narrowed_away(axis)) return false;
  for (const Vec3& a : moving.edges) {
    for (const Vec3& b : obstacle.edges) {
      const Vec3 axis = cross(a, b);
      const double length = norm(axis);
      if (length > 1e-9 && narrowed_away(axis * (1 / length))) return false;
    }
  }
  return true;
}

bool boxes_meet(const Box& a, const Box& b, Vec3 way) {
  Stretch stretch;
  stretch.narrow({a.low.x, a.high.x}, {b.low.x, b.high.x}, way.x);
  stretch.narrow({a.low.y, a.high.y}, {b.low.y, b.high.y}, way.y);
  stretch.narrow({a.low.z, a.high.z}, {b.low.z, b.high.z}, way.z);
  return !stretch.empty();
}

}  // namespace

SweepSolid::SweepSolid(const Solid& solid) : hulls_(hulls(solid)), box_(solid.bounds()) {}

bool stands_in_the_way(const SweepSolid& moving, const SweepSolid& obstacle, Vec3 way) {
  if (moving.hulls_.empty() || obstacle.hulls_.empty()) return false;
  if (!boxes_meet(moving.box_, obstacle.box_, way)) return false;
  for (const SweepSolid::Hull& a : moving.hulls_)
    for (const SweepSolid::Hull& b : obstacle.hulls_)
      if (boxes_meet(a.box, b.box, way) && meets(a, b, way)) return true;
  return false;
}

}  // namespace splay::fabrication
