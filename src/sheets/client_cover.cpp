// The cover of the client's set: the piece as it will look, what it is, and what the set holds.
#include <algorithm>

#include "drafting/table.h"
#include "sheets/client_words.h"
#include "sheets/kinds.h"
#include "sheets/piece_picture.h"

namespace splay::sheets {

namespace {

using drafting::Story;

Story contents(const Context& context, double width) {
  drafting::Table table;
  table.columns = {{.head = "Page", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "Contents"}};
  for (const IndexEntry& entry : context.index) {
    const std::string target = "page " + entry.first;
    const std::string pages =
        entry.first == entry.last ? entry.first : entry.first + "–" + entry.last;
    table.rows.push_back(
        {{drafting::Cell::linked(pages, target), drafting::Cell::linked(entry.title, target)},
         {},
         false});
  }
  return drafting::table(context.kit, table, width);
}

Story facts(const Context& context, double width) {
  const model::Job& job = context.job();
  drafting::Table table;
  table.columns = {{.head = "The piece", .share = 0, .wrap = false}, {.head = ""}};
  const auto row = [&](const char* name, std::string value) {
    if (!value.empty()) table.rows.push_back({{name, std::move(value)}, {}, false});
  };
  row("Made for", *job.client);
  row("Made by", *job.maker);
  row("Width × height × depth", overall_text(context));
  row("Made of", materials_text(context));
  row("Drawings", drawings_text(context));
  return drafting::table(context.kit, table, width);
}

}  // namespace

std::vector<ink::Page> make_client_cover(const Context& given) {
  const Context context = for_reading(given);
  const drafting::Kit& kit = context.kit;
  ink::Page page = start_page(context, "Drawings for approval");
  const ink::Rect area = context.area();
  const double title_height = kit.look.title;
  const ink::Rect title{{area.low.x, area.high.y - 2.2 * title_height}, area.high};
  page.items.emplace_back(drafting::fitted(kit, *context.job().title, title,
                                           {.height = title_height, .face = ink::Face::bold}));
  constexpr double gap = 8;
  ink::Rect picture{area.low, {area.high.x, title.low.y - gap / 2}};
  std::vector<Story> tables;
  std::vector<ink::Rect> places;
  if (context.wide()) {
    const double width = area.width() * 0.32;
    picture.high.x -= width + gap;
    tables.push_back(facts(context, width));
    drafting::add(tables.front(), contents(context, width));
    places = {{{area.high.x - width, area.low.y}, picture.high + Vec2{width + gap, 0}}};
  } else {
    constexpr double share = 0.6;
    const double width = (area.width() - gap) * share, rest = (area.width() - gap) * (1 - share);
    tables = {facts(context, width), contents(context, rest)};
    const double high =
        area.low.y + std::max(drafting::height(tables[0]), drafting::height(tables[1])) + 1;
    picture.low.y = high + gap;
    places = {{area.low, {area.low.x + width, high}},
              {{area.high.x - rest, area.low.y}, {area.high.x, high}}};
  }
  draw_piece(context, drafting::grown(picture, -gap / 2), page.items);
  for (std::size_t i = 0; i < tables.size(); ++i)
    for (drafting::Items& items : drafting::flow(tables[i], {places[i]}, {places[i]}))
      drafting::append(page.items, std::move(items));
  return {std::move(page)};
}

}  // namespace splay::sheets
