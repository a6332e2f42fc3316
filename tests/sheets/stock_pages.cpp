// The pages of sheets, boards and buying against the plan.
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "fabrication/buying.h"
#include "part_pages.h"
#include "sheets/kinds.h"

using namespace splay;

namespace {

const char* const demos[] = {"projects/canted-tea-cabinet.toml",
                             "projects/six-sided-wall-case.toml", "projects/splayed-stool.toml",
                             "projects/tall-legged-tea-cabinet.toml"};

// Everything of one type on these pages.
template <class T>
std::vector<T> all_on(const std::vector<const ink::Page*>& pages) {
  std::vector<T> all;
  for (const ink::Page* page : pages)
    for (T& one : test::all_of<T>(*page)) all.push_back(std::move(one));
  return all;
}

int times(const std::vector<const ink::Page*>& pages, const std::string& words) {
  return static_cast<int>(std::ranges::count_if(
      all_on<ink::Text>(pages), [&](const ink::Text& text) { return text.utf8 == words; }));
}

}  // namespace

TEST_CASE("every piece of every layout is drawn, marked and linked") {
  for (const char* path : demos) {
    const test::Built piece = test::piece_from(path);
    for (const auto paper : {model::PaperSize::a4, model::PaperSize::tabloid}) {
      const ink::Packet packet = test::binder(piece, paper);
      const auto pages = test::titled(packet, "Sheets and boards");
      std::map<std::string, int> drawn, wanted, links;
      for (const ink::PartClaim& claim : all_on<ink::PartClaim>(pages)) ++drawn[claim.mark];
      for (const ink::Link& link : all_on<ink::Link>(pages)) ++links[link.target];
      for (const fabrication::StockLayout& layout : piece.plan.layouts)
        for (const fabrication::CutSheet& sheet : layout.sheets)
          for (const packing::PlacedPart& part : sheet.parts) {
            const auto row =
                static_cast<std::size_t>(layout.wanted[static_cast<std::size_t>(part.part)].row);
            ++wanted[piece.plan.rows[row].mark];
          }
      CHECK(drawn == wanted);
      for (const auto& [mark, count] : wanted) {
        INFO(path << ", " << mark);
        CHECK(links[sheets::part_anchor(mark)] == count);
      }
    }
  }
}

TEST_CASE("every cut has its number in the drawing and its line in the table") {
  for (const char* path : demos) {
    const test::Built piece = test::piece_from(path);
    const auto packet = test::binder(piece);
    const auto pages = test::titled(packet, "Sheets and boards");
    std::map<std::string, int> numbers;
    for (const fabrication::StockLayout& layout : piece.plan.layouts)
      for (const fabrication::CutSheet& sheet : layout.sheets) {
        REQUIRE(sheet.settings.size() == sheet.cuts.size());
        for (std::size_t i = 1; i <= sheet.cuts.size(); ++i) ++numbers[std::to_string(i)];
      }
    for (const auto& [number, count] : numbers) {
      INFO(path << ", cut " << number);
      CHECK(times(pages, number) >= 2 * count);  // other figures may look the same
    }
  }
}

TEST_CASE("cuts are made from the whole towards the parts, long ones first") {
  for (const char* path : demos) {
    const test::Built piece = test::piece_from(path);
    for (const fabrication::StockLayout& layout : piece.plan.layouts)
      for (const fabrication::CutSheet& sheet : layout.sheets) {
        // The first cut after the trims runs the whole way; none is longer than it but along the
        // other axis.
        for (const packing::SheetCut& cut : sheet.cuts) {
          const fabrication::Supplied& supply = layout.supplies[sheet.supply];
          const bool across = cut.axis == packing::Axis::x;
          CHECK(cut.to - cut.from <= (across ? supply.width : supply.length) + 1e-6);
          CHECK(cut.to > cut.from);
        }
        REQUIRE_FALSE(sheet.cuts.empty());
        const packing::SheetCut& first = sheet.cuts.front();
        const fabrication::Supplied& supply = layout.supplies[sheet.supply];
        CHECK(first.to - first.from ==
              Approx(first.axis == packing::Axis::x ? supply.width : supply.length));
      }
  }
}

TEST_CASE("off-cuts are named with their sizes, and listed on the buying page") {
  for (const char* path : demos) {
    const test::Built piece = test::piece_from(path);
    const ink::Packet packet = test::binder(piece);
    const auto drawings = test::titled(packet, "Sheets and boards");
    const auto buying = test::titled(packet, "Buying list");
    REQUIRE_FALSE(buying.empty());
    for (const fabrication::StockLayout& layout : piece.plan.layouts)
      for (const fabrication::CutSheet& sheet : layout.sheets)
        for (const fabrication::Leftover& left : sheet.off_cuts) {
          INFO(path << ", " << left.name);
          CHECK(test::shows(drawings, left.name + ","));
          CHECK(test::shows(buying, left.name));
        }
  }
}

