#include <algorithm>
#include <cmath>

#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using parts::OperationKind;
using parts::Side;

// A tenon between its shoulders and its end: where it lies across the part, and its length along
// each of its edges.
struct Tenon {
  Side end = Side::x_low;
  std::vector<Vec3> section;  // corners half way along it
  Box across;                 // round them
  std::vector<const Cut*> ends, shoulders;
};

double outward_x(Side end, double x) { return end == Side::x_high ? x : -x; }

// How far out a set of cuts lets the line through a point reach.
Vec3 reach(const Tenon& tenon, const std::vector<const Cut*>& cuts, Vec3 through) {
  Vec3 reached = through;
  double least = 1e300;
  for (const Cut* cut : cuts) {
    const double x =
        (cut->plane.d - cut->plane.n.y * through.y - cut->plane.n.z * through.z) / cut->plane.n.x;
    if (outward_x(tenon.end, x) >= least) continue;
    least = outward_x(tenon.end, x);
    reached.x = x;
  }
  return reached;
}

// The section where only the tenon is left; false when shoulders and end leave no such place.
bool find_section(const PartSheet& sheet, Tenon& tenon) {
  double shoulder = -1e300, tip = 1e300;
  for (const Cut* cut : tenon.shoulders)
    shoulder = std::max(
        {shoulder, outward_x(tenon.end, cut->of.low.x), outward_x(tenon.end, cut->of.high.x)});
  for (const Cut* cut : tenon.ends)
    tip =
        std::min({tip, outward_x(tenon.end, cut->of.low.x), outward_x(tenon.end, cut->of.high.x)});
  if (tip <= shoulder) return false;
  const Plane middle{{1, 0, 0}, outward_x(tenon.end, (tip + shoulder) / 2)};
  for (const Face& face : sheet.part.body.section(middle))
    for (const Vec3 corner : face.loops.front()) {
      tenon.section.push_back(corner);
      tenon.across.add(corner);
    }
  return !tenon.section.empty();
}

std::vector<Tenon> tenons_of(const PartSheet& sheet, const std::vector<Cut>& cuts) {
  std::vector<Tenon> tenons;
  for (const Side end : {Side::x_low, Side::x_high}) {
    Tenon tenon;
    tenon.end = end;
    for (const Cut& cut : cuts) {
      if (cut.report.side != end) continue;
      (cut.operation->kind == OperationKind::shoulder ? tenon.shoulders : tenon.ends)
          .push_back(&cut);
    }
    if (!tenon.shoulders.empty() && !tenon.ends.empty() && find_section(sheet, tenon))
      tenons.push_back(std::move(tenon));
  }
  return tenons;
}

// The same place across the part and the same lengths: one picture does for both.
bool alike(const Tenon& a, const Tenon& b) {
  constexpr double same = 1e-6;
  const auto length = [](const Tenon& tenon, Vec3 at) {
    return std::abs(reach(tenon, tenon.ends, at).x - reach(tenon, tenon.shoulders, at).x);
  };
  const bool place =
      norm(Vec3{0, a.across.low.y - b.across.low.y, a.across.low.z - b.across.low.z}) < same &&
      std::abs(a.across.size().y - b.across.size().y) < same &&
      std::abs(a.across.size().z - b.across.size().z) < same;
  return place && std::abs(length(a, a.across.low) - length(b, b.across.low)) < same &&
         std::abs(length(a, a.across.high) - length(b, b.across.high)) < same;
}

// From the end: running figures across the width and through the thickness.
Detail end_view(const PartSheet& sheet, const Tenon& tenon) {
  const Vec3 size = sheet.part.size;
  Detail detail;
  detail.cut = false;
  detail.with_hidden = false;
  detail.view.toward = parts::outward(tenon.end);
  detail.view.up = {0, 0, 1};
  detail.view.right = cross(detail.view.up, detail.view.toward);
  const double x = tenon.across.low.x;
  detail.of.add({x, 0, 0});
  detail.of.add({x, size.y, size.z});
  DetailRow width, thickness;
  width.kind = thickness.kind = drafting::RowKind::running;
  width.stations = {{x, 0, 0}, {x, size.y, 0}};
  thickness.stations = {{x, 0, 0}, {x, 0, size.z}};
  for (const Vec3 corner : tenon.section) {
    width.stations.push_back(corner);
    thickness.stations.push_back(corner);
  }
  const bool front_low = front_edge(sheet.part) == Side::y_low;
  width.along = {0, front_low ? 1.0 : -1.0, 0};
  width.out = {0, 0, -1};
  thickness.along = {0, 0, -1};  // from the show face
  thickness.out = detail.view.right;
  detail.rows = {width, thickness};
  detail.caption = "Figures from the " + sheet.name(front_edge(sheet.part)) + " and the " +
                   sheet.name(Side::z_high) + ".";
  return detail;
}

// On the face: the lengths of the tenon along its two edges.
Detail face_view(const PartSheet& sheet, const Tenon& tenon) {
  const Vec3 size = sheet.part.size;
  Detail detail;
  detail.cut = false;
  detail.view = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
  for (const bool low : {true, false}) {
    Vec3 edge = low ? tenon.across.low : tenon.across.high;
    // The longer of the two arrises at this edge.
    edge.z = tenon.across.low.z;
    const Vec3 one = reach(tenon, tenon.ends, edge);
    edge.z = tenon.across.high.z;
    const Vec3 two = reach(tenon, tenon.ends, edge);
    const Vec3 tip = outward_x(tenon.end, one.x) > outward_x(tenon.end, two.x) ? one : two;
    const Vec3 root = reach(tenon, tenon.shoulders, tip);
    detail.of.add(tip);
    detail.of.add(root);
    detail.rows.push_back(
        {drafting::RowKind::overall, {root, tip}, {1, 0, 0}, {0, low ? -1.0 : 1.0, 0}, {}});
  }
  detail.of.add({detail.of.low.x, 0, size.z});
  detail.of.add({detail.of.low.x, size.y, size.z});
  return detail;
}

}  // namespace

std::vector<Detail> tenon_details(const PartSheet& sheet) {
  const std::vector<Cut> cuts = standing_cuts(sheet);
  const std::vector<Tenon> tenons = tenons_of(sheet, cuts);
  std::vector<Detail> details;
  for (std::size_t i = 0; i < tenons.size(); ++i) {
    if (i > 0 && alike(tenons[0], tenons[i])) continue;
    const bool both = tenons.size() == 2 && alike(tenons[0], tenons[1]);
    const std::string name = both ? "Tenons, both ends" : "Tenon, " + sheet.name(tenons[i].end);
    details.push_back(face_view(sheet, tenons[i]));
    details.back().title = name + ", on the face";
    details.push_back(end_view(sheet, tenons[i]));
    details.back().title = name + ", from the end";
  }
  return details;
}

}  // namespace splay::sheets
