#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include "geometry/polygon.h"
#include "ink/lint_page.h"

namespace splay::ink {

namespace {

constexpr double touching = 0.05;  // mm that boxes may touch: less than any eye sees

// The texts of a page by the square of paper they stand in. A line then meets only its neighbours.
class TextGrid {
 public:
  explicit TextGrid(const LintPage& page)
      : columns_(count(page.page->paper.width)), rows_(count(page.page->paper.height)) {
    cells_.resize(columns_ * rows_);
    seen_.resize(page.texts.size(), 0);
    for (std::size_t i = 0; i < page.texts.size(); ++i) {
      const Rect box = bounds(page.texts[i].box);
      for (std::size_t row = cell(box.low.y, rows_); row <= cell(box.high.y, rows_); ++row)
        for (std::size_t column = cell(box.low.x, columns_); column <= cell(box.high.x, columns_);
             ++column)
          cells_[row * columns_ + column].push_back(i);
    }
  }

  // Each text near a line from a to b, widened by `reach`, once.
  template <class Use>
  void near_line(Vec2 a, Vec2 b, double reach, Use&& use) {
    ++query_;
    if (a.y > b.y) std::swap(a, b);
    const std::size_t last = cell(b.y + reach, rows_);
    for (std::size_t row = cell(a.y - reach, rows_); row <= last; ++row) {
      const auto [left, right] = stretch(a, b, row, reach);
      for (std::size_t column = cell(left, columns_); column <= cell(right, columns_); ++column)
        visit(row * columns_ + column, use);
    }
  }

  template <class Use>
  void near_box(const Rect& box, Use&& use) {
    ++query_;
    for (std::size_t row = cell(box.low.y, rows_); row <= cell(box.high.y, rows_); ++row)
      for (std::size_t column = cell(box.low.x, columns_); column <= cell(box.high.x, columns_);
           ++column)
        visit(row * columns_ + column, use);
  }

 private:
  static constexpr double size = 8;  // mm

  static std::size_t count(double length) {
    return static_cast<std::size_t>(std::clamp(length / size + 1, 1.0, 1000.0));
  }
  static std::size_t cell(double at, std::size_t count) {
    return static_cast<std::size_t>(std::clamp(at / size, 0.0, static_cast<double>(count - 1)));
  }

  // Where a line (a below b) runs inside a row of cells. What lies off the sheet stands in the
  // cells at its edge, so the first and last row reach to the end.
  std::pair<double, double> stretch(Vec2 a, Vec2 b, std::size_t row, double reach) const {
    constexpr double endless = std::numeric_limits<double>::infinity();
    const double bottom = row == 0 ? -endless : static_cast<double>(row) * size;
    const double top = row + 1 == rows_ ? endless : static_cast<double>(row + 1) * size;
    const double rise = b.y - a.y;
    double left = a.x, right = b.x;
    if (rise > 1e-9) {
      const auto x_at = [&](double y) {
        return a.x + (b.x - a.x) * std::clamp((y - a.y) / rise, 0.0, 1.0);
      };
      left = x_at(bottom - reach);
      right = x_at(top + reach);
    }
    return {std::min(left, right) - reach, std::max(left, right) + reach};
  }

  template <class Use>
  void visit(std::size_t at, Use&& use) {
    for (const std::size_t i : cells_[at]) {
      if (seen_[i] == query_) continue;
      seen_[i] = query_;
      use(i);
    }
  }

