// Cut list and labels against the plan; the arranging of pictures.
#include <catch2/catch.hpp>
#include <map>
#include <random>

#include "drafting/kit.h"
#include "part_pages.h"
#include "sheets/part_view_arrange.h"

using namespace splay;

namespace {

int pages_titled(const ink::Packet& packet, const std::string& title) {
  return static_cast<int>(std::ranges::count_if(
      packet.pages, [&](const ink::Page& page) { return page.title == title; }));
}

std::vector<ink::PartClaim> claims(const ink::Packet& packet, const std::string& what) {
  std::vector<ink::PartClaim> found;
  for (const ink::Page& page : packet.pages)
    for (const ink::PartClaim& claim : test::all_of<ink::PartClaim>(page))
      if (claim.what == what) found.push_back(claim);
  return found;
}

}  // namespace

TEST_CASE("the cut list has every row once, with its figures, and the sums of each stock") {
  for (const char* path :
       {"projects/canted-tea-cabinet.toml", "projects/six-sided-wall-case.toml"}) {
    const test::Built piece = test::piece_from(path);
    const ink::Packet packet = test::binder(piece);
    std::map<std::string, int> rows;
    for (const ink::PartClaim& claim : claims(packet, "row")) ++rows[claim.mark];
    const FigureStyle figures = piece.project->job.figures();
    const auto listed = [&](const std::string& words) {
      return std::ranges::any_of(packet.pages, [&](const ink::Page& page) {
        return page.title == "Cut list" && test::shows(page, words);
      });
    };
    for (const fabrication::PartRow& row : piece.plan.rows) {
      INFO(path << ", " << row.mark);
      CHECK(rows[row.mark] == 1);
      for (const double mm : {row.finished.x, row.finished.y, row.finished.z, row.long_point,
                              row.short_point, row.blank.x, row.blank.y})
        CHECK(listed(figures.text(mm)));
    }
    for (const fabrication::StockUse& use : piece.plan.stock)
      CHECK(listed(std::to_string(use.pieces) + (use.pieces == 1 ? " piece" : " pieces")));
  }
}

TEST_CASE("the record to fill in has every part with its designed figures") {
  const test::Built piece = test::piece_from("projects/canted-tea-cabinet.toml");
  const ink::Packet packet = test::binder(piece);
  const FigureStyle figures = piece.project->job.figures();
  const auto recorded = [&](const std::string& words) {
    return std::ranges::any_of(packet.pages, [&](const ink::Page& page) {
      return page.title == "As-built record" && test::shows(page, words);
    });
  };
  CHECK(recorded("record and archive"));
  CHECK(recorded("48"));  // over everything, as the file says
  for (const fabrication::PartRow& row : piece.plan.rows) {
    CAPTURE(row.mark);
    CHECK(recorded(row.mark));
    for (const double mm : {row.finished.x, row.finished.y, row.finished.z})
      CHECK(recorded(figures.text(mm)));
  }
}

TEST_CASE("a cut list of a hundred parts breaks over pages with its heading on each") {
  std::string shelves;
  for (int i = 0; i < 40; ++i)
    shelves += "[case.body.shelf.s" + std::to_string(i) +
               "]\ntop_at = " + std::to_string(60 + 56 * i) + "\n";
  const test::Built piece = test::build(
      test::job("mm") + test::sheet("panel", "18 mm") +
      "[case.body]\noutline = { bottom = 700, height = 2400, lean_in = [\"3 deg\", \"1 deg\"] }\n"
      "depth = 300\nstock = \"panel\"\ncorners = \"mitre\"\n" +
      shelves);
  REQUIRE_THAT(piece.stops(), Catch::Equals(""));
  const ink::Packet packet = test::binder(piece);
  CHECK(pages_titled(packet, "Cut list") >= 2);
  for (const ink::Page& page : packet.pages)
    if (page.title == "Cut list") CHECK(test::shows(page, "Mark"));
  CHECK_THAT(test::page_faults(piece, packet), Catch::Equals(""));
}

