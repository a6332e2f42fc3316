#include "sheets/part_view_curves.h"

#include <algorithm>
#include <cmath>

namespace splay::sheets {

namespace {

using parts::Operation;
using parts::OperationKind;
using parts::Side;

constexpr double on_surface = 1e-5, same_angle = 1e-6;

Vec3 flat(Vec3 n) { return {n.x, n.y, 0}; }

// One facet of a curve: how much it leans, which way it looks in plan.
struct Facet {
  const Operation* operation = nullptr;
  const Face* face = nullptr;
  Vec3 out;         // in plan, unit
  double lean = 0;  // off plumb, radians; towards the face z_high when positive
};

std::vector<Facet> slanted_facets(const PartSheet& sheet) {
  std::vector<Facet> facets;
  for (const Operation& operation : sheet.part.operations) {
    if (operation.kind != OperationKind::outline || operation.removed.size() != 1) continue;
    const Plane plane = operation.removed.front().flipped();
    const double lean = std::atan2(plane.n.z, norm(flat(plane.n)));
    if (std::abs(lean) < same_angle || norm(flat(plane.n)) < same_angle) continue;
    if (const Face* face = face_on(sheet.boundary, plane))
      facets.push_back({&operation, face, unit(flat(plane.n)), lean});
  }
  return facets;
}

// Through the facet's middle, square to the curve.
Detail section_of(const PartSheet& sheet, const Facet& facet) {
  const Vec3 up{0, 0, 1}, aside = cross(facet.out, up);
  const Box box = box_of(*facet.face);
  const Vec3 middle = (box.low + box.high) * 0.5;
  const std::vector<Vec3>& loop = facet.face->loops.front();
  const auto reach = [&](Vec3 p) { return dot(facet.out, p); };
  const auto in_plane = [&](Vec3 p) { return p - aside * dot(aside, p - middle); };
  const Vec3 tip = in_plane(*std::ranges::max_element(loop, {}, reach));
  const Vec3 other = in_plane(*std::ranges::min_element(loop, {}, reach));
  Detail detail;
  detail.view = {facet.out, up, aside};
  detail.cut_at = dot(aside, middle);
  const auto level = [&](Vec3 p, double z) { return Vec3{p.x, p.y, z}; };
  for (const double z : {0.0, sheet.part.size.z})
    for (const Vec3 p : {tip, other}) detail.of.add(level(p, z));
  detail.title = capitalised(plain_words(sheet, *facet.operation));
  detail.above = {sheet.name(Side::z_high)};
  detail.below = {sheet.name(Side::z_low)};
  const Vec3 away = facet.lean > 0 ? up : -up;  // the slant runs inwards this way
  detail.rows.push_back({drafting::RowKind::overall, {tip, other}, facet.out, away, {}});
  detail.rows.push_back({drafting::RowKind::overall, {tip, other}, up, facet.out, {}});
  detail.rows.push_back({drafting::RowKind::overall,
                         {level(tip, 0), level(tip, sheet.part.size.z)},
                         up,
                         facet.out,
                         {}});
  detail.angles.push_back({tip, away, other - tip, std::abs(facet.lean), "off square"});
  return detail;
}

}  // namespace

std::optional<Circle> circle_on(const PartSheet& sheet, Side side) {
  const Vec3 out = parts::outward(side);
  const Face* face = face_on(sheet.boundary, {out, std::max(0.0, dot(out, sheet.part.size))});
  if (face == nullptr) return std::nullopt;
  // Facets must be what the outline is made of: a board of many sides is no circle.
  const auto of_curve = [&](Vec3 p) {
    return std::ranges::any_of(sheet.boundary.edges, [&](const Edge& edge) {
      return edge.smooth && (norm(edge.a - p) < on_surface || norm(edge.b - p) < on_surface);
    });
  };
  const std::vector<Vec3>& loop = face->loops.front();
  Box box;
  for (const Vec3 p : loop) box.add(p);
  const Vec3 centre = (box.low + box.high) * 0.5;
  const double radius = norm(loop.front() - centre);
  const bool round = loop.size() > 8 && std::ranges::all_of(loop, [&](Vec3 p) {
                       return std::abs(norm(p - centre) - radius) < on_surface && of_curve(p);
                     });
  return round ? std::optional(Circle{centre, radius}) : std::nullopt;
}

std::vector<Detail> curve_details(const PartSheet& sheet) {
  std::vector<Detail> details;
  std::vector<double> shown;
  std::vector<Facet> facets = slanted_facets(sheet);
  // The one that looks most along the length stands for all of its lean.
  std::ranges::stable_sort(facets, std::greater{}, [](const Facet& f) { return f.out.x; });
  for (const Facet& facet : facets) {
    const auto again = [&](double lean) { return std::abs(lean - facet.lean) < same_angle; };
    if (std::ranges::any_of(shown, again)) continue;
    shown.push_back(facet.lean);
    details.push_back(section_of(sheet, facet));
  }
  return details;
}

}  // namespace splay::sheets
