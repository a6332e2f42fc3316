#include "sheets/joint_faces.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"

namespace splay::sheets {

namespace {

using drafting::Loops;
using Loop = std::vector<Vec2>;

std::optional<Line2> in_window(const ink::Rect& w, Line2 line) {
  const std::vector<Vec2> corners{w.low, {w.high.x, w.low.y}, w.high, {w.low.x, w.high.y}};
  double from = 1, to = 0;
  for (const Interval& part : clip_segment(corners, line.a, line.b)) {
    from = std::min(from, part.from);
    to = std::max(to, part.to);
  }
  if (to <= from) return std::nullopt;
  return Line2{line.a + (line.b - line.a) * from, line.a + (line.b - line.a) * to};
}

void add_face(std::vector<Faces>& all, Line2 line) {
  Vec2 along = left_of(unit(line.b - line.a));
  if (along.x < -1e-7 || (std::abs(along.x) <= 1e-7 && along.y < 0)) along = -along;
  const auto known = std::ranges::find_if(
      all, [&](const Faces& faces) { return std::abs(cross(faces.along, along)) < 1e-6; });
  if (known == all.end())
    all.push_back({along, {line}});
  else
    known->lines.push_back(line);
}

// From the nearest line; negative outside.
double depth(const Loops& loops, Vec2 p) {
  int times = 0;
  double least = 1e300;
  for (const Loop& loop : loops) {
    if (contains(loop, p)) ++times;
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Vec2 a = loop[i], d = loop[(i + 1) % loop.size()] - a;
      const double along = std::clamp(dot(p - a, d) / std::max(dot(d, d), 1e-12), 0.0, 1.0);
      least = std::min(least, norm(p - (a + d * along)));
    }
  }
  return times % 2 == 1 ? least : -1;
}

}  // namespace

std::vector<Faces> faces_on_edge(const JointCut& cut, double shortest) {
  std::vector<Faces> all;
  for (const Loops& loops : cut.loops)
    for (const Loop& loop : loops)
      for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto line = in_window(cut.window, {loop[i], loop[(i + 1) % loop.size()]});
        if (line && norm(line->b - line->a) >= shortest) add_face(all, *line);
      }
  std::ranges::stable_sort(
      all, [](const Faces& a, const Faces& b) { return a.lines.size() > b.lines.size(); });
  return all;
}

std::vector<Vec2> stations(const Faces& faces, Vec2 out, double step, std::size_t most) {
  std::vector<Vec2> points;
  for (const Line2& line : faces.lines)
    points.push_back(dot(out, line.a) > dot(out, line.b) ? line.a : line.b);
  std::ranges::stable_sort(
      points, [&](Vec2 a, Vec2 b) { return dot(faces.along, a) < dot(faces.along, b); });
  while (count_apart(points, faces.along, step) > most) points.pop_back();
  return count_apart(points, faces.along, step) < 2 ? std::vector<Vec2>{} : points;
}

std::size_t count_apart(const std::vector<Vec2>& points, Vec2 along, double step) {
  std::size_t count = 0;
  double last = -1e300;
  for (const Vec2 p : points) {
    if (dot(along, p) - last > step) ++count;
    last = dot(along, p);
  }
  return count;
}

std::optional<Vec2> deep_inside(const std::vector<Loops>& shown, Vec2 far_corner) {
  constexpr int cells = 14;
  std::optional<Vec2> best;
  double most = 0.3;
  for (const Loops& loops : shown)
    for (int i = 1; i < cells; ++i)
      for (int j = 1; j < cells; ++j) {
        const Vec2 p{far_corner.x * i / cells, far_corner.y * j / cells};
        const double deep = depth(loops, p);
        if (deep <= most) continue;
        most = deep;
        best = p;
      }
  return best;
}

}  // namespace splay::sheets
