#include "sheets/elevation_moving.h"

#include <algorithm>
#include <cmath>

namespace splay::sheets {

namespace {

constexpr double facing = 0.9;  // cosine to the line of sight

std::vector<Vec2> outline(const parts::Part& part, const View& view) {
  std::vector<Vec2> points;
  for (const Vec3& v : part.world.vertices()) points.push_back(view.project(v));
  return points;
}

Vec2 furthest(const std::vector<Vec2>& points, Vec2 way) {
  return *std::max_element(points.begin(), points.end(),
                           [way](Vec2 a, Vec2 b) { return dot(a, way) < dot(b, way); });
}

const parts::Part& part_of(const parts::Assembly& assembly, int index) {
  return assembly.parts[static_cast<std::size_t>(index)];
}

void give_door(const parts::Assembly& assembly, const parts::Swing& swing, Elevation& e) {
  if (std::abs(dot(part_of(assembly, swing.parts.front()).place.ez, e.view.toward)) < facing)
    return;
  std::vector<Vec2> points;
  for (const int part : swing.parts)
    for (const Vec2 p : outline(part_of(assembly, part), e.view)) points.push_back(p);
  const ink::Rect box{{furthest(points, {-1, 0}).x, furthest(points, {0, -1}).y},
                      {furthest(points, {1, 0}).x, furthest(points, {0, 1}).y}};
  // Corners of a trapezium too: the sides of the box weigh alike.
  const double line = e.view.project(swing.at).x, across = 1 / box.width(), up = 1 / box.height();
  const double far = line < (box.low.x + box.high.x) / 2 ? across : -across;
  const Vec2 hinge = (furthest(points, {-far, up}) + furthest(points, {-far, -up})) * 0.5;
  e.doors.push_back({hinge, furthest(points, {far, up}), furthest(points, {far, -up})});
}

void give_drawer(const parts::Assembly& assembly, const parts::Slide& slide, Elevation& e) {
  if (dot(slide.way, e.view.toward) < facing || slide.parts.empty()) return;
  const auto reach = [&](int part) { return part_of(assembly, part).world.extent(slide.way)[1]; };
  const int front = *std::max_element(slide.parts.begin(), slide.parts.end(),
                                      [&](int a, int b) { return reach(a) < reach(b); });
  const std::vector<Vec2> points = outline(part_of(assembly, front), e.view);
  e.drawers.push_back({{furthest(points, {-1, 0}).x, furthest(points, {0, -1}).y},
                       {furthest(points, {1, 0}).x, furthest(points, {0, 1}).y}});
}

}  // namespace

void give_movement(const parts::Assembly& assembly, Elevation& elevation) {
  for (const parts::Swing& swing : assembly.swings) give_door(assembly, swing, elevation);
  for (const parts::Slide& slide : assembly.slides) give_drawer(assembly, slide, elevation);
}

ink::Group door_sign(const drafting::Kit& kit, Vec2 hinge, Vec2 upper, Vec2 lower) {
  ink::Group group;
  group.items.emplace_back(
      ink::Stroke{ink::Path{}.move(upper).line(hinge).line(lower), kit.centre()});
  return group;
}

ink::Group drawer_sign(Vec2 at, double size) {
  const double half = size / std::sqrt(3.0);
  ink::Group group;
  group.items.emplace_back(ink::Fill{ink::Path{}.polygon(
      {at + Vec2{-half, size / 2}, at + Vec2{half, size / 2}, at - Vec2{0, size / 2}})});
  return group;
}

drafting::Items draw_movement(const drafting::Kit& kit, const Elevation& elevation,
                              const drafting::Placement& placement) {
  constexpr double largest = 3;  // mm on paper
  drafting::Items items;
  for (const DoorLines& door : elevation.doors)
    items.emplace_back(door_sign(kit, placement.paper(door.hinge), placement.paper(door.upper),
                                 placement.paper(door.lower)));
  for (const ink::Rect& front : elevation.drawers) {
    const ink::Rect box = placement.paper(front);
    items.emplace_back(drawer_sign(drafting::middle(box), std::min(largest, box.height() / 2)));
  }
  return items;
}

}  // namespace splay::sheets
