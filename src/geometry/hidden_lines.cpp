#include "geometry/hidden_lines.h"

#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "base/tolerance.h"
#include "geometry/line_union.h"
#include "geometry/occluders.h"

namespace splay {
namespace {

struct ViewPoint {
  Vec2 at;
  double depth = 0;
};

using Intervals = std::vector<Interval>;

void unite(Intervals& intervals, double gap) {
  std::sort(intervals.begin(), intervals.end(),
            [](const Interval& i, const Interval& j) { return i.from < j.from; });
  Intervals result;
  for (const Interval& i : intervals) {
    if (!result.empty() && i.from <= result.back().to + gap) {
      result.back().to = std::max(result.back().to, i.to);
    } else {
      result.push_back(i);
    }
  }
  intervals = std::move(result);
}

Intervals common(const Intervals& a, const Intervals& b) {
  Intervals result;
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    const Interval both{std::max(a[i].from, b[j].from), std::min(a[i].to, b[j].to)};
    if (both.from < both.to) result.push_back(both);
    ++(a[i].to < b[j].to ? i : j);
  }
  return result;
}

// Finds the hidden parts of one edge after another.
class EdgeTracer {
 public:
  explicit EdgeTracer(const Occluders& occluders) : occluders_(occluders) {}

  // Parameter intervals of a..b hidden on both sides of the line; ascending and apart.
  Intervals hidden(const ViewPoint& a, const ViewPoint& b) {
    start_ = a;
    along_ = b.at - a.at;
    deeper_ = b.depth - a.depth;
    const double length = norm(along_);
    aside_ = left_of(along_) * (tolerance::hidden_side / length);
    for (Intervals& side : sides_) side.clear();
    occluders_.stations(a.at, b.at, stations_);
    for (std::size_t i = 0; i + 1 < stations_.size(); ++i) trace(stations_[i], stations_[i + 1]);
    const double gap = tolerance::shortest_line / 100 / length;
    for (Intervals& side : sides_) unite(side, gap);
    Intervals result = common(sides_[0], sides_[1]);
    // Visible gaps too short to draw close up; then hidden bits too short to draw go.
    const double shortest = tolerance::shortest_line / length;
    unite(result, shortest);
    std::erase_if(result, [&](const Interval& i) { return i.to - i.from < shortest; });
    if (!result.empty() && result.front().from < shortest) result.front().from = 0;
    if (!result.empty() && result.back().to > 1 - shortest) result.back().to = 1;
    return result;
  }

 private:
  void trace(double from, double to) {
    const double furthest = std::min(start_.depth + deeper_ * from, start_.depth + deeper_ * to);
    const Vec2 p = start_.at + along_ * from, q = start_.at + along_ * to;
    const Vec2 low{std::min(p.x, q.x), std::min(p.y, q.y)};
    const Vec2 high{std::max(p.x, q.x), std::max(p.y, q.y)};
    constexpr double margin = 2 * tolerance::hidden_side;
    bool covered[2] = {false, false};
    for (const std::int32_t i : occluders_.about((p + q) * 0.5)) {
      const Occluder& o = occluders_[i];
      if (o.near <= furthest || (covered[0] && covered[1])) break;
      if (o.low.x > high.x + margin || o.high.x < low.x - margin || o.low.y > high.y + margin ||
          o.high.y < low.y - margin) {
        continue;
      }
      for (std::size_t side = 0; side < 2; ++side) {
        if (covered[side]) continue;
        const Interval part = behind(o, side, from, to);
        if (part.from >= part.to) continue;
        sides_[side].push_back(part);
        covered[side] = part.from <= from && part.to >= to;
      }
    }
  }

  Interval behind(const Occluder& o, std::size_t side, double from, double to) const {
    const Vec2 at = side == 0 ? start_.at + aside_ : start_.at - aside_;
    for (const ViewBound& bound : occluders_.bounds(o)) {
      const double excess = bound.a * at.x + bound.b * at.y + bound.c * start_.depth - bound.d;
      const double rate = bound.a * along_.x + bound.b * along_.y + bound.c * deeper_;
      if (rate > 0) {
        to = std::min(to, -excess / rate);
      } else if (rate < 0) {
        from = std::max(from, -excess / rate);
      } else if (excess >= 0) {
        return {};
      }
      if (from >= to) return {};
    }
    return {from, to};
  }

  const Occluders& occluders_;
  ViewPoint start_;
  Vec2 along_, aside_;
  double deeper_ = 0;
  std::vector<double> stations_;
  Intervals sides_[2];
};

enum class Look { skip, trace, hidden };

Look look_at(const Edge& edge, const Boundary& boundary, const View& view) {
  const double first = dot(boundary.faces[index(edge.face_1)].plane.n, view.toward);
  const double second = dot(boundary.faces[index(edge.face_2)].plane.n, view.toward);
  const int front = (first > edge_on) + (second > edge_on);
  const int back = (first < -edge_on) + (second < -edge_on);
  if (edge.smooth && (front == 2 || back == 2)) return Look::skip;
  return front > 0 ? Look::trace : Look::hidden;
}

void add_edge(const Edge& edge, Look look, int solid, const View& view, EdgeTracer& tracer,
              std::vector<ViewLine>& lines) {
  const ViewPoint a{view.project(edge.a), dot(edge.a, view.toward)};
  const ViewPoint b{view.project(edge.b), dot(edge.b, view.toward)};
  const Vec2 along = b.at - a.at;
  if (norm(along) < tolerance::shortest_line) return;
  if (look == Look::hidden) {
    lines.push_back({a.at, b.at, true, solid});
    return;
  }
  const auto point = [&](double t) { return t >= 1 ? b.at : a.at + along * t; };
  double reached = 0;
  for (const Interval& part : tracer.hidden(a, b)) {
    if (part.from > reached) lines.push_back({point(reached), point(part.from), false, solid});
    lines.push_back({point(part.from), point(part.to), true, solid});
    reached = part.to;
  }
  if (reached < 1) lines.push_back({point(reached), b.at, false, solid});
}

}  // namespace

View View::axonometric(double turn, double rise) {
  const double ct = std::cos(turn), st = std::sin(turn), cr = std::cos(rise), sr = std::sin(rise);
  const Vec3 toward{st * cr, -ct * cr, sr};
  const Vec3 right{ct, st, 0};
  return {right, cross(toward, right), toward};
}

Scene::Scene(std::span<const Solid> solids) : solids_(solids) {
  boundaries_.reserve(solids.size());
  for (const Solid& solid : solids) boundaries_.push_back(&solid.boundary());
}

std::vector<ViewLine> Scene::lines(const View& view) const {
  const Occluders occluders(solids_, view);
  EdgeTracer tracer(occluders);
  std::vector<ViewLine> lines;
  for (std::size_t s = 0; s < boundaries_.size(); ++s) {
    for (const Edge& edge : boundaries_[s]->edges) {
      const Look look = look_at(edge, *boundaries_[s], view);
      if (look == Look::skip) continue;
      add_edge(edge, look, static_cast<int>(s), view, tracer, lines);
    }
  }
  return unite_lines(lines);
}

std::vector<ViewLine> hidden_lines(std::span<const Solid> solids, const View& view) {
  return Scene(solids).lines(view);
}

}  // namespace splay
