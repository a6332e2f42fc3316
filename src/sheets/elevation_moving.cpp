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

void give_swing(const parts::Assembly& assembly, const parts::Swing& swing, Elevation& e) {
  constexpr double along_sight = 1e-6;  // sine: else the way is no circle on paper
  if (norm(cross(swing.axis, e.view.toward)) > along_sight) return;
  DoorSwing drawn;
  drawn.hinge = e.view.project(swing.at);
  std::vector<Vec2> shut;
  for (const int part : swing.parts)
    for (const Vec2 p : outline(part_of(assembly, part), e.view)) shut.push_back(p);
  const auto reach = [&](Vec2 p) { return norm(p - drawn.hinge); };
  drawn.tip = *std::ranges::max_element(shut, {}, reach);
  const bool anticlockwise = swing.clockwise == (dot(swing.axis, e.view.toward) < 0);
  drawn.radians = anticlockwise ? swing.opens : -swing.opens;
  for (const int part : swing.parts)
    for (const Vec3& v : part_of(assembly, part).world.vertices())
      drawn.open.push_back(e.view.project(swing.motion(swing.opens).point(v)));
  drawn.open = convex_hull(drawn.open, 1e-9);
  e.swings.push_back(std::move(drawn));
}

ink::Group draw_swing(const drafting::Kit& kit, const DoorSwing& swing,
                      const drafting::Placement& placement) {
  const Vec2 hinge = placement.paper(swing.hinge), from = placement.paper(swing.tip) - hinge;
  ink::Group group;
  group.items.emplace_back(ink::Stroke{
      ink::Path{}.arc(hinge, norm(from), std::atan2(from.y, from.x), swing.radians), kit.thin()});
  std::vector<Vec2> open = swing.open;
  for (Vec2& p : open) p = placement.paper(p);
  group.items.emplace_back(
      ink::Stroke{ink::Path{}.polygon(open), {kit.look.narrow, ink::Dash::double_chain}});
  return group;
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
  for (const parts::Swing& swing : assembly.swings) {
    give_door(assembly, swing, elevation);
    give_swing(assembly, swing, elevation);
  }
  for (const parts::Slide& slide : assembly.slides) give_drawer(assembly, slide, elevation);
}

ink::Rect swing_box(const Elevation& elevation) {
  ink::Rect box = drafting::no_rect();
  for (const DoorSwing& swing : elevation.swings) {
    for (const Vec2 p : swing.open) box = drafting::joined(box, {p, p});
    constexpr int steps = 18;
    const Vec2 from = swing.tip - swing.hinge;
    for (int i = 0; i <= steps; ++i) {
      const double turn = swing.radians * i / steps, c = std::cos(turn), s = std::sin(turn);
      const Vec2 p = swing.hinge + Vec2{from.x * c - from.y * s, from.x * s + from.y * c};
      box = drafting::joined(box, {p, p});
    }
  }
  return box;
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
  for (const DoorSwing& swing : elevation.swings)
    items.emplace_back(draw_swing(kit, swing, placement));
  for (const ink::Rect& front : elevation.drawers) {
    const ink::Rect box = placement.paper(front);
    items.emplace_back(drawer_sign(drafting::middle(box), std::min(largest, box.height() / 2)));
  }
  return items;
}

}  // namespace splay::sheets
