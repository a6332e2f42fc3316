// Front, side and plan for the client: what is seen, overall sizes, nothing of how it is made.
#include "sheets/elevation_layout.h"
#include "sheets/kinds.h"
#include "sheets/piece_picture.h"

namespace splay::sheets {

namespace {

// Overall sizes alone, across or up or both.
Elevation overall(Elevation e, bool across, bool up) {
  e.below.clear();
  e.above.clear();
  e.left.clear();
  e.right.clear();
  e.sloped.clear();
  e.angles.clear();
  e.cut_lines.clear();
  e.with_hidden = false;
  drafting::Row row;
  row.kind = drafting::RowKind::overall;
  row.stations = {e.box.low, {e.box.high.x, e.box.low.y}};
  if (across) e.below.push_back(row);
  row.stations = {e.box.low, {e.box.low.x, e.box.high.y}};
  row.along = {0, 1};
  row.out = {-1, 0};
  if (up) e.left.push_back(row);
  return e;
}

}  // namespace

std::vector<ink::Page> make_client_views(const Context& context) {
  const ElevationSet set = elevations_of(context);
  // On one page a size stands once.
  const Elevation front = overall(set.front, true, true);
  const Elevation side = overall(set.side, true, true), beside = overall(set.side, true, false);
  const Elevation plan = overall(set.plan, true, true), in_line = overall(set.plan, false, true),
                  bare = overall(set.plan, false, false);
  const bool third_angle = *context.job().units == Unit::inch;
  const auto stacked = [&](std::vector<const Elevation*> fronts, const Elevation& from_above) {
    return third_angle ? Grid{{&from_above}, std::move(fronts)}
                       : Grid{std::move(fronts), {&from_above}};
  };
  Drawings drawings(context);
  // Whoever buys a piece looks at its shape: a page more is worth it where views are drawn nearly
  // twice as large.
  constexpr double worth_a_page = 1.9;
  Choice choice = choose(drawings,
                         {{stacked({&front, &beside}, bare)},
                          {stacked({&front}, in_line), {{&side}}},
                          {{{&front, &beside}}, {{&plan}}},
                          {{{&front}}, {{&side}}, {{&plan}}}},
                         worth_a_page);
  draw_all_at_one_scale(drawings, choice);
  std::vector<ink::Page> pages;
  for (const Sheet& sheet : choice.sheets) {
    pages.push_back(
        start_page(context, "Views", drafting::text(sheet.scale, *context.job().units), true));
    const ink::Rect corner = place(sheet.arranged, context.area(), pages.back().items);
    constexpr double worth_a_picture = 40;
    if (std::min(corner.width(), corner.height()) > worth_a_picture)
      draw_piece(context, drafting::grown(corner, -between_views), pages.back().items);
  }
  return pages;
}

}  // namespace splay::sheets
