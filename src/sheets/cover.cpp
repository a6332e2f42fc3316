#include <algorithm>

#include "drafting/table.h"
#include "sheets/kinds.h"
#include "sheets/piece_picture.h"

namespace splay::sheets {

namespace {

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

std::string mass_text(double kilograms) {
  constexpr double pound = 0.45359237;  // kg, international avoirdupois pound, 1959
  return plain_number(kilograms, 1) + " kg, " + plain_number(kilograms / pound, 0) + " lb";
}

drafting::Story facts_of(const Context& context, double width) {
  const drafting::Kit& kit = context.kit;
  const fabrication::Plan& plan = context.plan;
  drafting::Table facts;
  facts.columns = {{.head = "In short", .share = 0, .wrap = false}, {.head = ""}};
  const auto row = [&](std::string name, std::string value) {
    facts.rows.push_back({{std::move(name), std::move(value)}, {}, false});
  };
  row("Width × height × depth", overall_text(context));
  double mass = 0;
  for (const fabrication::PartRow& part : plan.rows)
    mass += part.mass * static_cast<double>(part.quantity());
  row("Parts", std::to_string(plan.assembly.parts.size()) + " in " +
                   std::to_string(plan.rows.size()) + " kinds");
  row("Mass", mass_text(mass));
  for (const fabrication::StockUse& stock : plan.stock)
    if (stock.pieces > 0)
      row((stock.material.empty() ? stock.name : stock.material) + ", " + stock.kind,
          thickness_words(context, stock.thickness) + " thick");
  drafting::Story story = drafting::table(kit, facts, width);
  const bool inches = *context.job().units == Unit::inch;
  story.push_back(
      drafting::body_text(kit,
                          "Lengths are in " + std::string(inches ? "inches" : "millimetres") +
                              ", rounded once to " + kit.figures.with_unit(kit.figures.step_mm()) +
                              "; angles in degrees, with their rise over " +
                              kit.figures.with_unit(inches ? 12 * Length::mm_per_inch : 300) +
                              ". Every number is measured from one solid model of the piece.",
                          width));
  for (const std::string& note : *context.job().notes)
    story.push_back(drafting::body_text(kit, note, width, ink::Face::bold));
  return story;
}

}  // namespace

std::vector<ink::Page> make_cover(const Context& given) {
  const Context context = for_reading(given);
  const drafting::Kit& kit = context.kit;
  const model::Job& job = context.job();
  ink::Page page = start_page(context, "Cover and index");
  const ink::Rect area = context.area();
  const double title_height = kit.look.title;
  const ink::Rect title{{area.low.x, area.high.y - 2.2 * title_height}, area.high};
  page.items.emplace_back(
      drafting::fitted(kit, *job.title, title, {.height = title_height, .face = ink::Face::bold}));
  const ink::Rect rest{area.low, {area.high.x, title.low.y - 4}};
  const double column = context.wide() ? rest.width() * 0.36 : rest.width() * 0.46;
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
    // Where both are too high for one column the facts stand under the picture.
    if (const double facts_high = drafting::height(facts);
        drafting::height(index) + 8 + facts_high > rest.height()) {
      facts_place = {{rest.low, {rest.low.x + column, rest.low.y + facts_high + 1}}};
      picture.low.y += facts_high + 6;
    }
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