TEST_CASE("the pages say how many sheets there are, and the least there could be") {
  const test::Built piece = test::build(
      test::job() + test::sheet("panel", "3/4 in") + "price = 80\n" +
      "[buying]\ncurrency = \"EUR\"\n" +
      "[case.body]\noutline = { bottom = 60, height = 60 }\ndepth = 30\nstock = \"panel\"\n"
      "corners = \"mitre\"\n[case.body.shelf.a]\ntop_at = 20\n[case.body.shelf.b]\ntop_at = 40\n");
  REQUIRE_THAT(piece.stops(), Catch::Equals(""));
  REQUIRE(piece.plan.layouts.size() == 1);
  const fabrication::StockLayout& layout = piece.plan.layouts[0];
  REQUIRE(layout.bought > 1);
  const ink::Packet packet = test::binder(piece);
  CHECK_THAT(test::page_faults(piece, packet), Catch::Equals(""));
  const auto pages = test::titled(packet, "Sheets and boards");
  CHECK(test::shows(pages, std::to_string(layout.bought) + " sheets to buy"));
  CHECK(test::shows(pages, "fewer than " + std::to_string(layout.bound) + " (proven)"));
  const fabrication::Bill bill = fabrication::make_bill(piece.plan);
  const auto buying = test::titled(packet, "Buying list");
  CHECK(test::shows(buying, fabrication::money_text(bill.cost)));
  CHECK(test::shows(buying, "EUR"));
}

TEST_CASE("boards with defects, glue-ups, resawing, turned and matched parts: sound pages") {
  const std::string text =
      test::job() +
      "[shop.saw]\nkerf = \"1/8\"\n"
      "[stock.panel]\nkind = \"sheet\"\nthickness = \"3/4\"\nsize = [60, 60]\nedge_trim = \"1/2\"\n"
      "may_turn = [\"side2\"]\n[stock.panel.match.doors]\nparts = [\"door1\", \"door2\"]\n"
      "[stock.panel.off_cut.old]\nsize = [30, 20]\n"
      "[stock.oak]\nkind = \"board\"\nmaterial = \"White oak\"\nthickness = \"7/8\"\n"
      "rough = \"1 7/8\"\nplaning = \"3/16\"\nlengths = [96]\nwidths = [5, 9]\n"
      "[stock.oak.rack.knotty]\nlength = 70\nwidth = 7\ndefects = [30, 33]\n";
  std::string items;
  const auto board = [&](const std::string& name, const std::string& stock, double length,
                         double width, double thick) {
    static int z = 0;
    items += "[board." + name + "]\nstock = \"" + stock + "\"\nat = [0, 0, " +
             std::to_string(z += 3) + "]\nlength = " + std::to_string(length) +
             "\nwidth = " + std::to_string(width) + "\nthickness = " + std::to_string(thick) + "\n";
  };
  for (const char* name : {"side1", "side2", "side3"}) board(name, "panel", 34, 22, 0.75);
  for (const char* name : {"door1", "door2"}) board(name, "panel", 24, 13, 0.75);
  for (const char* name : {"cleat1", "cleat2"}) board(name, "panel", 3, 1, 0.75);
  board("top", "oak", 40, 16, 0.875);
  for (const char* name : {"slat1", "slat2", "slat3"}) board(name, "oak", 24, 3, 0.5);
  for (const char* name : {"key1", "key2"}) board(name, "oak", 2, 0.75, 0.5);
  const test::Built piece = test::build(text + items);
  REQUIRE_THAT(piece.stops(), Catch::Equals(""));
  for (const auto paper : {model::PaperSize::a4, model::PaperSize::letter, model::PaperSize::a3,
                           model::PaperSize::tabloid}) {
    const ink::Packet packet = test::binder(piece, paper);
    INFO(packet.pages.front().paper.name);
    CHECK_THAT(test::page_faults(piece, packet), Catch::Equals(""));
    const auto pages = test::titled(packet, "Sheets and boards");
    CHECK(test::shows(pages, "is glued up from"));
    CHECK(test::shows(pages, "resawn into"));
    CHECK(test::shows(pages, "knotty, on hand"));
  }
}

TEST_CASE("the quote adds up, and shows no cost, rate or markup") {
  const test::Built piece = test::piece_from("projects/canted-tea-cabinet.toml");
  const fabrication::Bill bill = fabrication::make_bill(piece.plan);
  REQUIRE(bill.quote.size() >= 2);
  REQUIRE(*piece.project->buying.markup > 0);
  for (const auto paper : {model::PaperSize::a4, model::PaperSize::letter, model::PaperSize::a3}) {
    const ink::Packet packet = test::binder(piece, paper);
    const auto pages = test::titled(packet, "Quote");
    REQUIRE(pages.size() == 1);
    std::int64_t sum = 0;
    for (const fabrication::MoneyLine& line : bill.quote) {
      CHECK(times(pages, fabrication::money_text(line.cents)) >= 1);
      sum += line.cents;
    }
    CHECK(sum == bill.quote_net);
    CHECK(sum + bill.quote_tax == bill.quote_total);
    CHECK(times(pages, fabrication::money_text(bill.quote_total)) >= 1);
    CHECK(times(pages, fabrication::money_text(bill.cost)) == 0);
    for (const fabrication::MoneyLine& line : bill.maker)
      if (!line.reckoning.empty()) CHECK(times(pages, line.reckoning) == 0);
    REQUIRE_FALSE(piece.project->buying.terms->empty());
    for (const std::string& term : *piece.project->buying.terms) CHECK(times(pages, term) == 1);
  }
}

TEST_CASE("a sheet of few parts is drawn as large as others where that takes no page more") {
  const test::Built piece = test::piece_from("projects/six-sided-wall-case.toml");
  const ink::Packet packet = test::binder(piece, model::PaperSize::letter);
  const auto pages = test::titled(packet, "Sheets and boards");
  CHECK(pages.size() == 2);
  CHECK(test::shows(pages, "panel 1: 2440 × 1220 mm; scale 1:20"));
  CHECK(test::shows(pages, "back 1: 2440 × 1220 mm; scale 1:20"));
}
