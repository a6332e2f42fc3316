// The exploded view: every part drawn apart along the way it is brought in, with its mark; on pages
// of their own the pieces and sub-assemblies of what has too many parts for one.
#include <algorithm>

#include "base/index.h"
#include "drafting/callout.h"
#include "sheets/exploded_layout.h"
#include "sheets/exploded_shares.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

// Dashed lines along which joints come home.
ink::Group ways(const Context& context, const std::vector<HomeLine>& lines,
                const drafting::Placement& placement) {
  ink::Path path;
  for (const HomeLine& line : lines)
    path.move(placement.paper(line.from)).line(placement.paper(line.to));
  return {"legend", {ink::Stroke{std::move(path), context.kit.centre()}}};
}

std::string anchor_of(const std::string& name) { return "exploded " + name; }

std::vector<drafting::Callout> callouts_of(const Context& context, const ExplodedShare& share) {
  std::vector<drafting::Callout> callouts;
  for (const ExplodedBlock& block : share.blocks) {
    drafting::Callout callout;
    const std::string& mark = context.plan.mark_of(block.parts.front());
    if (block.name.empty()) {
      callout.lines = {mark};
      callout.link = part_anchor(mark);
      callout.mark = mark;
    } else {
      callout.lines = {mark + " …"};
      callout.link = anchor_of(block.name);
    }
    callouts.push_back(std::move(callout));
  }
  return callouts;
}

// As many balloons as the page has room for.
std::size_t most_balloons(const Context& context) {
  std::vector<drafting::Callout> marks;
  for (const fabrication::PartRow& row : context.plan.rows) marks.emplace_back().lines = {row.mark};
  return drafting::balloons_in(context.kit, context.area(), marks);
}

struct Apart {
  std::vector<Vec3> moved;    // by part of the assembly
  std::vector<Solid> solids;  // of the share's parts
};

Apart taken_apart(const Context& context, const ExplodedShare& share,
                  const std::vector<int>& parts) {
  const parts::Assembly& all = context.plan.assembly;
  Box box;
  for (const int part : parts)
    for (const Vec3& p : all.parts[index(part)].world.vertices()) box.add(p);
  const double size = norm(box.size());
  Apart apart{drawn_apart(all, context.plan.glue_up.order.joinings, share.joinings, size * 0.04,
                          size * 0.3),
              {}};
  for (const int part : parts)
    apart.solids.push_back(all.parts[index(part)].world.shifted(apart.moved[index(part)]));
  return apart;
}

// The middle of a block as it is drawn.
Vec3 middle_of(const Context& context, const ExplodedBlock& block, const std::vector<Vec3>& moved) {
  Vec3 sum;
  for (const int part : block.parts)
    sum = sum + context.plan.assembly.parts[index(part)].world.centroid() + moved[index(part)];
  return sum * (1.0 / static_cast<double>(block.parts.size()));
}

ink::Page page_of(const Context& context, const ExplodedShare& share) {
  const std::vector<int> parts = share.parts();
  const Apart apart = taken_apart(context, share, parts);
  const View view = View::axonometric(seen_turn, seen_rise);
  const Scene scene(apart.solids);
  const std::vector<ViewLine> lines = scene.lines(view);
  const std::vector<HomeLine> homes =
      home_lines(context.plan.assembly, context.plan.glue_up.order.joinings, share.joinings,
                 apart.moved, view);
  const ink::Rect seen = drafting::view_box(lines);
  std::vector<drafting::Callout> callouts = callouts_of(context, share);
  const double column = drafting::balloon_column_width(context.kit, callouts) + 6;
  const ink::Rect area = context.area();
  const double scale =
      std::min((area.width() - 2 * column) / seen.width(), (area.height() - 4) / seen.height());
  const drafting::Placement placement = drafting::centred(seen, scale, drafting::middle(area));
  const std::string title = "Exploded view";
  ink::Page page =
      start_page(context, share.name.empty() ? title : title + ": " + share.name, "not to scale");
  if (!share.name.empty())
    page.items.emplace_back(ink::Anchor{anchor_of(share.name), {area.low.x, area.high.y}});
  page.items.emplace_back(
      drafting::draw_toned(context.kit, scene.painted(view), lines, view, placement));
  page.items.emplace_back(ways(context, homes, placement));
  for (std::size_t b = 0; b < share.blocks.size(); ++b)
    callouts[b].tip =
        placement.paper(view.project(middle_of(context, share.blocks[b], apart.moved)));
  drafting::append(page.items,
                   drafting::place_balloons(context.kit, placement.paper(seen), area, callouts));
  return page;
}

}  // namespace

std::vector<ink::Page> make_exploded(const Context& context) {
  if (context.plan.glue_up.order.joinings.empty()) return {};
  std::vector<ink::Page> pages;
  for (const ExplodedShare& share : exploded_shares(context.plan, most_balloons(context)))
    pages.push_back(page_of(context, share));
  return pages;
}

}  // namespace splay::sheets
