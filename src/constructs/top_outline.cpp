// The outline of a top: overhangs, rounded corners, round tops.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "constructs/curve.h"
#include "constructs/top_build.h"
#include "joinery/draft.h"

namespace splay::constructs {

namespace {

using std::numbers::pi;

}  // namespace

// `least`: the count of facets is a multiple of it.
void TopBuild::add_arc(Vec2 centre, double radius, double from, double turn, int least,
                       const std::string& name) {
  const std::vector<Vec2> points = arc_points(centre, radius, from, turn, least);
  for (std::size_t i = 1; i < points.size(); ++i)
    edges_.push_back({points[i - 1], points[i], name, curves_});
  ++curves_;
}

bool TopBuild::round_corners(const Polygon& polygon, const std::vector<std::string>& names) {
  const std::size_t n = polygon.size();
  const double radius = spec_.corner_radius->mm;
  const auto at = [&](std::size_t i) { return polygon[i % n]; };
  std::vector<double> tangent;  // from corner i to where its curve begins
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 in = unit(at(i) - at(i + n - 1)), on = unit(at(i + 1) - at(i));
    tangent.push_back(radius * std::tan(std::atan2(cross(in, on), dot(in, on)) / 2));
  }
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = at(i), b = at(i + 1), along = unit(b - a);
    const double length = norm(b - a), next = tangent[(i + 1) % n];
    if (tangent[i] + next > length - 1)
      return stop("radius-too-large",
                  "Corners of " + joinery::figure(builder_, radius) +
                      " radius leave nothing of the " + names[i] + " side of " + spec_.name + ", " +
                      joinery::figure(builder_, length) + " long.",
                  "A smaller radius, or diameter = ... for a round top.", spec_.corner_radius.span);
    edges_.push_back({a + along * tangent[i], b - along * next, names[i]});
    const Vec2 onward = unit(at(i + 2) - b), out = -left_of(along);
    const double turn = std::atan2(cross(along, onward), dot(along, onward));
    add_arc(b - along * next - out * radius, radius, std::atan2(out.y, out.x), turn, 1,
            "corner of " + names[i] + " and " + names[(i + 1) % n]);
  }
  return true;
}

bool TopBuild::lay_out() {
  thick_ = stock_thickness(builder_, *spec_.stock);
  const Vec3 at = point_of(spec_.at);
  under_ = at.z;
  const Overhang& over = spec_.overhang;
  if (spec_.diameter.given) {
    const double radius = spec_.diameter->mm / 2;
    add_arc({at.x + radius, at.y + radius}, radius + over.all->mm, 0, 2 * pi, 4, "round edge");
  } else {
    Polygon polygon = spec_.outline.polygon();
    const std::vector<std::string> names = spec_.outline.edge_names();
    std::vector<double> grow;
    for (const std::string& name : names) {
      const model::Given<Length>& own = name == "front"   ? over.front
                                        : name == "back"  ? over.back
                                        : name == "left"  ? over.left
                                        : name == "right" ? over.right
                                                          : over.all;
      grow.push_back(own.given ? -own->mm : -over.all->mm);
    }
    const auto grown = offset_edges(polygon, grow);
    if (!grown)
      return stop("no-outline", "The overhangs of " + spec_.name + " leave it no outline.",
                  "Change the overhangs or the corners.", spec_.overhang.span);
    polygon = *grown;
    for (Vec2& p : polygon) p = p + Vec2{at.x, at.y};
    const std::size_t n = polygon.size();
    for (std::size_t i = 0; i < n; ++i)
      if (cross(polygon[(i + 1) % n] - polygon[i], polygon[(i + 2) % n] - polygon[(i + 1) % n]) <=
          0)
        return stop("inside-corner", "The outline of " + spec_.name + " has an inside corner.",
                    "A top has none; lay it up from two, or use boards.", spec_.outline.span);
    if (spec_.corner_radius.given) {
      if (!round_corners(polygon, names)) return false;
    } else {
      for (std::size_t i = 0; i < n; ++i)
        edges_.push_back({polygon[i], polygon[(i + 1) % n], names[i]});
    }
  }
  low_ = high_ = edges_.front().a;
  for (const TopEdge& edge : edges_) {
    low_ = {std::min(low_.x, edge.a.x), std::min(low_.y, edge.a.y)};
    high_ = {std::max(high_.x, edge.a.x), std::max(high_.y, edge.a.y)};
  }
  if (spec_.bevel.given && spec_.bevel.height->mm > thick_ + 1e-6)
    return stop("bevel-too-high",
                "A bevel " + joinery::figure(builder_, spec_.bevel.height->mm) + " high on a top " +
                    joinery::figure(builder_, thick_) + " thick.",
                "At most the top's thickness.", spec_.bevel.span);
  return true;
}

}  // namespace splay::constructs
