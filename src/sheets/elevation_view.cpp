#include "sheets/elevation_view.h"

#include <algorithm>
#include <cmath>

#include "drafting/callout.h"
#include "sheets/elevation_moving.h"

namespace splay::sheets {

namespace {

using drafting::Items;
using drafting::Placement;

// What is drawn so far, for labels to keep clear of.
struct Canvas {
  const Context& context;
  const Elevation& elevation;
  Placement placement;
  Items items;
  ink::Rect outline = drafting::no_rect();  // the view with its cutting line
};

bool crossed(const Canvas& canvas, const ink::Group& mark) {
  const drafting::Kit& kit = canvas.context.kit;
  drafting::Room room(drafting::grown(canvas.outline, 40));
  room.take(kit, canvas.items);
  return std::ranges::any_of(mark.items, [&](const ink::Item& item) {
    const auto* letter = std::get_if<ink::Text>(&item);
    return letter != nullptr && !room.free(kit.fonts->box(*letter), 0.5);
  });
}

// Its ends just outside the piece, or where a door's swing is in the way outside that.
ink::Group cut_mark(const Canvas& canvas, const CutLine& line) {
  constexpr double beyond = 2;
  const drafting::Kit& kit = canvas.context.kit;
  Vec2 a = canvas.placement.paper(line.a), b = canvas.placement.paper(line.b);
  const Vec2 along = unit(b - a);
  ink::Group mark = drafting::section_mark(kit, a - along * beyond, b + along * beyond,
                                           line.looking, line.letter);
  if (!crossed(canvas, mark)) return mark;
  for (Vec2* end : {&a, &b}) {
    const Vec2 out = end == &a ? -along : along;
    for (const Vec2 corner : drafting::quad(canvas.outline))
      *end = *end + out * std::max(0.0, dot(out, corner - *end));
  }
  return drafting::section_mark(kit, a - along * beyond, b + along * beyond, line.looking,
                                line.letter);
}

void draw_picture(Canvas& canvas) {
  const drafting::Kit& kit = canvas.context.kit;
  const Elevation& e = canvas.elevation;
  if (e.section) {
    drafting::SectionDrawing section = drafting::draw_section(kit, *e.section, canvas.placement);
    canvas.items.emplace_back(std::move(section.beyond));
    canvas.items.emplace_back(std::move(section.cut));
  } else {
    canvas.items.emplace_back(drafting::draw_view(kit, e.lines, canvas.placement, e.with_hidden));
  }
  drafting::append(canvas.items, draw_movement(kit, e, canvas.placement));
  canvas.outline = canvas.placement.paper(drafting::joined(e.box, swing_box(e)));
  ink::Rect outline = canvas.outline;
  for (const CutLine& line : e.cut_lines) {
    canvas.items.emplace_back(cut_mark(canvas, line));
    outline = drafting::joined(outline, drafting::extent(kit, {canvas.items.back()}));
  }
  canvas.outline = outline;
}

// Extension lines start where a line from the row first meets the view.
void start_at_outline(const Elevation& e, drafting::Row& row) {
  const std::vector<ViewLine>& lines = e.section ? e.section->beyond : e.lines;
  for (Vec2& station : row.stations) {
    const double s = dot(row.along, station);
    double farthest = -1e300;
    for (const ViewLine& line : lines) {
      if (line.hidden) continue;
      const double a = dot(row.along, line.a) - s, b = dot(row.along, line.b) - s;
      constexpr double near = 1e-3;
      if (std::min(a, b) > near || std::max(a, b) < -near) continue;
      const double ta = dot(row.out, line.a), tb = dot(row.out, line.b);
      const bool along_ray = std::abs(a - b) < near;
      const double t = along_ray ? std::max(ta, tb) : ta + (tb - ta) * a / (a - b);
      farthest = std::max(farthest, t);
    }
    if (farthest > -1e300) station = row.along * s + row.out * farthest;
  }
}

void draw_lengths(Canvas& canvas) {
  const drafting::Kit& kit = canvas.context.kit;
  const Elevation& e = canvas.elevation;
  // Sloped lengths first, close to the edge they measure; the rows then stand outside them.
  const Vec2 centre = drafting::middle(e.box);
  constexpr double off_edge = 8;
  std::vector<drafting::Quad> texts;
  for (const Sloped& length : e.sloped) {
    const Vec2 outwards = (length.a + length.b) * 0.5 - centre;
    drafting::DrawnRow row =
        drafting::draw_aligned(kit, canvas.placement, length.a, length.b, outwards, off_edge);
    texts.insert(texts.end(), row.texts.begin(), row.texts.end());
    canvas.items.emplace_back(std::move(row.group));
    canvas.outline = drafting::joined(canvas.outline, drafting::extent(kit, {canvas.items.back()}));
  }
  for (const std::vector<drafting::Row>* given : {&e.below, &e.above, &e.left, &e.right}) {
    std::vector<drafting::Row> rows = *given;
    for (drafting::Row& row : rows) start_at_outline(e, row);
    drafting::append(
        canvas.items,
        drafting::draw_rows(kit, canvas.placement, canvas.outline, rows, texts).groups);
  }
}

drafting::AngleMark mark_of(const Canvas& canvas, const parts::NamedAngle& angle) {
  const View& v = canvas.elevation.view;
  const ink::Rect box = canvas.placement.paper(canvas.elevation.box);
  drafting::AngleMark mark;
  mark.at = canvas.placement.paper(v.project(angle.at));
  mark.from = v.project(angle.from);
  mark.to = v.project(angle.to);
  mark.radians = angle.radians;
  mark.name = angle.name;
  mark.radius = std::clamp(std::min(box.width(), box.height()) / 6, 6.0, 10.0);
  return mark;
}

// Two angles that this view shows as one: a front leg's and that of the back leg behind it.
bool same_on_paper(const drafting::AngleMark& a, const drafting::AngleMark& b) {
  constexpr double near = 1, alike = 1e-3;
  return norm(a.at - b.at) < near && norm(unit(a.from) - unit(b.from)) < alike &&
         norm(unit(a.to) - unit(b.to)) < alike;
}

void draw_angles(Canvas& canvas) {
  constexpr double reach = 24;  // how far a label may stand off the view
  drafting::Room room(drafting::grown(canvas.placement.paper(canvas.elevation.box), reach));
  room.take(canvas.context.kit, canvas.items);
  std::vector<drafting::AngleMark> marks;
  for (const parts::NamedAngle& angle : canvas.elevation.angles) {
    const drafting::AngleMark mark = mark_of(canvas, angle);
    const auto same = [&](const drafting::AngleMark& m) { return same_on_paper(m, mark); };
    if (std::ranges::none_of(marks, same)) marks.push_back(mark);
  }
  for (const drafting::AngleMark& mark : marks)
    if (std::optional<ink::Group> group = drafting::try_angle(canvas.context.kit, room, mark))
      canvas.items.emplace_back(std::move(*group));
}

}  // namespace

DrawnElevation draw(const Context& context, const Elevation& elevation, drafting::Scale scale) {
  Canvas canvas{context, elevation, {scale.ratio(), {0, 0}}, {}};
  draw_picture(canvas);
  draw_lengths(canvas);
  draw_angles(canvas);
  const ink::Rect drawn = drafting::extent(context.kit, canvas.items);
  const double x = drafting::middle(canvas.placement.paper(elevation.box)).x;
  canvas.items.emplace_back(
      drafting::view_title(context.kit, {x, drawn.low.y - 2}, elevation.title, {}));
  return {canvas.items, canvas.placement, drafting::extent(context.kit, canvas.items)};
}

}  // namespace splay::sheets
