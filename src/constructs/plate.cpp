// Flat pieces of any outline: backs, panels of frames.
#include <algorithm>
#include <cmath>

#include "constructs/plate.h"
#include "constructs/section.h"
#include "joinery/joint.h"

namespace splay::constructs {

namespace {

// Indices of the corners of the convex hull of a simple anticlockwise polygon, in order.
std::vector<std::size_t> hull_corners(const Polygon& polygon) {
  std::vector<std::size_t> hull;
  const std::size_t n = polygon.size();
  std::size_t start = 0;
  for (std::size_t i = 1; i < n; ++i)
    if (polygon[i].y < polygon[start].y ||
        (polygon[i].y == polygon[start].y && polygon[i].x < polygon[start].x))
      start = i;
  for (std::size_t k = 0; k <= n; ++k) {
    const std::size_t i = (start + k) % n;
    while (hull.size() >= 2 && cross(polygon[hull.back()] - polygon[hull[hull.size() - 2]],
                                     polygon[i] - polygon[hull.back()]) <= 0)
      hull.pop_back();
    if (k < n) hull.push_back(i);
  }
  return hull;
}

Plane edge_plane(const Rigid& place, Vec2 a, Vec2 b) {
  const Vec2 out = -left_of(unit(b - a));
  return place.plane(lift({out, dot(out, a)}));
}

void cut_side(parts::Builder& builder, int part, const Plane& plane) {
  const Vec3 local = builder.part(part).place.local_direction(plane.n);
  const std::string name =
      parts::side_name(builder.part(part), joinery::nearest_side(builder.part(part), plane.n));
  if (std::abs(local.x) >= std::abs(local.y))
    builder.cut_end(part, plane, name, "");
  else
    builder.cut_edge(part, plane, name, "");
}

// What the hull edge from corner i to corner j has cut off: the pocket is taken out in convex
// pieces, each held back only by its edges on the outline.
void cut_pocket(parts::Builder& builder, int part, const Plate& plate, std::size_t i,
                std::size_t j) {
  const Polygon& polygon = plate.polygon;
  Polygon pocket;
  const std::size_t n = polygon.size();
  for (std::size_t k = i;; k = (k + 1) % n) {
    pocket.push_back(polygon[k]);
    if (k == j) break;
  }
  std::reverse(pocket.begin(), pocket.end());
  for (const Polygon& piece : convex_pieces(pocket)) {
    Region removed;
    for (std::size_t k = 0; k < piece.size(); ++k)
      removed.push_back(edge_plane(plate.place, piece[k], piece[(k + 1) % piece.size()]));
    parts::Trench trench;
    trench.open = parts::Side::z_high;
    builder.cut_trench(part, parts::OperationKind::outline, removed, trench, "inside corner", "");
  }
}

}  // namespace

int add_plate(parts::Builder& builder, const Plate& plate) {
  parts::Blank blank;
  blank.name = plate.name;
  blank.stock = plate.stock;
  blank.show = plate.show;
  const Rigid flat = frame({0, plate.y_back, 0}, lift_direction(plate.grain), world_front);
  blank.place = plate.place * flat;
  Box box;
  for (const Vec2 p : plate.polygon) box.add(flat.local_point(lift(p, plate.y_back)));
  const Vec3 room{10, 10, 0};
  box.high.z = plate.y_back - plate.y_front;
  blank.body = Solid::box(box.low - room, box.high + room);
  const bool upright = std::abs(plate.grain.y) > std::abs(plate.grain.x);
  blank.side_names = upright ? std::array<std::string, 6>{"foot",      "head", "right edge",
                                                          "left edge", "back", "front"}
                             : std::array<std::string, 6>{"left end",   "right end", "lower edge",
                                                          "upper edge", "back",      "front"};
  const int part = builder.add(std::move(blank));
  const std::vector<std::size_t> hull = hull_corners(plate.polygon);
  for (std::size_t k = 0; k < hull.size(); ++k) {
    const std::size_t i = hull[k], j = hull[(k + 1) % hull.size()];
    cut_side(builder, part, edge_plane(plate.place, plate.polygon[i], plate.polygon[j]));
    if ((i + 1) % plate.polygon.size() != j) cut_pocket(builder, part, plate, i, j);
  }
  return part;
}

}  // namespace splay::constructs
