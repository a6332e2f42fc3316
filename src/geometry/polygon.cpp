#include "geometry/polygon.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "base/tolerance.h"

namespace splay {
namespace {

double distance_to_segment(Vec2 p, Vec2 a, Vec2 b) {
  const Vec2 along = b - a;
  const double length_squared = dot(along, along);
  if (length_squared == 0) return norm(p - a);
  const double t = std::clamp(dot(p - a, along) / length_squared, 0.0, 1.0);
  return norm(p - a - along * t);
}

bool segments_touch(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const double nearest = std::min({distance_to_segment(a, c, d), distance_to_segment(b, c, d),
                                   distance_to_segment(c, a, b), distance_to_segment(d, a, b)});
  if (nearest <= tolerance::weld) return true;
  // The place where they cross, not the sides of the ends: those of collinear segments are noise.
  const double turn = cross(b - a, d - c);
  if (std::abs(turn) <= 1e-14 * norm(b - a) * norm(d - c)) return false;
  const double on_ab = cross(c - a, d - c) / turn, on_cd = cross(c - a, b - a) / turn;
  return on_ab >= 0 && on_ab <= 1 && on_cd >= 0 && on_cd <= 1;
}

}  // namespace

double signed_area(std::span<const Vec2> polygon) {
  if (polygon.size() < 3) return 0;
  const Vec2 origin = polygon[0];
  double twice = 0;
  for (std::size_t i = 1; i + 1 < polygon.size(); ++i) {
    twice += cross(polygon[i] - origin, polygon[i + 1] - origin);
  }
  return twice / 2;
}

bool is_simple(std::span<const Vec2> polygon) {
  const std::size_t n = polygon.size();
  if (n < 3) return false;
  const auto at = [&](std::size_t i) { return polygon[i % n]; };
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = at(i), b = at(i + 1), c = at(i + 2);
    if (norm(b - a) <= tolerance::weld) return false;
    // Folding back: the next edge lies along this one.
    if (dot(b - a, c - b) < 0 && (distance_to_segment(c, a, b) <= tolerance::weld ||
                                  distance_to_segment(a, b, c) <= tolerance::weld)) {
      return false;
    }
    for (std::size_t j = i + 2; j < n; ++j) {
      if (i == 0 && j == n - 1) continue;
      if (segments_touch(a, b, at(j), at(j + 1))) return false;
    }
  }
  return true;
}

bool contains(std::span<const Vec2> polygon, Vec2 point) {
  bool inside = false;
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = polygon[i], b = polygon[(i + 1) % n];
    if ((a.y <= point.y) == (b.y <= point.y)) continue;
    const bool left = cross(b - a, point - a) > 0;
    if (left == (b.y > a.y)) inside = !inside;
  }
  return inside;
}

std::optional<Vec2> meet(Vec2 a, Vec2 da, Vec2 b, Vec2 db) {
  const double turn = cross(da, db);
  if (std::abs(turn) <= 1e-12 * norm(da) * norm(db)) return std::nullopt;
  return a + da * (cross(b - a, db) / turn);
}

std::optional<Polygon> offset_edges(std::span<const Vec2> polygon,
                                    std::span<const double> distances) {
  const std::size_t n = polygon.size();
  if (n < 3 || distances.size() != n) return std::nullopt;
  std::vector<Vec2> direction(n), base(n);
  for (std::size_t i = 0; i < n; ++i) {
    direction[i] = unit(polygon[(i + 1) % n] - polygon[i]);
    base[i] = polygon[i] + left_of(direction[i]) * distances[i];
  }
  Polygon result(n);
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t before = (i + n - 1) % n;
    const auto corner = meet(base[before], direction[before], base[i], direction[i]);
    if (!corner) return std::nullopt;
    result[i] = *corner;
  }
  for (std::size_t i = 0; i < n; ++i) {
    const double length = dot(result[(i + 1) % n] - result[i], direction[i]);
    if (length <= tolerance::weld) return std::nullopt;
  }
  return result;
}

std::vector<Interval> clip_segment(std::span<const Vec2> polygon, Vec2 a, Vec2 b) {
  const Vec2 along = b - a;
  const std::size_t n = polygon.size();
  std::vector<double> stations = {0, 1};
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 c = polygon[i], edge = polygon[(i + 1) % n] - c;
    const double turn = cross(along, edge);
    if (turn == 0) continue;
    const double on_edge = cross(c - a, along) / turn;
    const double t = cross(c - a, edge) / turn;
    if (on_edge >= -1e-12 && on_edge <= 1 + 1e-12 && t > 0 && t < 1) stations.push_back(t);
  }
  std::sort(stations.begin(), stations.end());
  std::vector<Interval> inside;
  for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
    const double from = stations[i], to = stations[i + 1];
    if (to - from <= 1e-12 || !contains(polygon, a + along * ((from + to) / 2))) continue;
    if (!inside.empty() && from - inside.back().to <= 1e-12) {
      inside.back().to = to;
    } else {
      inside.push_back({from, to});
    }
  }
  return inside;
}

Polygon clipped(std::span<const Vec2> polygon, Vec2 inward, double at) {
  Polygon kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    const double da = dot(inward, a) - at, db = dot(inward, b) - at;
    if (da >= 0) kept.push_back(a);
    if ((da > 0 && db < 0) || (da < 0 && db > 0)) kept.push_back(a + (b - a) * (da / (da - db)));
  }
  return kept;
}

double shared_area(Polygon subject, const Polygon& window) {
  for (std::size_t i = 0; i < window.size() && subject.size() > 2; ++i) {
    const Vec2 inward = left_of(window[(i + 1) % window.size()] - window[i]);
    subject = clipped(subject, inward, dot(inward, window[i]));
  }
  return subject.size() < 3 ? 0 : std::abs(signed_area(subject));
}

Polygon convex_hull(std::vector<Vec2> points, double straight) {
  std::sort(points.begin(), points.end(),
            [](Vec2 p, Vec2 q) { return p.x != q.x ? p.x < q.x : p.y < q.y; });
  points.erase(
      std::unique(points.begin(), points.end(),
                  [](Vec2 p, Vec2 q) { return std::abs(p.x - q.x) + std::abs(p.y - q.y) < 1e-9; }),
      points.end());
  if (points.size() < 2) return points;
  Polygon hull;
  const auto add = [&](Vec2 p, std::size_t keep) {
    while (hull.size() >= keep + 2 &&
           cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= straight)
      hull.pop_back();
    hull.push_back(p);
  };
  for (const Vec2 p : points) add(p, 0);
  const std::size_t lower = hull.size() - 1;
  for (std::size_t i = points.size() - 1; i-- > 0;) add(points[i], lower);
  hull.pop_back();
  return hull;
}

}  // namespace splay
