// The panels of a case and their corners.
#include <algorithm>
#include <cmath>

#include "constructs/case_build.h"

namespace splay::constructs {

namespace {

// What a maker calls the four long sides and the two ends of a panel that faces `out`.
std::array<std::string, 6> panel_sides(const Rigid& place, Vec2 along) {
  std::array<std::string, 6> names;
  const bool upright = std::abs(along.y) > std::abs(along.x);
  names[0] = upright ? "foot" : "left end";
  names[1] = upright ? "head" : "right end";
  const bool front_low = dot(place.ey, world_front) < 0;
  names[2] = front_low ? "front edge" : "back edge";
  names[3] = front_low ? "back edge" : "front edge";
  names[4] = "inside";
  names[5] = "outside";
  return names;
}

}  // namespace

int CaseBuild::add_panel(std::size_t side) {
  const RingMember& m = ring_.members[side];
  const PanelChoice* choice = case_.panels.find(sides_[side]);
  const FrontEdge& edge = choice != nullptr && choice->front.given ? choice->front : case_.front;
  const std::string stock = choice == nullptr ? case_.stock.value : stock_of(choice->stock);
  const double t = thickness(stock);
  const double edging = edge.edge.value == Edging::none ? 0
                        : edge.thickness.given          ? edge.thickness->mm
                                                        : thickness(*edge.stock);
  const Vec2 along = reading_direction(m.direction);
  parts::Blank blank;
  blank.name = part_name(sides_[side] + " panel");
  blank.stock = stock;
  blank.place = frame(lift(m.outer_1), lift_direction(along), lift_direction(m.out));
  const double sense = dot(along, m.direction);
  const double x1 = sense > 0 ? m.from : -m.to, x2 = sense > 0 ? m.to : -m.from;
  const double y_sense = blank.place.ey.y;  // +1 when local y runs to the back
  const double y1 = y_sense > 0 ? edging : -case_.depth->mm;
  const double y2 = y_sense > 0 ? case_.depth->mm : -edging;
  blank.body = Solid::box({x1, y1, -t}, {x2, y2, 0});
  blank.side_names = panel_sides(blank.place, along);
  const int part = builder_.add(std::move(blank));
  panel_parts_.push_back({part});
  const Vec2 a = m.outer_1 + m.direction * m.from, b = m.outer_1 + m.direction * m.to;
  const int strip = add_edging(edge, part, edging, {a, b, b - m.out * t, a - m.out * t});
  if (strip >= 0) panel_parts_.back().push_back(strip);
  return part;
}

void CaseBuild::build_panels() {
  for (std::size_t i = 0; i < sides_.size(); ++i) {
    const int part = add_panel(i);
    const RingMember& m = ring_.members[i];
    const int strip = panel_parts_[i].size() > 1 ? panel_parts_[i].back() : -1;
    hosts_.push_back({sides_[i], part, m.inner_1, m.inner_2, m.inside, strip});
  }
  for (std::size_t i = 0; i < sides_.size(); ++i) join_corner(i);
}

namespace {

// A square end that stands nowhere past the neighbour's outside: through the arris that reaches
// least far.
Line2 square_end(const RingMember& m, const Line2& level, bool at_end_2, double breadth) {
  const Vec2 n = at_end_2 ? m.direction : -m.direction;
  const auto reach = [&](Vec2 start) {
    const double run = (level.d - dot(level.n, start)) / dot(level.n, m.direction);
    return dot(n, start + m.direction * run);
  };
  return {n, std::min(reach(m.outer_1), reach(m.outer_1 - m.out * breadth))};
}

}  // namespace

void CaseBuild::join_corner(std::size_t corner) {
  const std::size_t n = sides_.size();
  const std::size_t before = (corner + n - 1) % n, after = corner;
  const double dihedral = ring_.members[before].corner_angle;
  const RingCorner& choice = corners_[corner];
  // Each panel and, where both have one, its edging in front meet in the same plane.
  for (std::size_t layer = 0; layer < 2; ++layer) {
    const std::vector<int>& ones = panel_parts_[before];
    const std::vector<int>& others = panel_parts_[after];
    if (layer >= ones.size() && layer >= others.size()) continue;
    const bool both = layer < ones.size() && layer < others.size();
    const int a = ones[std::min(layer, ones.size() - 1)];
    const int b = others[std::min(layer, others.size() - 1)];
    if (choice.kind == CornerKind::mitre) {
      const Plane plane = lift(mitre_line(ring_, corner));
      if (both) {
        joinery::mitre(builder_, {a, b, plane, dihedral});
      } else if (layer < ones.size()) {
        builder_.cut_end(a, plane, "mitre", "");
      } else {
        builder_.cut_end(b, plane.flipped(), "mitre", "");
      }
      continue;
    }
    const std::size_t through = choice.before_through ? before : after;
    const int host = choice.before_through ? a : b, guest = choice.before_through ? b : a;
    const bool host_here = layer < panel_parts_[through].size();
    const bool guest_here = layer < panel_parts_[choice.before_through ? after : before].size();
    if (host_here) {
      Line2 end = butt_end(ring_, corner, choice.before_through, true);
      const PanelChoice* panel = case_.panels.find(sides_[through]);
      if (panel != nullptr && panel->ends.value == PanelEnds::square)
        end = square_end(ring_.members[through], end, choice.before_through,
                         thickness(builder_.part(panel_parts_[through].front()).stock));
      builder_.cut_end(host, lift(end), "end past " + builder_.part(guest).name, "");
    }
    const Plane face = lift(ring_.members[through].inside);
    if (both) {
      joinery::butt(builder_, {host, guest, face, dihedral});
    } else if (guest_here) {
      builder_.cut_end(guest, face.flipped(), "end against " + builder_.part(host).name, "");
    }
  }
}

void CaseBuild::add_measures() {
  const auto loop = [&](const std::string& name, const Polygon& corners, double y) {
    parts::CheckLoop check{name, {}};
    for (const Vec2 p : corners) check.corners.push_back(lift(p, y));
    builder_.add_loop(std::move(check));
  };
  loop("front of " + case_.name + ", outside corners", ring_.outer, 0);
  loop("front of " + case_.name + ", inside corners", ring_.inner, 0);
  const std::size_t n = sides_.size();
  for (std::size_t i = 0; i < n; ++i) {
    const RingMember& m = ring_.members[i];
    const Vec2 back = -ring_.members[(i + n - 1) % n].direction;
    builder_.add_angle({"corner " + sides_[(i + n - 1) % n] + " to " + sides_[i], lift(m.outer_1),
                        lift_direction(m.direction), lift_direction(back),
                        ring_.members[(i + n - 1) % n].corner_angle});
    const Vec2 up = reading_direction(m.direction);
    const double lean = std::atan2(std::abs(up.x), std::abs(up.y));
    if (std::abs(up.y) > std::abs(up.x) && lean > 1e-6) {
      const Vec2 foot = up.y * m.direction.y > 0 ? m.outer_1 : m.outer_2;
      builder_.add_angle({"lean of " + sides_[i], lift(foot), {0, 0, 1}, lift_direction(up), lean});
    }
    builder_.add_length(
        {sides_[i] + ", outside", lift(m.outer_1), lift(m.outer_2), "side " + sides_[i], true});
  }
  Vec2 low = ring_.outer.front(), high = low;
  for (const Vec2 p : ring_.outer) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  builder_.add_length(
      {"width overall", lift(Vec2{low.x, low.y}), lift(Vec2{high.x, low.y}), "width", true});
  builder_.add_length(
      {"height overall", lift(Vec2{low.x, low.y}), lift(Vec2{low.x, high.y}), "height", true});
  builder_.add_length({"depth", lift(Vec2{high.x, low.y}),
                       lift(Vec2{high.x, low.y}, case_.depth->mm), "depth", true});
}

}  // namespace splay::constructs
