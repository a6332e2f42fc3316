#include "sheets/saw_steps_broken.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "drafting/conventions.h"
#include "geometry/polygon.h"

namespace splay::sheets {

namespace {

using drafting::Loops;
using Loop = std::vector<Vec2>;

constexpr double break_gap = 2;     // mm between two stretches
constexpr double least_off = 0.25;  // of the room, for a side whose end need not be seen

// Smaller waves than on a part view's detail: the whole drawing is smaller.
void freehand(Vec2 a, Vec2 b, ink::Path& path) {
  drafting::break_line(path, a, b, {5, std::min(0.9, norm(b - a)), 0.3});
}

}  // namespace

BrokenAxis::BrokenAxis(const Wanted& wanted) {
  const double at = std::clamp(wanted.at, wanted.low, wanted.high);
  double low = at - wanted.low, high = wanted.high - at;
  if (low + high <= wanted.room) {
    stretches_ = {{wanted.low, wanted.high, 0}};
    return;
  }
  const double least = least_off * wanted.room;
  const auto broken_off = [&](double& side, double other, bool end) {
    const double most = std::max(least, wanted.room - other);
    if (end || side <= most) return false;
    side = most;
    return true;
  };
  off_low_ = broken_off(low, high, wanted.low_end);
  off_high_ = broken_off(high, low, wanted.high_end);
  double room_low = low, room_high = high;
  const double half = wanted.room / 2;
  if (low + high > wanted.room) {
    room_low = low <= half ? low : std::max(half, wanted.room - high);
    room_high = wanted.room - room_low;
  }
  add_side(low, room_low, wanted.low_end, false, at);
  add_side(high, room_high, wanted.high_end, true, at);
  // The two stretches that meet at `at` are one.
  for (std::size_t i = 0; i + 1 < stretches_.size(); ++i) {
    if (stretches_[i].to != stretches_[i + 1].from || stretches_[i].shift != 0 ||
        stretches_[i + 1].shift != 0)
      continue;
    stretches_[i].to = stretches_[i + 1].to;
    stretches_.erase(stretches_.begin() + static_cast<std::ptrdiff_t>(i) + 1);
    break;
  }
}

BrokenAxis BrokenAxis::window(double low, double high, double from, double to) {
  constexpr double air = 1e-6;
  BrokenAxis axis;
  axis.off_low_ = low < from - air;
  axis.off_high_ = high > to + air;
  axis.stretches_ = {{axis.off_low_ ? from : low, axis.off_high_ ? to : high, 0}};
  return axis;
}

void BrokenAxis::add_side(double length, double room, bool end, bool up, double at) {
  std::vector<Stretch> side;
  if (length <= room + 1e-9 || !end) {
    side.push_back({0, std::min(length, room), 0});
    if (length > room + 1e-9) (up ? off_high_ : off_low_) = true;
  } else {
    const double near = 0.6 * room - break_gap / 2, far = 0.4 * room - break_gap / 2;
    side = {{0, near, 0}, {length - far, length, room - length}};
  }
  for (const Stretch& s : side) {
    if (up)
      stretches_.push_back({at + s.from, at + s.to, s.shift});
    else
      stretches_.insert(stretches_.begin(), {at - s.to, at - s.from, -s.shift});
  }
}

double BrokenAxis::operator()(double unbroken) const {
  unbroken = std::clamp(unbroken, stretches_.front().from, stretches_.back().to);
  for (std::size_t i = 0; i < stretches_.size(); ++i) {
    const Stretch& here = stretches_[i];
    if (unbroken < here.from && i > 0) {
      const Stretch& before = stretches_[i - 1];
      const double part = (unbroken - before.to) / (here.from - before.to);
      return before.to + before.shift + part * (here.from + here.shift - before.to - before.shift);
    }
    if (unbroken <= here.to || i + 1 == stretches_.size()) return unbroken + here.shift;
  }
  return unbroken;
}

Vec2 BrokenView::paper(Vec2 unbroken) const {
  const Vec2 across = left_of(along_);
  return along_ * first_(dot(along_, unbroken)) + across * second_(dot(across, unbroken));
}

bool BrokenView::broken() const {
  return first_.stretches().size() + second_.stretches().size() > 2 || first_.broken_off_low() ||
         first_.broken_off_high() || second_.broken_off_low() || second_.broken_off_high();
}

std::vector<BrokenView::Window> BrokenView::windows() const {
  std::vector<Window> all;
  for (const Stretch& a : first_.stretches())
    for (const Stretch& b : second_.stretches()) all.push_back({a, b});
  return all;
}

std::vector<BrokenView::Border> BrokenView::borders(const Window& window) const {
  // The outermost borders have some air, so that what ends there is whole.
  constexpr double air = 1e-6;
  const Vec2 across = left_of(along_);
  return {{along_, window.first.from - air},
          {-along_, -window.first.to - air},
          {across, window.second.from - air},
          {-across, -window.second.to - air}};
}

void BrokenView::line(Vec2 a, Vec2 b, ink::Path& path) const {
  for (const Window& window : windows()) {
    double from = 0, to = 1;
    for (const Border& border : borders(window)) {
      const double da = dot(border.inward, a) - border.at, db = dot(border.inward, b) - border.at;
      if (da < 0 && db < 0) from = 2;
      if (da < 0 && db >= 0) from = std::max(from, da / (da - db));
      if (da >= 0 && db < 0) to = std::min(to, da / (da - db));
    }
    if (from >= to) continue;
    const Vec2 by = shift(window);
    path.move(a + (b - a) * from + by).line(a + (b - a) * to + by);
  }
}

void BrokenView::outline(const Loops& loops, ink::Path& path) const {
  if (!broken()) {
    for (const Loop& loop : loops) path.polygon(loop);
    return;
  }
  for (const Loop& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) line(loop[i], loop[(i + 1) % loop.size()], path);
}

std::vector<Loops> BrokenView::shown(const Loops& loops) const {
  if (!broken()) return {loops};
  std::vector<Loops> all;
  for (const Window& window : windows()) {
    Loops inside;
    for (Loop loop : loops) {
      for (const Border& border : borders(window)) loop = clipped(loop, border.inward, border.at);
      for (Vec2& corner : loop) corner = corner + shift(window);
      if (loop.size() >= 3) inside.push_back(std::move(loop));
    }
    if (!inside.empty()) all.push_back(std::move(inside));
  }
  return all;
}

void BrokenView::break_along(const Loops& loops, Vec2 normal, double at, const Window& window,
                             ink::Path& path) const {
  const Vec2 run = left_of(normal);
  std::vector<double> places;
  for (const Loop& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Vec2 a = loop[i], b = loop[(i + 1) % loop.size()];
      const double da = dot(normal, a) - at, db = dot(normal, b) - at;
      if ((da < 0) == (db < 0)) continue;
      places.push_back(dot(run, a) + (dot(run, b) - dot(run, a)) * da / (da - db));
    }
  std::ranges::sort(places);
  const bool first = std::abs(dot(normal, along_)) > 0.5;
  const Stretch& other = first ? window.second : window.first;
  const bool same_sense = dot(run, first ? left_of(along_) : along_) > 0;
  const double low = same_sense ? other.from : -other.to,
               high = same_sense ? other.to : -other.from;
  for (std::size_t i = 0; i + 1 < places.size(); i += 2) {
    const double from = std::max(places[i], low), to = std::min(places[i + 1], high);
    if (from >= to) continue;
    const Vec2 base = normal * at + shift(window);
    freehand(base + run * from, base + run * to, path);
  }
}

void BrokenView::breaks(const Loops& loops, ink::Path& path) const {
  const Vec2 across = left_of(along_);
  for (const Window& window : windows()) {
    const auto axis = [&](const BrokenAxis& all, const Stretch& own, Vec2 direction) {
      if (all.broken_off_low() || own.from != all.stretches().front().from)
        break_along(loops, direction, own.from, window, path);
      if (all.broken_off_high() || own.to != all.stretches().back().to)
        break_along(loops, direction, own.to, window, path);
    };
    axis(first_, window.first, along_);
    axis(second_, window.second, across);
  }
}

}  // namespace splay::sheets
