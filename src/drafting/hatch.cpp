#include "drafting/hatch.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace splay::drafting {

namespace {

// Where the line dot(normal, p) == level crosses the loops, as distances along it, ascending. An
// edge owns its lower end only, so that a corner counts once or twice as it must.
std::vector<double> crossings(const Loops& loops, Vec2 along, Vec2 normal, double level) {
  std::vector<double> at;
  for (const std::vector<Vec2>& loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Vec2 a = loop[i], b = loop[(i + 1) % loop.size()];
      const double da = dot(normal, a) - level, db = dot(normal, b) - level;
      if ((da < 0) == (db < 0)) continue;
      at.push_back(dot(along, a) + (dot(along, b) - dot(along, a)) * da / (da - db));
    }
  }
  std::ranges::sort(at);
  return at;
}

}  // namespace

ink::Path hatch(const Loops& loops, HatchStyle style) {
  const double turn = style.degrees * std::numbers::pi / 180;
  const Vec2 along{std::cos(turn), std::sin(turn)};
  const Vec2 normal = left_of(along);
  double low = 1e300, high = -1e300;
  for (const std::vector<Vec2>& loop : loops) {
    for (const Vec2 p : loop) {
      low = std::min(low, dot(normal, p));
      high = std::max(high, dot(normal, p));
    }
  }
  ink::Path path;
  constexpr double shortest = 0.05;
  for (double k = std::ceil(low / style.spacing); k * style.spacing < high; ++k) {
    const double level = k * style.spacing;
    const std::vector<double> at = crossings(loops, along, normal, level);
    for (std::size_t i = 0; i + 1 < at.size(); i += 2) {
      if (at[i + 1] - at[i] < shortest) continue;
      path.move(along * at[i] + normal * level).line(along * at[i + 1] + normal * level);
    }
  }
  return path;
}

ink::Group waste_side(const Kit& kit, Vec2 a, Vec2 b, Vec2 into, double depth) {
  const Vec2 along = unit(b - a);
  Vec2 across = left_of(along);
  if (dot(across, into) < 0) across = -across;
  const Loops band{{a, b, b + across * depth, a + across * depth}};
  const double slant = std::atan2(along.y, along.x) * 180 / std::numbers::pi;
  ink::Group group{"hatching", {}};
  group.items.emplace_back(
      ink::Stroke{hatch(band, {.degrees = slant + 60, .spacing = 1.4}), kit.thin()});
  return group;
}

ink::Group waste_area(const Kit& kit, const Loops& loops) {
  ink::Group group{"hatching", {}};
  group.items.emplace_back(ink::Stroke{hatch(loops, {.degrees = 60, .spacing = 1.4}), kit.thin()});
  return group;
}

}  // namespace splay::drafting