TEST_CASE("every physical part has a label, numbered within its row") {
  for (const char* path :
       {"projects/canted-tea-cabinet.toml", "projects/six-sided-wall-case.toml"}) {
    const test::Built piece = test::piece_from(path);
    const ink::Packet packet = test::binder(piece);
    std::map<std::string, std::size_t> labels;
    for (const ink::PartClaim& claim : claims(packet, "label")) ++labels[claim.mark];
    std::map<std::string, int> numbers;
    for (const ink::Page& page : packet.pages)
      if (page.title == "Part labels")
        for (const ink::Text& text : test::all_of<ink::Text>(page)) ++numbers[text.utf8];
    std::map<std::string, int> wanted;
    for (const fabrication::PartRow& row : piece.plan.rows) {
      INFO(path << ", " << row.mark);
      CHECK(labels[row.mark] == row.quantity());
      for (std::size_t i = 1; i <= row.quantity(); ++i)
        ++wanted[std::to_string(i) + " of " + std::to_string(row.quantity())];
    }
    for (const auto& [words, count] : wanted) CHECK(numbers[words] == count);
  }
}

TEST_CASE("labels stand apart and inside the page") {
  const test::Built piece = test::piece_from("projects/six-sided-wall-case.toml");
  for (const auto paper : {model::PaperSize::a4, model::PaperSize::tabloid}) {
    const ink::Packet packet = test::binder(piece, paper);
    for (const ink::Page& page : packet.pages) {
      if (page.title != "Part labels") continue;
      const std::vector<ink::Link> boxes = test::all_of<ink::Link>(page);
      for (std::size_t i = 0; i < boxes.size(); ++i)
        for (std::size_t k = 0; k < i; ++k) {
          const ink::Rect a = drafting::grown(boxes[i].area, -0.01);
          CHECK_FALSE(drafting::overlap(a, drafting::grown(boxes[k].area, -0.01)));
        }
    }
  }
}

TEST_CASE("arranged pictures lie apart inside the strip, the first in the corner") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> length(5, 80);
  for (int round = 0; round < 200; ++round) {
    std::vector<sheets::Size> sizes(1 + static_cast<std::size_t>(round % 9));
    for (sheets::Size& size : sizes) size = {length(random), length(random)};
    constexpr double width = 170, gap = 5;
    const auto result = sheets::arranged(sizes, width, gap);
    REQUIRE(result);
    CHECK(norm(result->places[0]) == 0);
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      const Vec2 a = result->places[i];
      CHECK(a.x >= 0);
      CHECK(a.x + sizes[i].width <= width + 1e-6);
      CHECK(a.y + sizes[i].height <= result->height + 1e-6);
      for (std::size_t k = 0; k < i; ++k) {
        const Vec2 b = result->places[k];
        const bool apart =
            a.x >= b.x + sizes[k].width + gap - 1e-6 || b.x >= a.x + sizes[i].width + gap - 1e-6 ||
            a.y >= b.y + sizes[k].height + gap - 1e-6 || b.y >= a.y + sizes[i].height + gap - 1e-6;
        CHECK(apart);
      }
    }
  }
  CHECK_FALSE(sheets::arranged({{200, 10}}, 170, 5));
}

TEST_CASE("a cut list that goes on over the page says of which stock") {
  const test::Built piece = test::piece_from("projects/plain-bookcase.toml");
  int going_on = 0;
  for (const model::PaperSize paper : {model::PaperSize::a4, model::PaperSize::letter}) {
    const ink::Packet packet = test::binder(piece, paper);
    for (const ink::Page* page : test::titled(packet, "Cut list")) {
      going_on += test::shows(*page, "Part of ") ? 1 : 0;
    }
  }
  CHECK(going_on > 0);
}

TEST_CASE("a round part is told as round, measured stock as measured") {
  const test::Built piece = test::piece_from("projects/six-sided-tea-tray.toml");
  const ink::Packet packet = test::binder(piece);
  CHECK(test::shows(test::titled(packet, "Cut list"), "round, Ø22"));
  // 0.243 in is no quarter of an inch.
  for (const char* title : {"Cover and index", "Cut list", "Sheets and boards", "Buying list"}) {
    INFO(title);
    CHECK(test::shows(test::titled(packet, title), "0.243 in"));
  }
}

TEST_CASE("what stands under a top is placed on its underside") {
  const test::Built piece = test::piece_from("projects/splayed-stool.toml");
  const ink::Packet packet = test::binder(piece);
  const auto pages = test::pages_of(packet, piece.row("top").mark);
  CHECK(test::shows(pages, "Figure-8 fastener 5/8 in, underside: its middle from the left end:"));
}
