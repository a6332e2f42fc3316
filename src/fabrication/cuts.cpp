#include "fabrication/cuts.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace splay::fabrication {

using parts::OperationKind;
using parts::Side;

CutReport read_cut(const parts::Operation& operation, const parts::Part& part) {
  CutReport report;
  report.name = operation.name;
  const Vec3 n = operation.cut.n;
  const bool end = operation.kind == OperationKind::end_cut;
  const double through = end ? n.x : n.y, across = end ? n.y : n.x;
  report.side =
      end ? (n.x > 0 ? Side::x_high : Side::x_low) : (n.y > 0 ? Side::y_high : Side::y_low);
  report.face_angle = std::atan2(std::abs(across), std::abs(through));
  report.bevel = std::asin(std::min(1.0, std::abs(n.z)));
  // The surface falls back as one moves along its normal, so the long arris lies the other way.
  const double span = tolerance::weld / std::max({part.size.x, part.size.y, 1.0});
  report.on_face = std::abs(n.z) > span;
  report.long_face = n.z > 0 ? Side::z_low : Side::z_high;
  report.on_edge = std::abs(across) > span;
  if (end)
    report.long_edge = across > 0 ? Side::y_low : Side::y_high;
  else
    report.long_edge = across > 0 ? Side::x_low : Side::x_high;
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
