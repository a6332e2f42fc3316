#include <algorithm>
#include <array>
#include <optional>

#include "sheets/elevation_view.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

using drafting::Scale;

// Views side by side in rows, one above the other; the first row on top. In a column whose views
// share a direction they stand exactly over each other.
using Grid = std::vector<std::vector<const Elevation*>>;

struct Sides {
  double before = 0, after = 0;  // of the view plane's origin
  double size() const { return before + after; }
  void include(double low, double high) {
    before = std::max(before, -low);
    after = std::max(after, high);
  }
};

struct Arranged {
  std::vector<std::vector<DrawnElevation>> drawn;
  std::vector<Sides> columns, rows;
  double width() const { return total(columns); }
  double height() const { return total(rows); }
  static double total(const std::vector<Sides>& sides) {
    double sum = 0;
    for (const Sides& one : sides) sum += one.size();
    return sum;
  }
};

constexpr double between = 6;  // mm between two views at the least

Arranged arrange(const Context& context, const Grid& grid, Scale scale) {
  Arranged result;
  result.rows.resize(grid.size(), {-1e9, -1e9});
  for (std::size_t r = 0; r < grid.size(); ++r) {
    result.drawn.emplace_back();
    result.columns.resize(std::max(result.columns.size(), grid[r].size()), {-1e9, -1e9});
    for (std::size_t c = 0; c < grid[r].size(); ++c) {
      result.drawn[r].push_back(draw(context, *grid[r][c], scale));
      const ink::Rect& extent = result.drawn[r][c].extent;
      result.columns[c].include(extent.low.x, extent.high.x);
      result.rows[r].include(extent.low.y, extent.high.y);
    }
  }
  return result;
}

bool fits(const Arranged& arranged, ink::Rect area) {
  const auto gaps = [](std::size_t count) { return between * static_cast<double>(count - 1); };
  return arranged.width() + gaps(arranged.columns.size()) <= area.width() &&
         arranged.height() + gaps(arranged.rows.size()) <= area.height();
}

struct Fitted {
  Scale scale;
  Arranged arranged;
};

// The largest standard scale at which the views fit with their dimensions. A first guess leaves
// dimensions out, so it can only be too large.
std::optional<Fitted> fit(const Context& context, const Grid& grid, ink::Rect area) {
  const Unit unit = *context.job().units;
  double width = 0, height = 0;
  for (const auto& row : grid) {
    double row_width = 0, row_height = 0;
    for (const Elevation* e : row) {
      row_width += e->box.width();
      row_height = std::max(row_height, e->box.height());
    }
    width = std::max(width, row_width);
    height += row_height;
  }
  Scale scale = drafting::largest_scale(unit, {width, height}, {area.width(), area.height()});
  for (;;) {
    Arranged arranged = arrange(context, grid, scale);
    if (fits(arranged, area)) return Fitted{scale, std::move(arranged)};
    const Scale smaller = drafting::next_smaller(scale, unit);
    if (smaller == scale) return std::nullopt;
    scale = smaller;
  }
}

// What is left over is shared out between and around the views.
void place(const Fitted& fitted, ink::Rect area, drafting::Items& items) {
  const Arranged& a = fitted.arranged;
  const double gap_x = (area.width() - a.width()) / static_cast<double>(a.columns.size() + 1);
  const double gap_y = (area.height() - a.height()) / static_cast<double>(a.rows.size() + 1);
  double y = area.high.y - gap_y;
  for (std::size_t r = 0; r < a.rows.size(); ++r) {
    double x = area.low.x + gap_x;
    for (std::size_t c = 0; c < a.drawn[r].size(); ++c) {
      const Vec2 origin{x + a.columns[c].before, y - a.rows[r].after};
      drafting::append(items, drafting::moved(a.drawn[r][c].items, origin));
      x += a.columns[c].size() + gap_x;
    }
    y -= a.rows[r].size() + gap_y;
  }
}

// All four on one page when they are still large enough to work from, else two by two, else one a
// page.
std::vector<Grid> layouts(const ElevationSet& set, bool third_angle) {
  const Grid front_and_plan =
      third_angle ? Grid{{&set.plan}, {&set.front}} : Grid{{&set.front}, {&set.plan}};
  const Grid side_and_section{{&set.side}, {&set.section}};
  return third_angle ? std::vector<Grid>{{{&set.plan, &set.section}, {&set.front, &set.side}}}
                     : std::vector<Grid>{{{&set.front, &set.side}, {&set.plan, &set.section}}};
}

}  // namespace

std::vector<ink::Page> make_elevations(const Context& context) {
  const ElevationSet set = elevations_of(context);
  std::vector<ink::Page> pages;
  const bool third_angle = *context.job().units == Unit::inch;
  for (const Grid& grid : layouts(set, third_angle)) {
    const std::optional<Fitted> fitted = fit(context, grid, context.area());
    if (!fitted) continue;
    ink::Page page = start_page(context, "Elevations and section",
                                drafting::text(fitted->scale, *context.job().units), true);
    place(*fitted, context.area(), page.items);
    pages.push_back(std::move(page));
  }
  return pages;
}

}  // namespace splay::sheets
