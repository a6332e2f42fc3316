#include "drafting/view.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <utility>

namespace splay::drafting {

namespace {

// Ends nearer than a hundredth of a millimetre on paper are one.
using Key = std::pair<std::int64_t, std::int64_t>;
Key key_of(Vec2 p) { return {std::llround(p.x * 100), std::llround(p.y * 100)}; }

// Runs of segments from end to end, each segment used once.
class Chains {
 public:
  explicit Chains(std::vector<std::pair<Vec2, Vec2>> segments) : segments_(std::move(segments)) {
    for (std::size_t i = 0; i < segments_.size(); ++i) {
      at_[key_of(segments_[i].first)].push_back(i);
      at_[key_of(segments_[i].second)].push_back(i);
    }
    used_.resize(segments_.size());
  }

  ink::Path path() {
    ink::Path path;
    // Runs with open ends first, so that what is left are closed loops.
    for (std::size_t i = 0; i < segments_.size(); ++i) {
      if (odd(segments_[i].first)) run(i, segments_[i].first, path);
      if (odd(segments_[i].second)) run(i, segments_[i].second, path);
    }
    for (std::size_t i = 0; i < segments_.size(); ++i) run(i, segments_[i].first, path);
    return path;
  }

 private:
  bool odd(Vec2 p) const { return at_.at(key_of(p)).size() % 2 == 1; }

  void run(std::size_t first, Vec2 from, ink::Path& path) {
    if (used_[first]) return;
    const Key start = key_of(from);
    path.move(from);
    for (std::size_t i = first;;) {
      used_[i] = true;
      const bool forward = key_of(segments_[i].first) == key_of(from);
      from = forward ? segments_[i].second : segments_[i].first;
      const std::vector<std::size_t>& here = at_.at(key_of(from));
      const auto next = std::ranges::find_if(here, [&](std::size_t k) { return !used_[k]; });
      const bool done = next == here.end();
      if (done && key_of(from) == start) {
        path.close();
        return;
      }
      path.line(from);
      if (done) return;
      i = *next;
    }
  }

  std::vector<std::pair<Vec2, Vec2>> segments_;
  std::map<Key, std::vector<std::size_t>> at_;
  std::vector<bool> used_;
};

void stroke(ink::Group& group, ink::Path path, ink::Pen pen) {
  if (!path.verbs.empty()) group.items.emplace_back(ink::Stroke{std::move(path), pen});
}

// Light over the viewer's left shoulder.
double tone(const Look& look, Vec3 normal, const View& view) {
  const Vec3 light = unit(view.toward * 0.6 + view.up * 0.55 - view.right * 0.6);
  const double lit = dot(normal, light);
  if (lit > 0.68) return look.tone_light;
  return lit > 0.3 ? look.tone_mid : look.tone_dark;
}

}  // namespace

ink::Rect view_box(std::span<const ViewLine> lines) {
  ink::Rect box = no_rect();
  for (const ViewLine& line : lines) {
    include(box, line.a);
    include(box, line.b);
  }
  return box;
}

ink::Rect view_box(std::span<const Solid> solids, const View& view) {
  ink::Rect box = no_rect();
  for (const Solid& solid : solids)
    for (const Vec3 vertex : solid.vertices()) include(box, view.project(vertex));
  return box;
}

Placement centred(ink::Rect view_box, double scale, Vec2 centre) {
  return {scale, centre - middle(view_box) * scale};
}

ink::Path joined_lines(std::span<const ViewLine> lines, bool hidden, const Placement& placement) {
  std::vector<std::pair<Vec2, Vec2>> segments;
  for (const ViewLine& line : lines) {
    if (line.hidden != hidden) continue;
    const Vec2 a = placement.paper(line.a), b = placement.paper(line.b);
    if (key_of(a) != key_of(b)) segments.emplace_back(a, b);
  }
  return Chains(std::move(segments)).path();
}

ink::Group draw_view(const Kit& kit, std::span<const ViewLine> lines, const Placement& placement,
                     bool with_hidden) {
  ink::Group group{"view", {}};
  if (with_hidden) stroke(group, joined_lines(lines, true, placement), kit.hidden());
  stroke(group, joined_lines(lines, false, placement), kit.visible());
  return group;
}

ink::Group draw_toned(const Kit& kit, std::span<const ToneFace> faces,
                      std::span<const ViewLine> lines, const View& view,
                      const Placement& placement) {
  ink::Group group{"view", {}};
  for (const ToneFace& face : faces) {
    ink::Path path;
    for (const std::vector<Vec2>& loop : face.loops) {
      std::vector<Vec2> corners;
      corners.reserve(loop.size());
      for (const Vec2 p : loop) corners.push_back(placement.paper(p));
      path.polygon(corners);
    }
    group.items.emplace_back(ink::Fill{std::move(path), tone(kit.look, face.normal, view)});
  }
  stroke(group, joined_lines(lines, false, placement), {kit.look.middle});
  return group;
}

}  // namespace splay::drafting
