#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "ink/ink.h"

namespace splay::ink {

namespace {

constexpr double quarter = std::numbers::pi / 2;

// Pieces for an arc. One cubic over a quarter turn leaves the circle by 2.73e-4 radii (from
// memory), and that falls with the sixth power of the angle; a full-size template must stay within
// a thousandth of a millimetre.
int arc_pieces(double radius, double sweep) {
  constexpr double quarter_error = 2.73e-4;
  constexpr double allowed = 1e-3;
  const double relative = quarter_error * std::abs(radius) / allowed;
  const double refine = std::max(1.0, std::pow(relative, 1.0 / 6));
  return static_cast<int>(std::ceil(std::abs(sweep) / quarter * refine - 1e-9));
}

}  // namespace

Path& Path::move(Vec2 p) {
  verbs.push_back(Verb::move);
  points.push_back(p);
  return *this;
}

Path& Path::line(Vec2 p) {
  verbs.push_back(Verb::line);
  points.push_back(p);
  return *this;
}

Path& Path::curve(Vec2 c1, Vec2 c2, Vec2 p) {
  verbs.push_back(Verb::curve);
  points.insert(points.end(), {c1, c2, p});
  return *this;
}

Path& Path::close() {
  verbs.push_back(Verb::close);
  return *this;
}

Path& Path::arc(Vec2 centre, double radius, double from, double sweep) {
  constexpr double most_turns = 64;
  if (!std::isfinite(radius) || !std::isfinite(from) ||
      !(std::abs(sweep) <= most_turns * 4 * quarter))
    throw std::invalid_argument("an arc needs a finite radius, start and sweep");
  const auto direction = [](double angle) { return Vec2{std::cos(angle), std::sin(angle)}; };
  const Vec2 start = centre + direction(from) * radius;
  if (verbs.empty() || verbs.back() == Verb::close) {
    move(start);
  } else {
    line(start);
  }
  const int pieces = arc_pieces(radius, sweep);
  const double step = pieces == 0 ? 0 : sweep / pieces;
  const double handle = radius * 4 / 3 * std::tan(step / 4);
  for (int i = 0; i < pieces; ++i) {
    const Vec2 a = direction(from + step * i);
    const Vec2 b = direction(from + step * (i + 1));
    curve(centre + a * radius + left_of(a) * handle, centre + b * radius - left_of(b) * handle,
          centre + b * radius);
  }
  return *this;
}

Path& Path::rect(Rect r) {
  return polygon({r.low, {r.high.x, r.low.y}, r.high, {r.low.x, r.high.y}});
}

Path& Path::polygon(const std::vector<Vec2>& corners) {
  for (std::size_t i = 0; i < corners.size(); ++i) {
    if (i == 0) {
      move(corners[i]);
    } else {
      line(corners[i]);
    }
  }
  return corners.empty() ? *this : close();
}

}  // namespace splay::ink
