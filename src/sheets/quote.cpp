// The quote: what the client pays and for what, on a page that can leave the binder. No cost, rate
// or markup is on it.
#include <algorithm>

#include "drafting/table.h"
#include "fabrication/buying.h"
#include "sheets/client_words.h"
#include "sheets/kinds.h"
#include "sheets/piece_picture.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;
using fabrication::Bill;

Story piece_table(const Context& context, double width) {
  const model::Job& job = context.job();
  drafting::Table table;
  table.columns = {{.head = "What is quoted", .share = 0, .wrap = false}, {.head = ""}};
  const auto row = [&](const char* name, std::string value) {
    if (!value.empty()) table.rows.push_back({{name, std::move(value)}, {}, false});
  };
  row("Piece", *job.title);
  row("Made for", *job.client);
  row("Drawings", drawings_text(context));
  row("Width × height × depth", overall_text(context));
  row("Made of", materials_text(context));
  return drafting::table(context.kit, table, width);
}

Story price_table(const Context& context, const Bill& bill, double width) {
  const model::Buying& buying = context.plan.project->buying;
  drafting::Table table;
  table.columns = {{.head = "Price"},
                   {.head = buying.currency->empty() ? "Amount" : *buying.currency,
                    .align = ink::Align::right,
                    .share = 0,
                    .wrap = false}};
  for (const fabrication::MoneyLine& line : bill.quote)
    table.rows.push_back({{line.what, fabrication::money_text(line.cents)}, {}, false});
  if (bill.quote_tax > 0) {
    table.rows.push_back({{"Before tax", fabrication::money_text(bill.quote_net)}, {}, true});
    table.rows.push_back(
        {{"Tax, " + plain_number(*buying.tax, 2) + " %", fabrication::money_text(bill.quote_tax)},
         {},
         false});
  }
  table.rows.push_back(
      {{Cell::bold("To pay"), Cell::bold(fabrication::money_text(bill.quote_total))}, {}, true});
  return drafting::table(context.kit, table, width);
}

// Lines to be filled in by hand.
Story by_hand(const Context& context, double width) {
  drafting::Table table;
  table.columns = {{.head = "To be filled in", .share = 0, .wrap = false}, {.head = ""}};
  for (const char* line : {"The price holds until", "Ready by"})
    table.rows.push_back({{line, ""}, {}, false});
  for (const char* line : {"For the workshop: name, day", "Agreed by the client: name, day"})
    table.rows.push_back({{std::string(line) + "\n ", ""}, {}, false});
  return drafting::table(context.kit, table, width);
}

Story quote_story(const Context& context, const Bill& bill, double width) {
  Story story{drafting::heading(context.kit, "Quote", width)};
  const auto part = [&](Story more) {
    drafting::add(story, std::move(more));
    story.back().space_after = 6;
  };
  part(piece_table(context, width));
  part(price_table(context, bill, width));
  if (!bill.unpriced.empty())
    part({drafting::body_text(context.kit, "Not in the price: " + joined(bill.unpriced, "; ") + ".",
                              width)});
  for (const std::string& term : *context.plan.project->buying.terms)
    story.push_back(drafting::body_text(context.kit, term, width));
  part(by_hand(context, width));
  return story;
}

}  // namespace

std::vector<ink::Page> make_quote(const Context& given) {
  const Context context = for_reading(given);
  const Bill bill = fabrication::make_bill(context.plan);
  if (bill.quote.empty()) return {};
  constexpr double gap = 10;
  const ink::Rect area = context.area();
  const double width = context.wide() ? area.width() * 0.45 : area.width();
  const Story story = quote_story(context, bill, width);
  ink::Rect words{area.low, {area.low.x + width, area.high.y}}, picture = area;
  if (context.wide()) {
    picture.low.x = words.high.x + gap;
  } else {
    const double least = area.height() * 0.18;
    picture.low.y = std::min(area.low.y + drafting::height(story) + gap, area.high.y - least);
    words.high.y = picture.low.y - gap;
  }
  std::vector<ink::Page> pages;
  for (drafting::Items& items : drafting::flow(story, {words}, {area}, false)) {
    pages.push_back(start_page(context, "Quote"));
    if (pages.size() == 1) draw_piece(context, picture, pages.back().items);
    drafting::append(pages.back().items, std::move(items));
  }
  return pages;
}

}  // namespace splay::sheets
