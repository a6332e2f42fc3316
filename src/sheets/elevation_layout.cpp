#include "sheets/elevation_layout.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace splay::sheets {

namespace {

using drafting::Scale;

double gaps(std::size_t views) { return between_views * static_cast<double>(views - 1); }

bool same_direction(const Grid& grid) {
  return std::ranges::all_of(grid, [&](const auto& row) {
    return norm(row[0]->view.right - grid[0][0]->view.right) < 1e-9;
  });
}

Arranged arrange(Drawings& drawings, const Grid& grid, Scale scale) {
  Arranged result;
  result.aligned = same_direction(grid);
  for (const auto& views : grid) {
    ArrangedRow row;
    for (const Elevation* e : views) {
      row.views.push_back(&drawings.at(e, scale));
      const ink::Rect& extent = row.views.back()->extent;
      row.up.include(extent.low.y, extent.high.y);
      row.width += extent.width();
    }
    const ink::Rect& extent = row.views[0]->extent;
    result.first.include(extent.low.x, extent.high.x);
    result.rows.push_back(std::move(row));
  }
  return result;
}

bool fits(const Arranged& arranged, ink::Rect area) {
  if (arranged.height() + gaps(arranged.rows.size()) > area.height()) return false;
  return std::ranges::all_of(arranged.rows, [&](const ArrangedRow& row) {
    return arranged.width(row) + gaps(row.views.size()) <= area.width();
  });
}

// The largest standard scale at which the views fit with their dimensions. The first guess leaves
// dimensions out, so it can only be too large.
std::optional<Sheet> fit(Drawings& drawings, const Grid& grid) {
  const Unit unit = *drawings.context().job().units;
  const ink::Rect area = drawings.context().area();
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
    Arranged arranged = arrange(drawings, grid, scale);
    if (fits(arranged, area)) return Sheet{grid, scale, std::move(arranged)};
    const Scale smaller = drafting::next_smaller(scale, unit);
    if (smaller == scale) return std::nullopt;
    scale = smaller;
  }
}

// Where the first view of a row begins: at the even gap of its row, or of the tightest row when the
// first views stand over each other.
double first_gap(const Arranged& a, const ArrangedRow& of, ink::Rect area) {
  const auto even = [&](const ArrangedRow& row) {
    return (area.width() - a.width(row)) / static_cast<double>(row.views.size() + 1);
  };
  double gap = even(of);
  if (a.aligned)
    for (const ArrangedRow& row : a.rows) gap = std::min(gap, even(row));
  return gap;
}

// Ways to share the views out over pages, few pages first. First angle has the plan below the
// front, third angle above it.
std::vector<std::vector<Grid>> layouts(const ElevationSet& set, bool third_angle) {
  const auto stacked = [&](std::vector<const Elevation*> front,
                           std::vector<const Elevation*> plan) {
    return third_angle ? Grid{std::move(plan), std::move(front)}
                       : Grid{std::move(front), std::move(plan)};
  };
  const Elevation *front = &set.front, *plan = &set.plan, *side = &set.side;
  const Elevation *a = &set.section_a, *b = &set.section_b;
  return {
      {stacked({front, side}, {plan, a, b})},       {stacked({front, side, b}, {plan, a})},
      {stacked({front, side}, {plan}), {{a, b}}},   {{{front, side, a, b}}, {{plan}}},
      {stacked({front}, {plan}), {{a}, {side, b}}}, {stacked({front}, {plan}), {{a}, {b}, {side}}},
      {{{front}}, {{plan}, {a}}, {{side}, {b}}}};
}

}  // namespace

ink::Rect place(const Arranged& a, ink::Rect area, drafting::Items& items) {
  ink::Rect corner = drafting::no_rect();
  const double gap_y = (area.height() - a.height()) / static_cast<double>(a.rows.size() + 1);
  double y = area.high.y - gap_y;
  for (const ArrangedRow& row : a.rows) {
    const ink::Rect& first = row.views[0]->extent;
    const Sides across = a.aligned ? a.first : Sides{-first.low.x, first.high.x};
    double x = area.low.x + first_gap(a, row, area);
    const double base = y - row.up.after;
    drafting::append(items, drafting::moved(row.views[0]->items, {x + across.before, base}));
    x += across.size();
    const double rest = a.width(row) - across.size();
    const double gap = (area.high.x - x - rest) / static_cast<double>(row.views.size());
    for (std::size_t i = 1; i < row.views.size(); ++i) {
      const ink::Rect& extent = row.views[i]->extent;
      x += gap;
      drafting::append(items, drafting::moved(row.views[i]->items, {x - extent.low.x, base}));
      x += extent.width();
    }
    const ink::Rect beside{{x + between_views, y - row.up.size()}, {area.high.x, y}};
    if (row.views.size() == 1 && beside.width() > corner.width()) corner = beside;
    y -= row.up.size() + gap_y;
  }
  return corner;
}

Choice choose(Drawings& drawings, const ElevationSet& set) {
  return choose(drawings, layouts(set, *drawings.context().job().units == Unit::inch), 1.4);
}

Choice choose(Drawings& drawings, const std::vector<std::vector<Grid>>& ways, double worth_a_page) {
  Choice best;
  for (const std::vector<Grid>& pages : ways) {
    Choice choice{{}, 1e9};
    for (const Grid& grid : pages) {
      std::optional<Sheet> sheet = fit(drawings, grid);
      if (!sheet) break;
      choice.ratio = std::min(choice.ratio, sheet->scale.ratio());
      choice.sheets.push_back(std::move(*sheet));
    }
    if (choice.sheets.size() < pages.size()) continue;
    const int more = static_cast<int>(choice.sheets.size()) - static_cast<int>(best.sheets.size());
    const double needed = best.ratio * (more > 0 ? std::pow(worth_a_page, more) : 1 + 1e-9);
    if (best.sheets.empty() || choice.ratio >= needed) best = std::move(choice);
  }
  return best;
}

void draw_all_at_one_scale(Drawings& drawings, Choice& choice) {
  const auto smallest =
      std::ranges::min_element(choice.sheets, {}, [](const Sheet& s) { return s.scale.ratio(); });
  if (smallest == choice.sheets.end()) return;
  const Scale scale = smallest->scale;
  for (Sheet& sheet : choice.sheets)
    sheet = {sheet.grid, scale, arrange(drawings, sheet.grid, scale)};
}

}  // namespace splay::sheets
