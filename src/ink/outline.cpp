#include "ink/outline.h"

#include <algorithm>
#include <cmath>

namespace splay::ink {

namespace {

// The number of equal steps in t that keep a cubic within the tolerance: its distance from a chord
// is at most the largest second derivative times step^2 / 8 (a bound from any numerical analysis
// book).
int curve_steps(Vec2 a, Vec2 b, Vec2 c, Vec2 d, double tolerance) {
  const double bend = std::max(norm(a - b * 2 + c), norm(b - c * 2 + d)) * 6;
  return std::clamp(static_cast<int>(std::ceil(std::sqrt(bend / (8 * tolerance)))), 1, 1000);
}

void flatten_curve(std::vector<Vec2>& points, Vec2 b, Vec2 c, Vec2 d, double tolerance) {
  const Vec2 a = points.back();
  const int steps = curve_steps(a, b, c, d, tolerance);
  for (int i = 1; i < steps; ++i) {
    const double t = static_cast<double>(i) / steps;
    const double s = 1 - t;
    points.push_back(a * (s * s * s) + b * (3 * s * s * t) + c * (3 * s * t * t) + d * (t * t * t));
  }
  points.push_back(d);
}

bool sound(double value) { return std::abs(value) <= 1e4; }  // false for NaN
bool sound(Vec2 p) { return sound(p.x) && sound(p.y); }
bool sound(const Rect& r) { return sound(r.low) && sound(r.high); }
bool sound_grey(double grey) { return grey >= 0 && grey <= 1; }

std::string path_fault(const Path& path) {
  if (!std::all_of(path.points.begin(), path.points.end(), [](Vec2 p) { return sound(p); }))
    return "a point of a path is not finite";
  std::size_t needed = 0;
  bool under_way = false;
  for (const Path::Verb verb : path.verbs) {
    if (verb == Path::Verb::move) under_way = true;
    if (!under_way) return "a path must begin with move";
    if (verb == Path::Verb::close) under_way = false;
    if (verb != Path::Verb::close) needed += verb == Path::Verb::curve ? 3 : 1;
  }
  return needed == path.points.size() ? "" : "a path has too few or too many points";
}

struct NumberFault {
  std::string operator()(const Stroke& stroke) const {
    if (!(stroke.pen.width > 0 && sound(stroke.pen.width))) return "a pen must have a width";
    if (!sound_grey(stroke.pen.grey)) return "a grey must be 0 to 1";
    return path_fault(stroke.path);
  }
  std::string operator()(const Fill& fill) const {
    return sound_grey(fill.grey) ? path_fault(fill.path) : "a grey must be 0 to 1";
  }
  std::string operator()(const Text& text) const {
    if (!sound(text.at) || !sound(text.turn)) return "a text's place is not finite";
    if (!(text.height > 0 && sound(text.height))) return "a text must have a height";
    return sound_grey(text.grey) ? "" : "a grey must be 0 to 1";
  }
  std::string operator()(const DimensionClaim& claim) const {
    const bool exact = std::isfinite(claim.exact_mm) && claim.step_mm > 0 &&
                       std::isfinite(claim.step_mm) && claim.scale > 0 &&
                       std::isfinite(claim.scale);
    const bool placed = sound(claim.from) && sound(claim.to) && sound(claim.along);
    return exact && placed && norm(claim.along) > 0 ? "" : "a dimension's numbers are not finite";
  }
  std::string operator()(const PartClaim&) const { return ""; }
  std::string operator()(const Anchor& anchor) const {
    return sound(anchor.at) ? "" : "an anchor's place is not finite";
  }
  std::string operator()(const Link& link) const {
    return sound(link.area) ? "" : "a link's area is not finite";
  }
  std::string operator()(const Group&) const { return ""; }
};

}  // namespace

std::vector<Polyline> flatten(const Path& path, double tolerance) {
  std::vector<Polyline> lines;
  std::size_t next = 0;
  for (const Path::Verb verb : path.verbs) {
    switch (verb) {
      case Path::Verb::move:
        lines.push_back({{path.points[next++]}, false});
        break;
      case Path::Verb::line:
        lines.back().points.push_back(path.points[next++]);
        break;
      case Path::Verb::curve:
        flatten_curve(lines.back().points, path.points[next], path.points[next + 1],
                      path.points[next + 2], tolerance);
        next += 3;
        break;
      case Path::Verb::close:
        lines.back().points.push_back(lines.back().points.front());
        lines.back().closed = true;
        break;
    }
  }
  return lines;
}

std::string number_fault(const Item& item) { return std::visit(NumberFault{}, item); }

Rect bounds(const std::vector<Vec2>& points) {
  Rect box{points.front(), points.front()};
  for (const Vec2 p : points) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

}  // namespace splay::ink
