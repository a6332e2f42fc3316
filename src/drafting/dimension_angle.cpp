#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/dimension.h"
#include "drafting/placing.h"
#include "drafting/text_block.h"

namespace splay::drafting {

namespace {

constexpr double pi = std::numbers::pi;

double heading_of(Vec2 v) { return std::atan2(v.y, v.x); }

// The arc between the legs and its heads; heads stand outside when the arc is short.
void draw_arc(const Kit& kit, const AngleMark& mark, double from, double sweep, ink::Group& group) {
  constexpr double head = 2.5;
  ink::Path lines;
  lines.arc(mark.at, mark.radius, from, sweep);
  const bool outside = std::abs(sweep) * mark.radius < 3 * head;
  for (const double end : {from, from + sweep}) {
    const Vec2 ray{std::cos(end), std::sin(end)};
    const bool first = end == from;
    // Away from the arc's inside, or towards it when the heads stand outside.
    const double sense = (first == (sweep > 0)) != outside ? -1 : 1;
    const Vec2 tip = mark.at + ray * mark.radius;
    group.items.emplace_back(arrow_head(tip, left_of(ray) * sense, head));
    if (outside) {
      const double tail = (head + 2) / mark.radius * (first == (sweep > 0) ? -1 : 1);
      lines.move(tip);
      lines.arc(mark.at, mark.radius, end, tail);
    }
  }
  for (const Vec2 leg : {mark.from, mark.to})
    lines.move(mark.at).line(mark.at + unit(leg) * (mark.radius + 3));
  group.items.emplace_back(ink::Stroke{std::move(lines), kit.thin()});
}

}  // namespace

std::string angle_text(const std::string& name, double radians) {
  const std::string degrees = degrees_text(radians * 180 / pi);
  return name.empty() ? degrees : name + " " + degrees;
}

std::string angle_rise(const Kit& kit, double radians) {
  return rise_text(radians * 180 / pi, kit.figures);
}

ink::Group draw_angle(const Kit& kit, Room& room, const AngleMark& mark) {
  ink::Group group{"dimension", {}};
  const double from = heading_of(mark.from);
  const double sweep = std::remainder(heading_of(mark.to) - from, 2 * pi);
  draw_arc(kit, mark, from, sweep, group);
  room.take(kit, group.items);
  const double mid = from + sweep / 2;
  const Vec2 bisector{std::cos(mid), std::sin(mid)};
  constexpr double widest = 24;  // mm: long names take a second line
  LabelText text{{angle_text({}, mark.radians), angle_rise(kit, mark.radians)},
                 kit.look.lettering,
                 ink::Face::bold};
  if (!mark.name.empty())
    for (std::string& line : wrap(kit, mark.name, widest, text.height))
      text.lines.push_back(std::move(line));
  const Vec2 size = label_size(kit, text);
  const Vec2 tip = mark.at + bisector * mark.radius;
  const ink::Rect place = find_place(room, {tip, size.x, size.y, bisector, 2, 60})
                              .value_or(ink::Rect{tip + Vec2{2, 2}, tip + Vec2{2, 2} + size});
  const std::size_t before = group.items.size();
  write_label(text, place, tip, group.items);
  const Vec2 end = leader_end(place, tip);
  if (norm(end - tip) > 3)
    group.items.emplace_back(ink::Stroke{ink::Path{}.move(tip).line(end), kit.thin()});
  room.take(kit,
            Items(group.items.begin() + static_cast<std::ptrdiff_t>(before), group.items.end()));
  return group;
}

}  // namespace splay::drafting
