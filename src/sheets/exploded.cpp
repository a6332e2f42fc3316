// The exploded view: every part drawn apart along the way it is brought in, with its mark.
#include <algorithm>
#include <numeric>

#include "drafting/callout.h"
#include "sheets/exploded_layout.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

Solid shifted(const Solid& solid, Vec3 by) {
  Rigid motion;
  motion.origin = by;
  return solid.transformed(motion);
}

// Dashed lines along which joints come home.
ink::Group ways(const Context& context, const std::vector<WayArrow>& arrows,
                const drafting::Placement& placement) {
  ink::Path path;
  for (const WayArrow& way : arrows)
    path.move(placement.paper(way.from)).line(placement.paper(way.to));
  return {"legend", {ink::Stroke{std::move(path), context.kit.centre()}}};
}

}  // namespace

std::vector<ink::Page> make_exploded(const Context& context) {
  const parts::Assembly& all = context.plan.assembly;
  const auto& order = context.plan.glue_up.order.joinings;
  if (order.empty()) return {};
  const double size = norm(parts::bounds(all).size());
  std::vector<int> every(order.size());
  std::iota(every.begin(), every.end(), 0);
  const std::vector<Vec3> moved = drawn_apart(all, order, every, size * 0.04, size * 0.3);
  std::vector<Solid> solids;
  for (std::size_t p = 0; p < all.parts.size(); ++p)
    solids.push_back(shifted(all.parts[p].world, moved[p]));
  const View view = View::axonometric(seen_turn, seen_rise);
  const std::vector<ViewLine> lines = hidden_lines(solids, view);
  const ink::Rect seen = drafting::view_box(lines);
  std::vector<drafting::Callout> callouts;
  for (std::size_t p = 0; p < all.parts.size(); ++p) {
    drafting::Callout callout;
    const std::string& mark = context.plan.mark_of(static_cast<int>(p));
    callout.lines = {mark};
    callout.link = part_anchor(mark);
    callout.mark = mark;
    callouts.push_back(std::move(callout));
  }
  const double column = drafting::balloon_column_width(context.kit, callouts) + 6;
  const ink::Rect area = context.area();
  const double scale =
      std::min((area.width() - 2 * column) / seen.width(), (area.height() - 4) / seen.height());
  const drafting::Placement placement = drafting::centred(seen, scale, drafting::middle(area));
  ink::Page page = start_page(context, "Exploded view", "not to scale");
  page.items.emplace_back(
      drafting::draw_toned(context.kit, painted_faces(solids, view), lines, view, placement));
  page.items.emplace_back(ways(context, way_arrows(all, order, every, moved, view), placement));
  for (std::size_t p = 0; p < all.parts.size(); ++p)
    callouts[p].tip = placement.paper(view.project(solids[p].centroid()));
  drafting::append(page.items,
                   drafting::place_balloons(context.kit, placement.paper(seen), area, callouts));
  return {std::move(page)};
}

}  // namespace splay::sheets
