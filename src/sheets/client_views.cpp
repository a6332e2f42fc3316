// Front, side and plan for the client: what is seen, overall sizes, nothing of how it is made.
#include "sheets/elevation_layout.h"
#include "sheets/kinds.h"
#include "sheets/piece_picture.h"

namespace splay::sheets {

namespace {

void only_overall(Elevation& e, bool across, bool up) {
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
}

}  // namespace

std::vector<ink::Page> make_client_views(const Context& context) {
  ElevationSet set = elevations_of(context);
  only_overall(set.front, true, true);
  only_overall(set.side, true, true);
  only_overall(set.plan, true, true);
  const Elevation *front = &set.front, *side = &set.side, *plan = &set.plan;
  const bool third_angle = *context.job().units == Unit::inch;
  const Grid together = third_angle ? Grid{{plan}, {front, side}} : Grid{{front, side}, {plan}};
  const Grid upright = third_angle ? Grid{{plan}, {front}} : Grid{{front}, {plan}};
  Drawings drawings(context);
  const Choice choice = choose(drawings, {{together},
                                          {upright, {{side}}},
                                          {Grid{{front, side}}, Grid{{plan}}},
                                          {{{front}}, {{side}}, {{plan}}}});
  std::vector<ink::Page> pages;
  for (const Sheet& sheet : choice.sheets) {
    pages.push_back(
        start_page(context, "Views", drafting::text(sheet.scale, *context.job().units), true));
    const ink::Rect corner = place(sheet.arranged, context.area(), pages.back().items);
    constexpr double worth_a_picture = 50;
    if (std::min(corner.width(), corner.height()) > worth_a_picture)
      draw_piece(context, drafting::grown(corner, -between_views), pages.back().items);
  }
  return pages;
}

}  // namespace splay::sheets
