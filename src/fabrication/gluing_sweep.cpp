// The straight run of one solid past another: separating axes of each pair of convex cells, each
// giving the stretch of the run in which it doesn't separate them. Boxes about the parts tell most
// apart before that.
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
    const double along = dot(axis, p);
    result[0] = std::min(result[0], along);
    result[1] = std::max(result[1], along);
  }
  return result;
}

// The stretch of the run in which the two may still overlap.
struct Swept {
  double from = 0, to = 1e300;
  bool empty() const { return from >= to; }
  // Where the intervals a and b overlap, when a runs with this speed.
  void narrow(double first, double last, double speed) {
    if (std::abs(speed) < 1e-12) {
      if (first >= 0 || last <= 0) to = from;
      return;
    }
    from = std::max(from, std::min(first / speed, last / speed));
    to = std::min(to, std::max(first / speed, last / speed));
  }
  void narrow(std::array<double, 2> a, std::array<double, 2> b, double speed) {
    constexpr double depth = tolerance::on_plane;
    narrow(b[0] + depth - a[1], b[1] - depth - a[0], speed);
  }
};

bool boxes_meet(const Box& a, const Box& b, Vec3 way) {
  Swept stretch;
  stretch.narrow({a.low.x, a.high.x}, {b.low.x, b.high.x}, way.x);
  stretch.narrow({a.low.y, a.high.y}, {b.low.y, b.high.y}, way.y);
  if (stretch.empty()) return false;
  stretch.narrow({a.low.z, a.high.z}, {b.low.z, b.high.z}, way.z);
  return !stretch.empty();
}

// Runs of one convex body past another along several ways at once: each axis is measured once.
class Runs {
 public:
  explicit Runs(std::span<const Vec3> ways) : ways_(ways) {}

  // Leaves those of the ways in `list` along which they meet.
  void keep_meeting(const SweepSolid::Hull& moving, const SweepSolid::Hull& obstacle,
                    std::vector<int>& list) {
    stretches_.assign(list.size(), {});
    const auto narrow = [&](Vec3 axis) {
      constexpr double depth = tolerance::on_plane;
      const std::array<double, 2> a = reach(moving.points, axis), b = reach(obstacle.points, axis);
      const double first = b[0] + depth - a[1], last = b[1] - depth - a[0];
      std::size_t kept = 0;
      for (std::size_t i = 0; i < list.size(); ++i) {
        Swept stretch = stretches_[i];
        stretch.narrow(first, last, dot(axis, ways_[static_cast<std::size_t>(list[i])]));
        if (stretch.empty()) continue;
        list[kept] = list[i];
        stretches_[kept++] = stretch;
      }
      list.resize(kept);
      return list.empty();
    };
    for (const Vec3& axis : moving.normals)
      if (narrow(axis)) return;
    for (const Vec3& axis : obstacle.normals)
      if (narrow(axis)) return;
    for (const Vec3& a : moving.edges) {
      for (const Vec3& b : obstacle.edges) {
        const Vec3 axis = cross(a, b);
        const double length = norm(axis);
        if (length > 1e-9 && narrow(axis * (1 / length))) return;
      }
    }
  }

 private:
  std::span<const Vec3> ways_;
  std::vector<Swept> stretches_;
};

SweepSolid::Hull box_about(const Solid& solid, const Rigid& frame) {
  SweepSolid::Hull hull;
  const auto x = solid.extent(frame.ex), y = solid.extent(frame.ey), z = solid.extent(frame.ez);
  for (const double along : x)
    for (const double across : y)
      for (const double over : z)
        hull.points.push_back(frame.ex * along + frame.ey * across + frame.ez * over);
  hull.normals = hull.edges = {frame.ex, frame.ey, frame.ez};
  return hull;
}

}  // namespace

SweepSolid::SweepSolid(const Solid& solid, const Rigid& frame)
    : hulls_(hulls(solid)), around_(box_about(solid, frame)), box_(solid.bounds()) {}

PartSet closed_ways(const SweepSolid& moving, const SweepSolid& obstacle,
                    std::span<const Vec3> ways, const PartSet& asked) {
  PartSet closed(ways.size());
  if (moving.hulls_.empty() || obstacle.hulls_.empty()) return closed;
  const auto met_by_boxes = [&](const Box& a, const Box& b, int way) {
    return boxes_meet(a, b, ways[static_cast<std::size_t>(way)]);
  };
  std::vector<int> open, met;
  asked.each([&](int way) {
    if (met_by_boxes(moving.box_, obstacle.box_, way)) open.push_back(way);
  });
  if (open.empty()) return closed;
  Runs runs(ways);
  runs.keep_meeting(moving.around_, obstacle.around_, open);
  for (const SweepSolid::Hull& a : moving.hulls_) {
    for (const SweepSolid::Hull& b : obstacle.hulls_) {
      if (open.empty()) return closed;
      met.clear();
      for (const int way : open)
        if (met_by_boxes(a.box, b.box, way)) met.push_back(way);
      if (!met.empty()) runs.keep_meeting(a, b, met);
      for (const int way : met) closed.add(way);
      if (!met.empty()) std::erase_if(open, [&](int way) { return closed.has(way); });
    }
  }
  return closed;
}

bool stands_in_the_way(const SweepSolid& moving, const SweepSolid& obstacle, Vec3 way) {
  PartSet one(1);
  one.add(0);
  return !closed_ways(moving, obstacle, {&way, 1}, one).empty();
}

}  // namespace splay::fabrication
