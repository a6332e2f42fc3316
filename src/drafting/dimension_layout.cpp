#include "drafting/dimension_layout.h"

#include <algorithm>
#include <cmath>

namespace splay::drafting {

namespace {

// The boxes of a text and of a line leave more than `reach` between them.
bool parted(const Quad& text, Vec2 a, Vec2 b, double reach) {
  const auto beyond = [reach](double low, double high, double p, double q) {
    return low > std::max(p, q) + reach || high < std::min(p, q) - reach;
  };
  const auto [left, right] = std::ranges::minmax(text, {}, &Vec2::x);
  const auto [low, high] = std::ranges::minmax(text, {}, &Vec2::y);
  return beyond(left.x, right.x, a.x, b.x) || beyond(low.y, high.y, a.y, b.y);
}

}  // namespace

std::vector<Stop> RowFrame::stops() const {
  std::vector<Vec2> points = row_.stations;
  std::ranges::stable_sort(points,
                           [&](Vec2 a, Vec2 b) { return dot(row_.along, a) < dot(row_.along, b); });
  if (points.empty()) return {};
  const double datum = row_.has_datum ? row_.datum : dot(row_.along, points.front());
  std::vector<Stop> stops;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Vec2 on_paper = placement_.paper(points[i]);
    const double exact = dot(row_.along, points[i]) - datum;
    Stop stop{dot(row_.along, on_paper), dot(row_.out, on_paper), exact, kit_.figures.round(exact)};
    if (stops.empty() || exact - stops.back().exact >= kit_.figures.step_mm() / 2) {
      stops.push_back(stop);
      continue;
    }
    // One of the two is left out, and never the end: the row's overall runs to it.
    stop.t = stops.back().t = std::max(stops.back().t, stop.t);
    if (i + 1 == points.size() && stops.size() > 1) stops.back() = stop;
  }
  return stops;
}

Vec2 RowFrame::readable(Vec2 direction) {
  // Within ten degrees of upright figures are still read from the right.
  constexpr double upright = 0.1736;
  const bool backwards =
      direction.x < -upright || (std::abs(direction.x) <= upright && direction.y < 0);
  return backwards ? -direction : direction;
}

double RowFrame::turn(Vec2 direction) { return std::atan2(direction.y, direction.x); }

void RowFrame::figure(std::string words, double s, double t, DrawnRow& drawn) const {
  const double base = text_inside() ? t + height() : t;
  ink::Text text{point(s, base), std::move(words), height(), turn(reading()), ink::Align::centre};
  drawn.texts.push_back(kit_.fonts->box(text));
  drawn.group.items.emplace_back(std::move(text));
}

void RowFrame::line(double s1, double t1, double s2, double t2, ink::Path& path,
                    std::span<const Quad> avoid) const {
  constexpr double clearance = 0.7, shortest = 0.3;
  const Vec2 a = point(s1, t1), b = point(s2, t2);
  const double length = norm(b - a);
  if (length < 1e-6) return;
  std::vector<Interval> blocked;
  for (const Quad& text : avoid) {
    if (parted(text, a, b, 1.5 * clearance)) continue;
    for (const Interval& cut : clip_segment(grown(text, clearance), a, b)) blocked.push_back(cut);
  }
  std::ranges::sort(blocked, {}, &Interval::from);
  blocked.push_back({1, 1});
  double from = 0;
  for (const Interval& cut : blocked) {
    if ((cut.from - from) * length > shortest)
      path.move(a + (b - a) * from).line(a + (b - a) * cut.from);
    from = std::max(from, cut.to);
  }
}

void RowFrame::extensions(const std::vector<Stop>& stops, std::span<const Quad> avoid,
                          ink::Path& path) const {
  for (const Stop& stop : stops) {
    const double start = std::min(stop.t + feature_gap, at_ - overshoot);
    line(stop.s, start, stop.s, at_ + overshoot, path, avoid);
  }
}

ink::DimensionClaim RowFrame::claim(const Stop& from, const Stop& to) const {
  ink::DimensionClaim claim;
  claim.from = point(from.s, at_);
  claim.to = point(to.s, at_);
  claim.along = row_.along;
  claim.scale = placement_.scale;
  claim.exact_mm = to.exact - from.exact;
  claim.step_mm = kit_.figures.step_mm();
  claim.steps = (to.figure - from.figure).steps;
  claim.chain = row_.chain;
  claim.overall = row_.kind == RowKind::overall;
  claim.running = row_.kind == RowKind::running;
  return claim;
}

}  // namespace splay::drafting
