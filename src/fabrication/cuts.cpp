#include "fabrication/cuts.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"

namespace splay::fabrication {

using parts::OperationKind;
using parts::Side;

namespace {

// The axes of a cut: through which it comes to its side, along the side's other direction on the
// board's face, and square to that face.
struct Axes {
  int through = 0, across = 1, tilt = 2;
};

// An end comes along x, an edge along y. A taper of a face comes along z: the board is turned a
// quarter for it and lies on its edge.
Axes axes_of(const parts::Operation& operation) {
  if (operation.kind == OperationKind::end_cut) return {0, 1, 2};
  const Vec3 n = operation.cut.n;
  return std::abs(n.z) > std::abs(n.y) ? Axes{2, 0, 1} : Axes{1, 0, 2};
}

Side side_of(int axis, double sense) { return static_cast<Side>(2 * axis + (sense > 0 ? 1 : 0)); }

}  // namespace

CutReport read_cut(const parts::Operation& operation, const parts::Part& part) {
  CutReport report;
  report.name = operation.name;
  const std::array<double, 3> n = {operation.cut.n.x, operation.cut.n.y, operation.cut.n.z};
  const Axes axes = axes_of(operation);
  const auto at = [&n](int axis) { return n[static_cast<std::size_t>(axis)]; };
  report.side = side_of(axes.through, at(axes.through));
  report.face_angle = std::atan2(std::abs(at(axes.across)), std::abs(at(axes.through)));
  report.bevel = std::asin(std::min(1.0, std::abs(at(axes.tilt))));
  // The surface falls back as one moves along its normal, so the long arris lies the other way.
  const double slight = tolerance::weld / std::max({part.size.x, part.size.y, 1.0});
  report.on_face = std::abs(at(axes.tilt)) > slight;
  report.long_face = side_of(axes.tilt, -at(axes.tilt));
  report.on_edge = std::abs(at(axes.across)) > slight;
  report.long_edge = side_of(axes.across, -at(axes.across));
  return report;
}

Points point_lengths(const parts::Part& part) {
  Points points{0, part.size.x};
  for (const double y : {0.0, part.size.y}) {
    for (const double z : {0.0, part.size.z}) {
      double from = 0, to = part.size.x;
      for (const parts::Operation& operation : part.operations) {
        if (operation.kind != OperationKind::end_cut) continue;
        const Plane& cut = operation.cut;
        const double x = (cut.d - cut.n.y * y - cut.n.z * z) / cut.n.x;
        if (cut.n.x > 0)
          to = std::min(to, x);
        else
          from = std::max(from, x);
      }
      points.long_point = std::max(points.long_point, to - from);
      points.short_point = std::min(points.short_point, to - from);
    }
  }
  return points;
}

}  // namespace splay::fabrication