  std::size_t columns_, rows_;
  std::vector<std::vector<std::size_t>> cells_;
  std::vector<std::size_t> seen_;
  std::size_t query_ = 0;
};

bool apart_along(const std::vector<Vec2>& a, const std::vector<Vec2>& b, Vec2 axis) {
  const auto reach = [&](const std::vector<Vec2>& box) {
    std::pair<double, double> range{dot(box[0], axis), dot(box[0], axis)};
    for (const Vec2 p : box) {
      range.first = std::min(range.first, dot(p, axis));
      range.second = std::max(range.second, dot(p, axis));
    }
    return range;
  };
  const auto [a_low, a_high] = reach(a);
  const auto [b_low, b_high] = reach(b);
  return a_high - touching <= b_low || b_high - touching <= a_low;
}

// Rectangles are apart when an edge direction of one of them parts them.
bool boxes_overlap(const std::vector<Vec2>& a, const std::vector<Vec2>& b) {
  for (const std::vector<Vec2>* box : {&a, &b})
    for (const Vec2 edge : {(*box)[1] - (*box)[0], (*box)[3] - (*box)[0]})
      if (norm(edge) > 0 && apart_along(a, b, unit(edge))) return false;
  return true;
}

// The part of a line inside a text's box widened by `grow`.
std::optional<std::array<Vec2, 2>> inside_box(Vec2 from, Vec2 to, const std::vector<Vec2>& box,
                                              double grow) {
  double first = 0, last = 1;
  for (const Vec2 side : {box[1] - box[0], box[3] - box[0]}) {
    const double length = norm(side);
    if (length == 0) return std::nullopt;
    const Vec2 axis = side * (1 / length);
    const double start = dot(from - box[0], axis), run = dot(to - from, axis);
    const double low = -grow, high = length + grow;
    if (std::abs(run) < 1e-12) {
      if (start <= low || start >= high) return std::nullopt;
      continue;
    }
    const double enter = ((run > 0 ? low : high) - start) / run;
    const double leave = ((run > 0 ? high : low) - start) / run;
    first = std::max(first, enter);
    last = std::min(last, leave);
    if (first > last) return std::nullopt;
  }
  return std::array{from + (to - from) * first, from + (to - from) * last};
}

bool boxes_meet(const Rect& a, const Rect& b) {
  return a.low.x <= b.high.x && b.low.x <= a.high.x && a.low.y <= b.high.y && b.low.y <= a.high.y;
}

bool in_patch(const InkedPatch& patch, Vec2 point) {
  bool inside = false;
  for (const Polyline& line : patch.outline)
    if (contains(line.points, point)) inside = !inside;
  return inside;
}

// A stretch is hidden when a fill drawn between line and text has all of it inside; tried at nine
// points, so that a fill with a hole does not pass for whole.
bool hidden(const LintPage& page, const std::array<Vec2, 2>& part, std::size_t after,
            std::size_t before) {
  return std::any_of(page.patches.begin(), page.patches.end(), [&](const InkedPatch& patch) {
    if (patch.order < after || patch.order > before ||
        !boxes_meet(patch.bounds, bounds({part[0], part[1]})))
      return false;
    for (int i = 0; i <= 8; ++i)
      if (!in_patch(patch, part[0] + (part[1] - part[0]) * (0.01 + 0.98 * i / 8))) return false;
    return true;
  });
}

bool covers(const InkedPatch& patch, const std::vector<Vec2>& box) {
  constexpr int steps = 12;
  for (int i = 0; i <= steps; ++i)
    for (const double up : {0.1, 0.3, 0.5, 0.7, 0.9}) {
      const Vec2 p =
          box[0] + (box[1] - box[0]) * (0.01 + 0.98 * i / steps) + (box[3] - box[0]) * up;
      if (in_patch(patch, p)) return true;
    }
  return false;
}

}  // namespace

void lint_overlaps(const LintPage& page, Faults& faults) {
  const auto fault = [&](const char* rule, const std::string& text) {
    faults.push_back({rule, page.page->label, text});
  };
  TextGrid grid(page);
  for (std::size_t i = 0; i < page.texts.size(); ++i)
    grid.near_box(bounds(page.texts[i].box), [&](std::size_t k) {
      if (k < i && boxes_overlap(page.texts[i].box, page.texts[k].box))
        fault("text-over-text",
              quoted(*page.texts[i].text) + " over " + quoted(*page.texts[k].text));
    });

  std::vector<int> crossings(page.texts.size(), 0);
  std::vector<Vec2> first_crossing(page.texts.size());
  for (const InkedLine& line : page.lines) {
    const double grow = line.width / 2 - touching;
    grid.near_line(line.from, line.to, line.width / 2, [&](std::size_t i) {
      const InkedText& text = page.texts[i];
      if (text.group == line.group) return;
      const auto part = inside_box(line.from, line.to, text.box, grow);
      if (!part || hidden(page, *part, line.order, text.order)) return;
      if (crossings[i]++ == 0) first_crossing[i] = (*part)[0];
    });
  }
  for (std::size_t i = 0; i < page.texts.size(); ++i)
    if (crossings[i] > 0)
      fault("text-over-line", quoted(*page.texts[i].text) + " is crossed by " +
                                  std::to_string(crossings[i]) + " lines of another group, at " +
                                  place_text(first_crossing[i]));

  for (const InkedPatch& patch : page.patches)
    grid.near_box(patch.bounds, [&](std::size_t i) {
      if (page.texts[i].order < patch.order && covers(patch, page.texts[i].box))
        fault("text-covered", quoted(*page.texts[i].text) + " lies under a fill");
    });
}

}  // namespace splay::ink
