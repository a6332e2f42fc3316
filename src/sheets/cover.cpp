#include <algorithm>

#include "drafting/scale.h"
#include "drafting/table.h"
#include "drafting/view.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

constexpr double turn = 0.52, rise = 0.42;  // radians: how the piece is seen

void draw_piece(const Context& context, ink::Rect area, drafting::Items& items) {
  const std::vector<Solid> solids = placed_solids(context.plan.assembly);
  const View view = View::axonometric(turn, rise);
  const std::vector<ViewLine> lines = hidden_lines(solids, view);
  if (lines.empty()) return;
  const ink::Rect box = drafting::view_box(lines);
  // A picture, not to be measured: it fills its place and claims no scale.
  const double scale = std::min(area.width() / box.width(), area.height() / box.height());
  const drafting::Placement placement = drafting::centred(box, scale, drafting::middle(area));
  items.emplace_back(
      drafting::draw_toned(context.kit, visible_faces(solids, view), lines, view, placement));
}

drafting::Story story_of(const Context& context, double width) {
  drafting::Table index;
  index.columns = {{.head = "Page", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "Contents"}};
  for (const IndexEntry& entry : context.index) {
    const std::string pages =
        entry.first == entry.last ? entry.first : entry.first + "–" + entry.last;
    const std::string target = "page " + entry.first;
    index.rows.push_back(
        {{drafting::Cell::linked(pages, target), drafting::Cell::linked(entry.title, target)},
         {},
         false});
  }
  return drafting::table(context.kit, index, width);
}

drafting::Story facts_of(const Context& context, double width) {
  drafting::Story story;
  const drafting::Kit& kit = context.kit;
  const model::Job& job = context.job();
  const auto line = [&](const std::string& text) {
    story.push_back(drafting::body_text(kit, text, width));
  };
  const std::string step = kit.figures.with_unit(kit.figures.step_mm());
  line("Lengths are in " + std::string(*job.units == Unit::inch ? "inches" : "millimetres") +
       ", rounded once to " + step + "; angles in degrees, with their rise over " +
       kit.figures.with_unit(*job.units == Unit::inch ? 12 * Length::mm_per_inch : 300) + ".");
  line("Every number in this binder is measured from one solid model of the piece.");
  for (const std::string& note : *job.notes) line(note);
  return story;
}

}  // namespace

std::vector<ink::Page> make_cover(const Context& context) {
  const drafting::Kit& kit = context.kit;
  const model::Job& job = context.job();
  ink::Page page = start_page(context, "Cover and index");
  const ink::Rect area = context.area();
  const double title_height = kit.look.title;
  const ink::Rect title{{area.low.x, area.high.y - 2.2 * title_height}, area.high};
  page.items.emplace_back(
      drafting::fitted(kit, *job.title, title, {.height = title_height, .face = ink::Face::bold}));
  const ink::Rect rest{area.low, {area.high.x, title.low.y - 4}};
  const double column = context.wide() ? rest.width() * 0.36 : rest.width() * 0.55;
  const double other = context.wide() ? column : rest.width() - column - 8;
  const drafting::Story index = story_of(context, column);
  const drafting::Story facts = facts_of(context, other);
  ink::Rect picture = rest;
  std::vector<ink::Rect> index_place, facts_place;
  if (context.wide()) {
    const double x = rest.high.x - column;
    picture.high.x = x - 10;
    index_place = {{{x, rest.low.y}, rest.high}};
    facts_place = {{{x, rest.low.y}, {rest.high.x, rest.high.y - drafting::height(index) - 8}}};
  } else {
    const double low = rest.low.y + std::max(drafting::height(index), drafting::height(facts)) + 2;
    picture.low.y = low + 6;
    index_place = {{rest.low, {rest.low.x + column, low}}};
    facts_place = {{{rest.low.x + column + 8, rest.low.y}, {rest.high.x, low}}};
  }
  draw_piece(context, picture, page.items);
  for (drafting::Items& items : drafting::flow(index, index_place, index_place))
    drafting::append(page.items, std::move(items));
  for (drafting::Items& items : drafting::flow(facts, facts_place, facts_place))
    drafting::append(page.items, std::move(items));
  return {std::move(page)};
}

}  // namespace splay::sheets
