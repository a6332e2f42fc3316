// What to buy and what it costs, for the maker.
#include "fabrication/buying.h"

#include <algorithm>

#include "drafting/table.h"
#include "sheets/kinds.h"
#include "sheets/table_columns.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;
using fabrication::Bill;
using fabrication::money_text;
using fabrication::StockBill;

std::string measure_words(const Context& context, const StockBill& bill, double value) {
  switch (bill.kind) {
    case model::StockKind::board:
      return bill.by_volume ? plain_number(value * 1e-6, 1) + " dm³"
                            : plain_number(value, 2) + " bd ft";
    case model::StockKind::edge_band:
      return length_words(context, value);
    default:
      return area_words(context, value);
  }
}

std::string buy_words(const Context& context, const StockBill& bill) {
  std::string text = joined(bill.sizes, "\n");
  if (bill.kind == model::StockKind::edge_band && bill.sizes.empty())
    text = length_words(context, bill.billed);
  if (bill.extra_sheets > 0)
    text += "\nand " + std::to_string(bill.extra_sheets) + " more for the waste factor";
  return text.empty() ? "nothing" : text;
}

// From the finished parts to what the yard bills.
Story stock_table(const Context& context, const Bill& bill, double width) {
  drafting::Table table;
  table.columns = {words("Stock", 1),    words("Buy", 1),         words("On hand, used", 1),
                   figures("Finished"),  figures("Blanks"),       figures("Bought"),
                   figures("As billed"), figures("Waste\nfactor")};
  for (const StockBill& stock : bill.stock) {
    const auto measure = [&](double value) { return measure_words(context, stock, value); };
    table.rows.push_back(
        {{Cell::bold(stock.stock + ", " + stock.material), buy_words(context, stock),
          joined(stock.owned, "\n"), measure(stock.finished), measure(stock.rough),
          measure(stock.planned), measure(stock.billed),
          stock.waste > 0 ? plain_number(stock.waste, 1) + " %" : "none"},
         {},
         false});
  }
  return drafting::table(context.kit, table, width);
}

Story hardware_table(const Context& context, const Bill& bill, double width) {
  drafting::Table table;
  table.columns = {words("Hardware", 1), words("Size", 1), figures("Needed"), figures("Packs"),
                   figures("In a pack")};
  for (const fabrication::HardwareBill& hardware : bill.hardware)
    table.rows.push_back({{Cell::bold(hardware.kind), hardware.size, std::to_string(hardware.count),
                           hardware.priced ? std::to_string(hardware.packs) : "",
                           hardware.priced ? std::to_string(hardware.pack) : ""},
                          {},
                          false});
  return drafting::table(context.kit, table, width);
}

Story money_table(const Context& context, const Bill& bill, double width) {
  drafting::Table table;
  const std::string& currency = *context.plan.project->buying.currency;
  table.columns = {words("What", 1),
                   words("Reckoning", 1),
                   {.head = currency.empty() ? "Amount" : currency,
                    .align = ink::Align::right,
                    .share = 0,
                    .wrap = false}};
  for (const fabrication::MoneyLine& line : bill.maker)
    table.rows.push_back({{line.what, line.reckoning, money_text(line.cents)}, {}, false});
  table.rows.push_back({{Cell::bold("Cost"), "", Cell::bold(money_text(bill.cost))}, {}, true});
  return drafting::table(context.kit, table, width);
}

// The drawings hold only if the stock measures as the file says.
Story measure_table(const Context& context, const Bill& bill, double width) {
  drafting::Table table;
  table.columns = {words("Stock", 1),
                   figures("Thickness used"),
                   {.head = "Measured", .share = 1, .least = 22},
                   {.head = "By, on", .share = 1, .least = 22}};
  for (const StockBill& stock : bill.stock) {
    const model::Stock* used = context.plan.project->stocks.find(stock.stock);
    const double mm = used->thickness->mm;
    table.rows.push_back(
        {{Cell::bold(stock.stock + ", " + stock.material),
          thickness_words(context, mm) + " (" + other_unit_text(mm, *context.job().units) + ")", "",
          ""},
         {},
         false});
  }
  return drafting::table(context.kit, table, width);
}

Story off_cut_table(const Context& context, double width) {
  drafting::Table table;
  table.columns = {words("Off-cut", 1),
                   figures("Along the grain"),
                   figures("Across"),
                   figures("How many"),
                   {.head = "Put where", .share = 2, .least = 30}};
  for (const fabrication::StockLayout& layout : context.plan.layouts)
    for (const fabrication::CutSheet& sheet : layout.sheets)
      for (const fabrication::Leftover& left : sheet.off_cuts)
        table.rows.push_back(
            {{Cell::bold(left.name), context.kit.figures.text(left.place.width),
              context.kit.figures.text(left.place.height), std::to_string(sheet.count), ""},
             {},
             false});
  return table.rows.empty() ? Story{} : drafting::table(context.kit, table, width);
}

std::string explanation(const Bill& bill) {
  std::string text =
      "Finished and blanks are what the parts measure; bought is what the layouts use of whole "
      "sheets and boards; as billed is how the yard counts it, and at least the finished quantity "
      "with the waste factor on it.";
  const auto boards = [&](bool by_volume) {
    return std::ranges::any_of(bill.stock, [&](const StockBill& stock) {
      return stock.kind == model::StockKind::board && stock.by_volume == by_volume;
    });
  };
  if (boards(false))
    text += " Board feet are by the thickness the wood is sold by, one inch at least.";
  if (boards(true))
    text += " Boards are by volume at the thickness they are sold by; 1,000 dm³ are a cubic metre.";
  if (bill.any_money() && !bill.unpriced.empty()) {
    text += " Without a price, and not in the sum: " + joined(bill.unpriced, "; ") + ".";
  }
  if (!bill.any_money()) text += " No prices were given.";
  return text;
}

}  // namespace

std::vector<ink::Page> make_buying(const Context& given) {
  const Context context = for_reading(given);
  const Bill bill = fabrication::make_bill(context.plan);
  if (bill.stock.empty()) return {};
  const double width = story_width(context);
  Story story;
  add_chapter(context, story, "Stock", stock_table(context, bill, width), width);
  story.push_back(drafting::body_text(context.kit, explanation(bill), width));
  story.back().space_after = 6;
  if (!bill.hardware.empty())
    add_chapter(context, story, "Hardware", hardware_table(context, bill, width), width);
  if (bill.any_money())
    add_chapter(context, story, "Money", money_table(context, bill, width), width);
  add_chapter(context, story, "Measure when it comes in, and sand first",
              measure_table(context, bill, width), width);
  Story off_cuts = off_cut_table(context, width);
  if (!off_cuts.empty())
    add_chapter(context, story, "Off-cuts to keep", std::move(off_cuts), width);
  return story_pages(context, "Buying list", story);
}

}  // namespace splay::sheets
