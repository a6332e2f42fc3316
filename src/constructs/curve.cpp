#include "constructs/curve.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "constructs/section.h"
#include "joinery/draft.h"

namespace splay::constructs {

namespace {

constexpr double chord_error = 0.01;  // mm between a facet and the true curve
constexpr double least_wood = 15;     // mm over the crown of an arch

bool bites(const parts::Part& part, const Plane& world) {
  const Plane local = part.place.local_plane(world);
  return !part.body.empty() && part.body.extent(local.n)[1] > local.d + tolerance::on_plane;
}

}  // namespace

std::vector<Vec2> arc_points(Vec2 centre, double radius, double from, double turn, int multiple) {
  const double step = 2 * std::acos(1 - std::min(1.0, chord_error / radius));
  const int least = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / step)));
  const int count = (least + multiple - 1) / multiple * multiple;
  std::vector<Vec2> points;
  for (int i = 0; i <= count; ++i) {
    const double angle = from + turn * i / count;
    points.push_back(centre + Vec2{std::cos(angle), std::sin(angle)} * radius);
  }
  return points;
}

std::vector<Rounding> round_corners(const Polygon& polygon, double radius) {
  const std::size_t n = polygon.size();
  std::vector<Rounding> corners;
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 in = unit(polygon[i] - polygon[(i + n - 1) % n]);
    const Vec2 on = unit(polygon[(i + 1) % n] - polygon[i]);
    const double turn = std::atan2(cross(in, on), dot(in, on));
    if (turn <= 0) return {};
    const Vec2 out = -left_of(in);
    const double tangent = radius * std::tan(turn / 2);
    corners.push_back({polygon[i] - in * tangent - out * radius, radius, std::atan2(out.y, out.x),
                       turn, tangent});
  }
  for (std::size_t i = 0; i < n; ++i)
    if (corners[i].tangent + corners[(i + 1) % n].tangent >
        norm(polygon[(i + 1) % n] - polygon[i]) - 1)
      return {};
  return corners;
}

void cut_roundings(parts::Builder& builder, const std::vector<int>& parts,
                   const std::vector<Rounding>& corners, const Rigid& plane) {
  for (const int part : parts) {
    double radius = 0;
    for (const Rounding& corner : corners) {
      const std::vector<Vec2> points =
          arc_points(corner.centre, corner.radius, corner.from, corner.turn);
      std::vector<Plane> facets;
      for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const Vec2 out = -left_of(unit(points[i + 1] - points[i]));
        const Plane facet = plane.plane(lift(Line2{out, dot(out, points[i])}));
        if (bites(builder.part(part), facet)) facets.push_back(facet);
      }
      for (const Plane& facet : facets)
        builder.cut_region(part, parts::OperationKind::outline, {facet.flipped()}, "round corner",
                           "", &facet == &facets.back() ? facets : std::vector<Plane>{});
      if (!facets.empty()) radius = corner.radius;
    }
    if (radius > 0)
      builder.remark(part, "Corners to a radius of " + joinery::figure(builder, radius) + ".");
  }
}

void EdgeArch::fields(model::FieldVisitor& visit) {
  visit.length(model::need("rise", "how far the arch goes into the edge at its middle"), rise,
               model::Range::size());
  visit.length(model::may("flat", "how much of the edge stays straight at either end"), flat,
               model::Range::allowance());
}

double arch_radius(double chord, double rise) {
  return (chord * chord / 4 + rise * rise) / (2 * rise);
}

std::string cut_arch(parts::Builder& builder, int part, const EdgeArch& arch,
                     const ArchedEdge& edge) {
  if (!arch.given) return {};
  const std::string& name = builder.part(part).name;
  const Vec3 along = unit(edge.to - edge.from);
  const Vec3 from = edge.from + along * arch.flat->mm, to = edge.to - along * arch.flat->mm;
  const double chord = dot(to - from, along), rise = arch.rise->mm, wood = edge.width - rise;
  if (chord < 1) return "The straight ends of the arch in " + name + " meet.";
  if (rise > chord / 2)
    return "The arch in " + name + " rises " + joinery::figure(builder, rise) +
           " over a chord of " + joinery::figure(builder, chord) +
           ": more than half of that is no arch.";
  if (wood < least_wood)
    return "The arch in " + name + " leaves " + joinery::figure(builder, std::max(0.0, wood)) +
           " of wood over its crown.";
  const Vec3 middle = (from + to) * 0.5;
  const double radius = arch_radius(chord, rise);
  const double half = std::asin(std::min(1.0, chord / 2 / radius));
  const Vec3 centre = middle + edge.in * (rise - radius);
  // In the plane of `along` and `in`, from the end of the chord to its start.
  const double quarter = std::acos(-1.0) / 2;
  std::vector<Plane> facets;
  const std::vector<Vec2> points = arc_points({0, 0}, radius, quarter - half, 2 * half);
  const auto world = [&](Vec2 p) { return along * p.x + edge.in * p.y; };
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const Vec2 out = -left_of(unit(points[i + 1] - points[i]));
    facets.push_back(Plane::through(centre + world(points[i]), world(out)));
  }
  Region removed = facets;
  removed.push_back(Plane::through(middle - edge.in, -edge.in));
  builder.cut_region(part, parts::OperationKind::outline, removed, "arch", "", facets);
  builder.remark(part, "Arch in the " + edge.name + ": rises " + joinery::figure(builder, rise) +
                           " over " + joinery::figure(builder, chord) + ", to a radius of " +
                           joinery::figure(builder, radius) + ".");
  return {};
}

}  // namespace splay::constructs
