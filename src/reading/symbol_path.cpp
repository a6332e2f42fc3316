#include "reading/symbol_path.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace splay::reading {

namespace {

using std::numbers::pi;

// An ellipse turned in its plane; `on` takes the angle before turning.
struct Ellipse {
  Vec2 centre, radii;
  double turn = 0;  // radians
  Vec2 turned(Vec2 p) const {
    const double c = std::cos(turn), s = std::sin(turn);
    return {c * p.x - s * p.y, s * p.x + c * p.y};
  }
  Vec2 on(double angle) const {
    return centre + turned({radii.x * std::cos(angle), radii.y * std::sin(angle)});
  }
  Vec2 along(double angle) const {
    return turned({-radii.x * std::sin(angle), radii.y * std::cos(angle)});
  }
};

void add_curves(SymbolPathMaker& path, const Ellipse& ellipse, double from, double sweep,
                Vec2 end) {
  constexpr double eighth = pi / 4;
  const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(sweep) / eighth - 1e-9)));
  const double step = sweep / pieces, handle = 4.0 / 3 * std::tan(step / 4);
  for (int i = 0; i < pieces; ++i) {
    const double a = from + step * i, b = from + step * (i + 1);
    const Vec2 tip = i + 1 == pieces ? end : ellipse.on(b);
    path.curve(ellipse.on(a) + ellipse.along(a) * handle, tip - ellipse.along(b) * handle, tip);
  }
}

}  // namespace

void SymbolPathMaker::move(Vec2 p) {
  at_ = first_ = p;
  under_way_ = false;
}

void SymbolPathMaker::start() {
  if (under_way_) return;
  under_way_ = true;
  path_.verbs.push_back(model::SymbolPath::Verb::move);
  path_.points.push_back(at_);
}

void SymbolPathMaker::line(Vec2 p) {
  start();
  path_.verbs.push_back(model::SymbolPath::Verb::line);
  path_.points.push_back(p);
  at_ = p;
}

void SymbolPathMaker::curve(Vec2 c1, Vec2 c2, Vec2 p) {
  start();
  path_.verbs.push_back(model::SymbolPath::Verb::curve);
  path_.points.insert(path_.points.end(), {c1, c2, p});
  at_ = p;
}

void SymbolPathMaker::close() {
  if (under_way_) path_.verbs.push_back(model::SymbolPath::Verb::close);
  under_way_ = false;
  at_ = first_;
}

void SymbolPathMaker::arc(Vec2 radii, double turn, bool large, bool sweep, Vec2 end) {
  const Vec2 start = at_;
  radii = {std::abs(radii.x), std::abs(radii.y)};
  if (start.x == end.x && start.y == end.y) return;
  Ellipse ellipse{{}, radii, turn * pi / 180};
  // F.6.5: half the chord in the ellipse's own axes.
  const double c = std::cos(ellipse.turn), s = std::sin(ellipse.turn);
  const Vec2 half = (start - end) * 0.5;
  const Vec2 own{c * half.x + s * half.y, c * half.y - s * half.x};
  const double x = own.x / radii.x, y = own.y / radii.y, reach = x * x + y * y;
  // A radius of nothing, or so small that its ratio is no number, is a line (F.6.2).
  if (radii.x == 0 || radii.y == 0 || !std::isfinite(reach)) return line(end);
  if (reach > 1) ellipse.radii = radii * std::sqrt(reach);  // F.6.6
  const double root = reach >= 1 ? 0 : std::sqrt((1 - reach) / reach);
  if (!std::isfinite(root)) return line(end);
  const double side = large == sweep ? -root : root;
  const Vec2 u{x / std::sqrt(std::max(reach, 1.0)), y / std::sqrt(std::max(reach, 1.0))};
  const Vec2 middle{side * u.y, -side * u.x};  // of the unit circle
  ellipse.centre = (start + end) * 0.5 +
                   ellipse.turned({middle.x * ellipse.radii.x, middle.y * ellipse.radii.y});
  const double from = std::atan2(u.y - middle.y, u.x - middle.x);
  double way = std::atan2(-u.y - middle.y, -u.x - middle.x) - from;
  if (sweep && way < 0) way += 2 * pi;
  if (!sweep && way > 0) way -= 2 * pi;
  add_curves(*this, ellipse, from, way, end);
}

void SymbolPathMaker::ellipse(Vec2 centre, Vec2 radii) {
  const Vec2 start = centre + Vec2{radii.x, 0};
  move(start);
  add_curves(*this, {centre, radii, 0}, 0, 2 * pi, start);
  close();
}

void SymbolPathMaker::polygon(const std::vector<Vec2>& corners, bool closed) {
  for (std::size_t i = 0; i < corners.size(); ++i) {
    if (i == 0)
      move(corners[i]);
    else
      line(corners[i]);
  }
  if (closed) close();
}

void SymbolPathMaker::rect(Vec2 low, Vec2 size, Vec2 radii) {
  const Vec2 high = low + size;
  const Vec2 r{std::min(radii.x, size.x / 2), std::min(radii.y, size.y / 2)};
  if (r.x <= 0 || r.y <= 0) return polygon({low, {high.x, low.y}, high, {low.x, high.y}}, true);
  const auto corner = [&](Vec2 from, Vec2 to) {
    line(from);
    arc(r, 0, false, true, to);
  };
  move({low.x + r.x, low.y});
  corner({high.x - r.x, low.y}, {high.x, low.y + r.y});
  corner({high.x, high.y - r.y}, {high.x - r.x, high.y});
  corner({low.x + r.x, high.y}, {low.x, high.y - r.y});
  corner({low.x, low.y + r.y}, {low.x + r.x, low.y});
  close();
}

}  // namespace splay::reading
