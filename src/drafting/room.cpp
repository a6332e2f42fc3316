#include "drafting/room.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "ink/outline.h"

namespace splay::drafting {

namespace {

// Do the projections of two point sets on an axis leave a gap?
bool apart_along(Vec2 axis, std::span<const Vec2> a, std::span<const Vec2> b) {
  const auto range = [&](std::span<const Vec2> points) {
    double low = 1e300, high = -1e300;
    for (const Vec2 p : points) {
      low = std::min(low, dot(axis, p));
      high = std::max(high, dot(axis, p));
    }
    return std::pair{low, high};
  };
  const auto [a_low, a_high] = range(a);
  const auto [b_low, b_high] = range(b);
  return a_high < b_low || b_high < a_low;
}

// Separating axes of convex point sets: a set of two is a segment.
bool separated(std::span<const Vec2> a, std::span<const Vec2> b) {
  const auto by_edges_of = [&](std::span<const Vec2> points) {
    for (std::size_t i = 0; i < points.size(); ++i) {
      const Vec2 edge = points[(i + 1) % points.size()] - points[i];
      if (apart_along(left_of(edge), a, b)) return true;
    }
    return false;
  };
  return by_edges_of(a) || by_edges_of(b);
}

// Boxes that do not even meet are the common case; the exact test is for the rest.
ink::Rect box_of(std::span<const Vec2> points) {
  ink::Rect box{points.front(), points.front()};
  for (const Vec2 p : points) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

bool meet_boxes(const ink::Rect& a, const ink::Rect& b, double slack = 0) {
  return a.low.x <= b.high.x + slack && b.low.x <= a.high.x + slack &&
         a.low.y <= b.high.y + slack && b.low.y <= a.high.y + slack;
}

}  // namespace

Quad quad(ink::Rect r) { return {r.low, {r.high.x, r.low.y}, r.high, {r.low.x, r.high.y}}; }

bool touch(const Quad& a, const Quad& b) { return !separated(a, b); }

bool touch(const Quad& q, Vec2 a, Vec2 b) {
  const std::array<Vec2, 2> segment{a, b};
  // A segment's own direction separates too, beyond its ends.
  return !separated(q, segment) && !apart_along(b - a, q, segment);
}

bool crossing(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const std::array<Vec2, 2> one{a, b}, other{c, d};
  return !separated(one, other) && !apart_along(b - a, one, other) &&
         !apart_along(d - c, one, other);
}

Quad grown(const Quad& q, double by) {
  const auto scaled = [by](Vec2 v) { return v * (by / std::sqrt(dot(v, v))); };
  const Vec2 ex = scaled(q[1] - q[0]), ey = scaled(q[3] - q[0]);
  return {q[0] - ex - ey, q[1] + ex - ey, q[2] + ex + ey, q[3] - ex + ey};
}

namespace {

constexpr double cell_size = 10;  // mm

std::size_t cell_count(double length) {
  return static_cast<std::size_t>(std::clamp(length / cell_size + 1, 1.0, 200.0));
}

// An upright rectangle and a segment whose boxes meet: is the rectangle on one side of the line?
bool beside_line(const ink::Rect& place, Vec2 a, Vec2 b) {
  const Vec2 normal = left_of(b - a);
  const double reach =
      std::abs(normal.x) * place.width() / 2 + std::abs(normal.y) * place.height() / 2;
  return std::abs(dot(normal, middle(place) - a)) > reach;
}

}  // namespace

Room::Room(ink::Rect area)
    : area_(area), columns_(cell_count(area.width())), rows_(cell_count(area.height())) {
  grid_.resize(columns_ * rows_);
}

// Both ends count from the area's low edge; what lies beyond the area is in the cells at its edge.
Room::Cells Room::cells(double low, double high, std::size_t count) {
  const auto index = [&](double x) {
    return static_cast<std::size_t>(std::clamp(x / cell_size, 0.0, static_cast<double>(count - 1)));
  };
  return {index(low), index(high)};
}

void Room::take(Quad text) {
  const ink::Rect box = box_of(text);
  constexpr double straight = 1e-9;
  const Vec2 base = text[1] - text[0];
  const bool upright = std::abs(base.x) < straight || std::abs(base.y) < straight;
  texts_.push_back({std::move(text), box, upright});
}

void Room::take(Vec2 a, Vec2 b) {
  const std::array<Vec2, 2> ends{a, b};
  const auto number = static_cast<std::uint32_t>(lines_.size());
  lines_.push_back({a, b, box_of(ends)});
  const ink::Rect& box = lines_.back().box;
  const Cells rows = cells(box.low.y - area_.low.y, box.high.y - area_.low.y, rows_);
  const double slope = box.height() > 1e-9 ? (b.x - a.x) / (b.y - a.y) : 0;
  for (std::size_t row = rows.from; row <= rows.to; ++row) {
    // Where the line runs between the row's edges; the outer rows reach to the line's ends.
    const double low = area_.low.y + cell_size * static_cast<double>(row);
    const double from = row == rows.from ? box.low.y : std::max(low, box.low.y);
    const double to = row == rows.to ? box.high.y : std::min(low + cell_size, box.high.y);
    double left = a.x + (from - a.y) * slope, right = a.x + (to - a.y) * slope;
    if (slope == 0) {
      left = box.low.x;
      right = box.high.x;
    }
    if (left > right) std::swap(left, right);
    const Cells across = cells(left - area_.low.x, right - area_.low.x, columns_);
    for (std::size_t column = across.from; column <= across.to; ++column)
      cell(row, column).push_back(number);
  }
}

void Room::take(const Kit& kit, const ink::Item& item) {
  if (const auto* group = std::get_if<ink::Group>(&item)) {
    take(kit, group->items);
  } else if (const auto* text = std::get_if<ink::Text>(&item)) {
    take(kit.fonts->box(*text));
  } else {
    const auto* stroke = std::get_if<ink::Stroke>(&item);
    const auto* fill = std::get_if<ink::Fill>(&item);
    if (!stroke && !fill) return;
    for (const ink::Polyline& line : ink::flatten(stroke ? stroke->path : fill->path, 0.05))
      for (std::size_t i = 0; i + 1 < line.points.size(); ++i)
        take(line.points[i], line.points[i + 1]);
  }
}

void Room::take(const Kit& kit, const Items& items) {
  for (const ink::Item& item : items) take(kit, item);
}

bool Room::free(const Quad& place, double clearance) const {
  for (const Vec2 p : place)
    if (p.x < area_.low.x || p.y < area_.low.y || p.x > area_.high.x || p.y > area_.high.y)
      return false;
  if (over_text(place, clearance)) return false;
  const Quad larger = grown(place, clearance);
  const ink::Rect box = box_of(larger);
  return std::ranges::none_of(
      lines_, [&](const Segment& s) { return meet_boxes(box, s.box) && touch(larger, s.a, s.b); });
}

bool Room::free(const ink::Rect& place, double clearance) const {
  if (place.low.x < area_.low.x || place.low.y < area_.low.y || place.high.x > area_.high.x ||
      place.high.y > area_.high.y)
    return false;
  const ink::Rect larger = grown(place, clearance);
  for (const Block& text : texts_)
    if (meet_boxes(larger, text.box) && (text.upright || touch(quad(larger), text.quad)))
      return false;
  const Cells across = cells(larger.low.x - area_.low.x, larger.high.x - area_.low.x, columns_);
  const Cells up = cells(larger.low.y - area_.low.y, larger.high.y - area_.low.y, rows_);
  for (std::size_t row = up.from; row <= up.to; ++row) {
    for (std::size_t column = across.from; column <= across.to; ++column) {
      for (const std::uint32_t i : grid_[row * columns_ + column]) {
        const Segment& s = lines_[i];
        if (meet_boxes(larger, s.box) && !beside_line(larger, s.a, s.b)) return false;
      }
    }
  }
  return true;
}

int Room::lines_under(const Quad& place) const {
  const ink::Rect box = box_of(place);
  return static_cast<int>(std::ranges::count_if(
      lines_, [&](const Segment& s) { return meet_boxes(box, s.box) && touch(place, s.a, s.b); }));
}

int Room::lines_crossed(Vec2 a, Vec2 b) const {
  const std::array<Vec2, 2> ends{a, b};
  const ink::Rect box = box_of(ends);
  return static_cast<int>(std::ranges::count_if(lines_, [&](const Segment& s) {
    return meet_boxes(box, s.box) && crossing(a, b, s.a, s.b);
  }));
}

bool Room::over_text(Vec2 a, Vec2 b, double clearance) const {
  const std::array<Vec2, 2> ends{a, b};
  const ink::Rect box = box_of(ends);
  // A turned quad grows by up to its clearance times the root of two along an axis.
  return std::ranges::any_of(texts_, [&](const Block& text) {
    return meet_boxes(box, text.box, 1.5 * clearance) && touch(grown(text.quad, clearance), a, b);
  });
}

bool Room::over_text(const Quad& place, double clearance) const {
  const Quad larger = grown(place, clearance);
  const ink::Rect box = box_of(larger);
  return std::ranges::any_of(texts_, [&](const Block& text) {
    return meet_boxes(box, text.box) && touch(larger, text.quad);
  });
}

// Pooled neighbours: items that push each other move as one block, to the mean of what they want.
std::vector<double> spread(std::span<const double> wanted, std::span<const double> widths,
                           double low, double high) {
  struct Pool {
    double sum = 0;  // of the wanted place of the block's first left end
    std::size_t count = 0;
    double width = 0;
    double left() const { return sum / static_cast<double>(count); }
  };
  std::vector<Pool> pools;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    Pool pool{wanted[i] - widths[i] / 2, 1, widths[i]};
    while (!pools.empty() && pools.back().left() + pools.back().width > pool.left()) {
      const Pool before = pools.back();
      pools.pop_back();
      const auto n = static_cast<double>(pool.count);
      pool = {before.sum + pool.sum - n * before.width, before.count + pool.count,
              before.width + pool.width};
    }
    pools.push_back(pool);
  }
  // Blocks pushed back inside the limits; the last limit that can't be kept is `high`.
  std::vector<double> left(pools.size());
  double most = high;
  for (std::size_t k = pools.size(); k-- > 0;) {
    left[k] = std::min(pools[k].left(), most - pools[k].width);
    most = left[k];
  }
  double least = low;
  std::vector<double> centres;
  std::size_t i = 0;
  for (std::size_t k = 0; k < pools.size(); ++k) {
    double x = std::max(left[k], least);
    least = x + pools[k].width;
    for (std::size_t n = 0; n < pools[k].count; ++n, ++i) {
      centres.push_back(x + widths[i] / 2);
      x += widths[i];
    }
  }
  return centres;
}

}  // namespace splay::drafting
