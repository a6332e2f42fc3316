#include "drafting/conventions.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/dimension.h"

namespace splay::drafting {

namespace {

constexpr double pi = std::numbers::pi;

// Points of a sign drawn upright, one unit high, at its place.
struct Sign {
  Vec2 at;
  double size, turn;
  Vec2 operator()(double x, double y) const {
    const Vec2 ex{std::cos(turn), std::sin(turn)};
    return at + (ex * x + left_of(ex) * y) * size;
  }
};

ink::Group legend(Items items) { return {"legend", std::move(items)}; }

}  // namespace

ink::Group placed_symbol(const Symbol& symbol, Vec2 at, double size, double turn) {
  constexpr double finest = 0.13;  // mm, the narrowest line of ISO 128-2
  const Sign p{at, size, turn};
  Items items = symbol.items;
  for (ink::Item& item : items) {
    auto* stroke = std::get_if<ink::Stroke>(&item);
    auto* fill = std::get_if<ink::Fill>(&item);
    if (stroke != nullptr) stroke->pen.width = std::max(finest, stroke->pen.width * size);
    if (stroke == nullptr && fill == nullptr) continue;
    for (Vec2& point : (stroke != nullptr ? stroke->path : fill->path).points)
      point = p(point.x, point.y);
  }
  return legend(std::move(items));
}

ink::Group cabinetmaker_triangle(const Kit& kit, Vec2 at, double size, double turn) {
  if (kit.look.symbols.triangle) return placed_symbol(*kit.look.symbols.triangle, at, size, turn);
  const Sign p{at, size, turn};
  ink::Path path;
  path.move(p(-0.5, -0.433)).line(p(0.5, -0.433)).line(p(0, 0.433)).close();
  return legend({ink::Stroke{std::move(path), {kit.look.middle}}});
}

ink::Group face_side_mark(const Kit& kit, Vec2 at, double size, double turn) {
  if (kit.look.symbols.face_side) return placed_symbol(*kit.look.symbols.face_side, at, size, turn);
  const Sign p{at, size, turn};
  ink::Path path;
  path.move(p(0.05, -0.5))
      .curve(p(0.05, -0.1), p(0.4, 0.1), p(0.3, 0.35))
      .curve(p(0.2, 0.58), p(-0.25, 0.5), p(-0.2, 0.2))
      .curve(p(-0.16, -0.02), p(0.12, -0.02), p(0.3, 0.12));
  return legend({ink::Stroke{std::move(path), {kit.look.middle}}});
}

ink::Group face_edge_mark(const Kit& kit, Vec2 at, double size, double turn) {
  if (kit.look.symbols.face_edge) return placed_symbol(*kit.look.symbols.face_edge, at, size, turn);
  const Sign p{at, size, turn};
  ink::Path path;
  path.move(p(-0.35, -0.5)).line(p(0, 0.5)).line(p(0.35, -0.5));
  return legend({ink::Stroke{std::move(path), {kit.look.middle}}});
}

ink::Group grain_arrow(const Kit& kit, Vec2 at, double length, double turn) {
  const Vec2 along{std::cos(turn), std::sin(turn)};
  const Vec2 low = at - along * (length / 2), high = at + along * (length / 2);
  return legend({ink::Stroke{ink::Path{}.move(low).line(high), kit.thin()}, arrow_head(low, -along),
                 arrow_head(high, along)});
}

ink::Group datum_mark(const Kit& kit, Vec2 at, double size) {
  ink::Path ring, quarters;
  const double r = size / 2;
  ring.arc(at, r, 0, 2 * pi).close();
  quarters.move(at).arc(at, r, 0, pi / 2).close();
  quarters.move(at).arc(at, r, pi, pi / 2).close();
  return legend({ink::Fill{std::move(quarters)}, ink::Stroke{std::move(ring), kit.thin()}});
}

Items fitting_mark(const Kit& kit, Vec2 at, double diameter, bool near) {
  const double radius = std::max(0.9, diameter / 2), arm = radius + 0.8;
  ink::Path circle, cross;
  circle.arc(at, radius, 0, 2 * pi).close();
  cross.move(at - Vec2{arm, 0}).line(at + Vec2{arm, 0});
  cross.move(at - Vec2{0, arm}).line(at + Vec2{0, arm});
  return {ink::Stroke{std::move(circle), near ? kit.thin() : kit.hidden()},
          ink::Stroke{std::move(cross), kit.thin()}};
}

ink::Group hand_mark(const Kit& kit, Vec2 at, double size, bool left) {
  // A shield whose black half lies on the part's own side.
  const double mirror = left ? 1 : -1;
  const Sign p{at, size, 0};
  ink::Path outline, half;
  outline.move(p(-0.8, 0.6))
      .line(p(0.8, 0.6))
      .line(p(0.8, -0.2))
      .line(p(0, -0.7))
      .line(p(-0.8, -0.2));
  outline.close();
  half.move(p(-0.8 * mirror, 0.6)).line(p(-0.55 * mirror, 0.6)).line(p(-0.55 * mirror, -0.356));
  half.line(p(-0.8 * mirror, -0.2)).close();
  const double letter = 0.55 * size;
  return legend({ink::Fill{std::move(half)}, ink::Stroke{std::move(outline), {kit.look.middle}},
                 ink::Text{p(0.08 * mirror, -0.22), left ? "L" : "R", letter, 0, ink::Align::centre,
                           ink::Face::bold}});
}

// Cone with its small end at the left; the circles show that end: on its own side in third angle,
// on the far side in first angle.
ink::Group projection_symbol(const Kit& kit, Vec2 at, double size, bool third_angle) {
  const double circles = third_angle ? -0.55 : 0.65, cone = third_angle ? 0.6 : -0.5;
  const Sign p{at, size, 0};
  ink::Path sides, rings, axes;
  sides.move(p(cone - 0.5, -0.25)).line(p(cone - 0.5, 0.25)).line(p(cone + 0.5, 0.5));
  sides.line(p(cone + 0.5, -0.5)).close();
  rings.arc(p(circles, 0), 0.5 * size, 0, 2 * pi).close();
  rings.move(p(circles + 0.25, 0)).arc(p(circles, 0), 0.25 * size, 0, 2 * pi).close();
  axes.move(p(cone - 0.6, 0)).line(p(cone + 0.6, 0));
  axes.move(p(circles - 0.6, 0)).line(p(circles + 0.6, 0));
  axes.move(p(circles, -0.6)).line(p(circles, 0.6));
  return legend({ink::Stroke{std::move(sides), {kit.look.middle}},
                 ink::Stroke{std::move(rings), {kit.look.middle}},
                 ink::Stroke{std::move(axes), {0.13, ink::Dash::chain}}});
}

void break_line(ink::Path& path, Vec2 a, Vec2 b, const BreakLine& look) {
  const double length = norm(b - a);
  if (length < look.least) return;
  const int waves = std::max(1, static_cast<int>(length / look.wave));
  const Vec2 along = (b - a) * (1.0 / waves), side = left_of(unit(b - a)) * look.swing;
  path.move(a);
  for (int i = 0; i < waves; ++i) {
    const Vec2 from = a + along * i;
    path.curve(from + along * 0.35 + side, from + along * 0.65 - side, from + along);
  }
}

}  // namespace splay::drafting
