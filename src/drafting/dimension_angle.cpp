#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/quantity.h"
#include "drafting/dimension.h"
#include "drafting/placing.h"
#include "drafting/text_block.h"
#include "ink/outline.h"

namespace splay::drafting {

namespace {

using std::numbers::pi;

double heading_of(Vec2 v) { return std::atan2(v.y, v.x); }

bool runs_over_text(const Room& room, const ink::Path& path) {
  for (const ink::Polyline& line : ink::flatten(path, 0.1))
    for (std::size_t i = 0; i + 1 < line.points.size(); ++i)
      if (room.over_text(line.points[i], line.points[i + 1])) return true;
  return false;
}

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
  const double past_square = Angle{radians}.degrees() - 90;
  if (past_square > 0 && past_square < 90) {
    const std::string rise = rise_text(past_square, kit.figures);
    return rise == "level" ? "plumb" : rise + " past square";
  }
  return rise_text(Angle{radians}.degrees(), kit.figures);
}

namespace {

struct Arc {
  double from, sweep;
  Vec2 bisector, tip;
};

Arc arc_of(const AngleMark& mark) {
  const double from = heading_of(mark.from);
  const double sweep = std::remainder(heading_of(mark.to) - from, 2 * pi);
  const double mid = from + sweep / 2;
  const Vec2 bisector{std::cos(mid), std::sin(mid)};
  return {from, sweep, bisector, mark.at + bisector * mark.radius};
}

LabelText whole_text(const Kit& kit, const AngleMark& mark) {
  constexpr double widest = 24;  // mm: long names take a second line
  LabelText text{{angle_text({}, mark.radians), angle_rise(kit, mark.radians)},
                 kit.look.lettering,
                 ink::Face::bold};
  if (!mark.name.empty())
    for (std::string& line : wrap(kit, mark.name, widest, text.height))
      text.lines.push_back(std::move(line));
  return text;
}

void add_text(const Kit& kit, Room& room, const LabelText& text, ink::Rect place, Vec2 tip,
              ink::Group& group) {
  Items label;
  write_label(text, place, tip, label);
  const Vec2 end = leader_end(place, tip);
  if (norm(end - tip) > 3)
    label.emplace_back(ink::Stroke{ink::Path{}.move(tip).line(end), kit.thin()});
  room.take(kit, label);
  append(group.items, std::move(label));
}

}  // namespace

std::optional<ink::Group> try_angle(const Kit& kit, Room& room, const AngleMark& mark) {
  const Arc arc = arc_of(mark);
  ink::Group group{"dimension", {}};
  draw_arc(kit, mark, arc.from, arc.sweep, group);
  if (std::ranges::any_of(group.items, [&](const ink::Item& item) {
        const auto* stroke = std::get_if<ink::Stroke>(&item);
        const auto* head = std::get_if<ink::Fill>(&item);
        return (stroke && runs_over_text(room, stroke->path)) ||
               (head && runs_over_text(room, head->path));
      }))
    return std::nullopt;
  Room with_arc = room;
  with_arc.take(kit, group.items);
  LabelText text = whole_text(kit, mark);
  for (const bool figure_only : {false, true}) {
    if (figure_only) text.lines.resize(1);
    const Vec2 size = label_size(kit, text);
    const auto place = find_place(with_arc, {arc.tip, size.x, size.y, arc.bisector, 2, 60});
    if (!place) continue;
    room = std::move(with_arc);
    add_text(kit, room, text, *place, arc.tip, group);
    return group;
  }
  return std::nullopt;
}

std::optional<ink::Group> fit_angle(const Kit& kit, Room& room, const AngleMark& mark) {
  // A wider or a narrower arc may clear what is in the way of the usual one.
  for (const double share : {1.0, 1.5, 0.7, 2.0}) {
    AngleMark sized = mark;
    sized.radius *= share;
    if (std::optional<ink::Group> group = try_angle(kit, room, sized)) return group;
  }
  return std::nullopt;
}

ink::Group draw_angle(const Kit& kit, Room& room, const AngleMark& mark) {
  if (std::optional<ink::Group> group = fit_angle(kit, room, mark)) return std::move(*group);
  const Arc arc = arc_of(mark);
  ink::Group group{"dimension", {}};
  draw_arc(kit, mark, arc.from, arc.sweep, group);
  room.take(kit, group.items);
  const LabelText text = whole_text(kit, mark);
  const Vec2 size = label_size(kit, text), low = arc.tip + Vec2{2, 2};
  const auto place = find_place(room, {arc.tip, size.x, size.y, arc.bisector, 2, 60});
  add_text(kit, room, text, place.value_or(ink::Rect{low, low + size}), arc.tip, group);
  return group;
}

}  // namespace splay::drafting
