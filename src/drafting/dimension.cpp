#include "drafting/dimension.h"

#include <algorithm>
#include <cmath>

#include "drafting/dimension_layout.h"

namespace splay::drafting {

namespace {

constexpr double first_line = 10, next_line = 8;  // off the outline, off the row before
constexpr double air = 2.2;                       // between a row and the texts of the next

double farthest(ink::Rect box, Vec2 out) {
  double far = -1e300;
  for (const Vec2 corner : quad(box)) far = std::max(far, dot(out, corner));
  return far;
}

}  // namespace

ink::Fill arrow_head(Vec2 tip, Vec2 direction, double length) {
  const Vec2 back = tip - unit(direction) * length;
  const Vec2 side = left_of(unit(direction)) * (length * 0.17);
  return {ink::Path{}.move(tip).line(back + side).line(back - side).close()};
}

DrawnRow draw_row(const Kit& kit, const Placement& placement, const Row& row, double at,
                  std::span<const Quad> avoid) {
  const RowFrame frame(kit, placement, row, at);
  const std::vector<Stop> stops = frame.stops();
  DrawnRow drawn{{"dimension", {}}, at, {}};
  if (stops.empty()) return drawn;
  if (row.kind == RowKind::running)
    draw_running(frame, stops, avoid, drawn);
  else
    draw_chain(frame, stops, avoid, drawn);
  for (const Quad& text : drawn.texts)
    for (const Vec2 corner : text) drawn.reach = std::max(drawn.reach, dot(row.out, corner));
  return drawn;
}

DrawnRows draw_rows(const Kit& kit, const Placement& placement, ink::Rect outline,
                    std::span<const Row> rows, std::span<const Quad> avoid) {
  DrawnRows drawn;
  if (rows.empty()) return drawn;
  const Vec2 out = rows.front().out;
  drawn.reach = farthest(outline, out);
  double before = drawn.reach + first_line - next_line;
  std::vector<Quad> texts(avoid.begin(), avoid.end());
  for (const Row& row : rows) {
    const bool text_inside = RowFrame(kit, placement, row, 0).text_inside();
    const double clear = row.kind != RowKind::running && text_inside ? kit.look.figures + 1 : 0;
    const double at = std::max(before + next_line, drawn.reach + air + clear);
    DrawnRow one = draw_row(kit, placement, row, at, texts);
    texts.insert(texts.end(), one.texts.begin(), one.texts.end());
    drawn.groups.push_back(std::move(one.group));
    drawn.reach = std::max(drawn.reach, one.reach);
    before = at;
  }
  return drawn;
}

DrawnRow draw_aligned(const Kit& kit, const Placement& placement, Vec2 a, Vec2 b, Vec2 out,
                      double offset, const std::string& note) {
  Row row;
  row.kind = RowKind::overall;
  row.stations = {a, b};
  row.along = unit(b - a);
  row.out = left_of(row.along);
  if (dot(row.out, out) < 0) row.out = -row.out;
  row.note = note;
  const double edge = std::max(dot(row.out, placement.paper(a)), dot(row.out, placement.paper(b)));
  return draw_row(kit, placement, row, edge + offset);
}

}  // namespace splay::drafting
