// What a style says of a packet: its paper, the pages left out, signs of the maker's own.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "drafting/conventions.h"
#include "ink/lint.h"
#include "reading/symbol_reader.h"
#include "sheets/packet.h"
#include "sheets/part_pages.h"
#include "sheets/symbols.h"
#include "support/demos.h"
#include "writers/files.h"
#include "writers/picture.h"
#include "writers/tools.h"
#include "writers/writers.h"

using namespace splay;

namespace {

model::Style style_of(const std::string& text) {
  const std::vector<model::PageKind> kinds = sheets::page_kinds();
  const auto reading = reading::read_style(text, "test", kinds);
  std::string faults;
  for (const Diagnostic& fault : reading.diagnostics) faults += describe(fault, "test", text);
  INFO(faults);
  REQUIRE(reading.style);
  return *reading.style;
}

test::Built stool_piece() {
  return test::build(writers::read_file(
      std::string(SPLAYBOOK_SOURCE_DIR) + "/projects/splayed-stool.toml", 1 << 20));
}

ink::Packet packet(const test::Built& piece, const model::Style& style,
                   sheets::ForWhom whom = sheets::ForWhom::shop) {
  return sheets::make_packet(piece.plan, style, test::fonts(), {whom, std::string(64, '0')});
}

std::string faults(const ink::Packet& packet, const ink::PartsWanted& wanted) {
  std::string text;
  for (const ink::LintFault& fault : ink::lint(packet, test::fonts(), wanted))
    text += fault.page + ": " + fault.rule + ": " + fault.text + "\n";
  return text;
}

// Settings of saw steps that stand on their page cut off.
std::string cut_settings(const ink::Packet& packet) {
  std::string cut;
  for (const ink::Page& page : packet.pages) {
    if (page.title != "Saw steps") continue;
    for (const ink::Text& text : test::all_of<ink::Text>(page))
      for (const char* start :
           {"check ", "scale ", "thr", "Tilt", "Gauge", "Blade", "Stop", "to the"})
        if (text.utf8.starts_with(start) && text.utf8.ends_with("…"))
          cut += page.label + ": " + text.utf8 + "\n";
  }
  return cut;
}

// Titles of pages, of which only what all of one kind share counts.
bool has_page(const ink::Packet& packet, const std::string& title) {
  return std::ranges::any_of(packet.pages, [&](const ink::Page& page) {
    return page.title.substr(0, page.title.find(':')) == title;
  });
}

std::shared_ptr<const model::Symbol> symbol(const std::string& text) {
  auto reading = reading::read_symbol(text);
  std::string all;
  for (const Diagnostic& fault : reading.diagnostics) all += describe(fault, "sign.svg", text);
  INFO(all);
  REQUIRE(reading.symbol);
  return std::make_shared<const model::Symbol>(std::move(*reading.symbol));
}

std::shared_ptr<const drafting::Symbol> drawn(const std::string& text) {
  model::Symbols symbols;
  symbols.shop.symbol = symbol(text);
  return sheets::symbols_of(symbols).shop;
}

// An invented mark of an invented shop.
constexpr const char* shop_mark =
    "<svg viewBox='0 0 40 20' fill='none' stroke='black' stroke-width='2' fill-rule='evenodd'>"
    "<rect x='2' y='2' width='36' height='16'/><path d='M8 14L20 6L32 14Z' fill='black'/></svg>";

std::size_t groups(const ink::Packet& packet) {
  std::size_t count = 0;
  for (const ink::Page& page : packet.pages)
    ink::walk(
        page.items, [](const ink::Item&) {}, [&](const ink::Group&) { ++count; },
        [](const ink::Group&) {});
  return count;
}

}  // namespace

TEST_CASE("the paper is the job's where it says one, else the style's, else A4") {
  test::Built piece = stool_piece();
  model::Job& job = piece.project->job;
  job.paper = {model::PaperSize::a4};
  CHECK(packet(piece, model::Style{}).pages.front().paper.name == "A4");
  CHECK(packet(piece, style_of("paper = 'letter'")).pages.front().paper.name == "Letter");
  job.paper.value = model::PaperSize::a3;
  job.paper.given = true;
  CHECK(packet(piece, style_of("paper = 'letter'")).pages.front().paper.name == "A3");
}

TEST_CASE("pages left out are neither there nor in the index, and nothing points to them") {
  for (const auto& file : test::demos()) {
    INFO(file);
    const test::Built piece = test::build(writers::read_file(file, 1u << 24));
    const ink::Packet whole = packet(piece, model::Style{});
    for (const auto& [word, title] :
         {std::pair{"labels", "Part labels"}, std::pair{"part-views", "Part views"},
          std::pair{"cut-list", "Cut list"}, std::pair{"exploded", "Exploded view"},
          std::pair{"stock", "Sheets and boards"}}) {
      INFO(word);
      const model::Style style = style_of(std::string("leave_out = ['") + word + "']");
      const ink::Packet less = packet(piece, style);
      CHECK(less.pages.size() < whole.pages.size());
      CHECK_FALSE(has_page(less, title));
      CHECK(has_page(less, "Saw steps"));
      const auto wanted = sheets::parts_wanted(piece.plan, style, sheets::ForWhom::shop);
      CHECK_THAT(faults(less, wanted), Catch::Equals(""));
      CHECK(test::shows(whole.pages.front(), title));
      CHECK_FALSE(test::shows(less.pages.front(), title));
    }
  }
}

TEST_CASE("the page lint still sees what is missing when other pages were left out") {
  const test::Built piece = stool_piece();
  const model::Style style = style_of("leave_out = ['labels', 'part-views']");
  ink::Packet less = packet(piece, style);
  const auto wanted = sheets::parts_wanted(piece.plan, style, sheets::ForWhom::shop);
  CHECK_FALSE(wanted.drawn);
  CHECK(wanted.listed);
  CHECK(wanted.marks.size() == piece.plan.rows.size());
  std::erase_if(less.pages, [](const ink::Page& page) { return page.title == "Cut list"; });
  CHECK(faults(less, wanted).find("mark-without-row") != std::string::npos);
  // The client's set names no parts.
  CHECK(sheets::parts_wanted(piece.plan, style, sheets::ForWhom::client).marks.empty());
}

TEST_CASE("no style leaves out a page that carries cautions, an index or the signature") {
  const std::vector<model::PageKind> kinds = sheets::page_kinds();
  for (const char* word :
       {"cover", "saw-steps", "glue-up", "hold", "checks", "client-cover", "client-sign-off"}) {
    const auto reading =
        reading::read_style(std::string("leave_out = ['") + word + "']", "test", kinds);
    REQUIRE(reading.diagnostics.size() == 1);
    CHECK(reading.diagnostics[0].code == "page-kept");
  }
}

TEST_CASE("every kind of page that may be left out can be, all at once, in both packets") {
  std::string words;
  for (const model::PageKind& kind : sheets::page_kinds())
    if (kind.kept.empty()) words += "'" + std::string(kind.word) + "', ";
  const model::Style style = style_of("leave_out = [" + words + "]");
  const test::Built piece = stool_piece();
  for (const auto whom : {sheets::ForWhom::shop, sheets::ForWhom::client}) {
    const ink::Packet less = packet(piece, style, whom);
    CHECK(less.pages.size() >= 2);
    CHECK_THAT(faults(less, sheets::parts_wanted(piece.plan, style, whom)), Catch::Equals(""));
  }
}

TEST_CASE("a sign is drawn as an SVG viewer draws it") {
  // Every element that is taken, drawn 80 mm high; judged by librsvg.
  const std::string text = writers::read_file(
      std::string(SPLAYBOOK_SOURCE_DIR) + "/tests/sheets/every_shape.svg", 1 << 16);
  constexpr double size = 80, dpi = 200;
  ink::Page page;
  page.paper = {"", size, size, 0, 0, 0, 0};
  page.items = {drafting::placed_symbol(*drawn(text), {size / 2, size / 2}, size)};
  const writer_tests::Picture ours = writer_tests::from_png(writers::png(page, test::fonts(), dpi));
  const writer_tests::Folder folder;
  const std::string source = folder.save("sign.svg", text), made = folder.path() + "/sign.png";
  const auto run =
      writer_tests::run("rsvg-convert -b white -w " + std::to_string(ours.width) + " -h " +
                        std::to_string(ours.height) + " " + source + " -o " + made);
  INFO(run.output);
  REQUIRE(run.status == 0);
  const auto difference =
      writer_tests::compare(ours, writer_tests::from_png(writer_tests::slurp(made)));
  CHECK(difference.inked > 0.1);
  CHECK(difference.largest < 0.15);
  CHECK(difference.mean < 0.003);
}

TEST_CASE("a symbol keeps its size, place and turn on paper, and its lines stay visible") {
  const auto bar = drawn(
      "<svg viewBox='0 0 40 20' stroke='black' stroke-width='4'><line x1='2' y1='10' x2='38' "
      "y2='10'/></svg>");
  CHECK(bar->width == 1);
  CHECK(bar->height == 0.5);
  const auto ends = [&](double size, double turn) {
    const ink::Group group = drafting::placed_symbol(*bar, {50, 60}, size, turn);
    return std::get<ink::Stroke>(group.items.at(0));
  };
  CHECK(norm(ends(20, 0).path.points[0] - Vec2{41, 60}) < 1e-9);
  CHECK(norm(ends(20, std::acos(-1) / 2).path.points[1] - Vec2{50, 69}) < 1e-9);
  CHECK(ends(20, 0).pen.width == Approx(2));
  CHECK(ends(0.5, 0).pen.width == Approx(0.13));
}

TEST_CASE("every style that comes along prints every demo without a fault of the page") {
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(SPLAYBOOK_SOURCE_DIR) + "/styles")) {
    if (entry.path().extension() != ".toml") continue;
    const model::Style style = style_of(test::text_of(entry.path()));
    for (const std::filesystem::path& file : test::demos()) {
      INFO(entry.path().stem() << ", " << file.stem());
      test::Built piece = test::build(test::text_of(file));
      piece.project->job.paper.value = model::PaperSize::a4;
      const ink::Packet pages = packet(piece, style);
      CHECK_THAT(faults(pages, sheets::parts_wanted(piece.plan, style, sheets::ForWhom::shop)),
                 Catch::Equals(""));
      CHECK_THAT(cut_settings(pages), Catch::Equals(""));
    }
  }
}

TEST_CASE("signs of the maker's own take the place of ours, without any ours are drawn") {
  const drafting::Kit plain{&test::fonts(), sheets::look_of(model::Style{}), {}};
  model::Style style;
  style.symbols.triangle.symbol = symbol(shop_mark);
  const drafting::Kit own{&test::fonts(), sheets::look_of(style), {}};
  CHECK(drafting::cabinetmaker_triangle(plain, {0, 0}, 9).items.size() == 1);
  CHECK(drafting::cabinetmaker_triangle(own, {0, 0}, 9).items.size() == 3);
  CHECK(drafting::face_edge_mark(own, {0, 0}, 9).items.size() == 1);
}

TEST_CASE("the maker's own mark stands in every title block, and large on the client's cover") {
  test::Built piece = stool_piece();
  piece.project->job.maker.value = "Lindholt & Quill Joinery Workshop";
  model::Style marked;
  marked.symbols.shop.symbol = symbol(shop_mark);
  for (const auto whom : {sheets::ForWhom::shop, sheets::ForWhom::client})
    for (const auto paper : {model::PaperSize::a4, model::PaperSize::tabloid}) {
      piece.project->job.paper.value = paper;
      const ink::Packet with = packet(piece, marked, whom), without = packet(piece, {}, whom);
      REQUIRE(with.pages.size() == without.pages.size());
      CHECK_THAT(faults(with, sheets::parts_wanted(piece.plan, marked, whom)), Catch::Equals(""));
      // Three items for each mark: a frame, a triangle's fill and its outline.
      const auto fills = [](const ink::Page& page) {
        std::size_t count = 0;
        ink::walk(page.items, [&](const ink::Item& item) {
          count += std::holds_alternative<ink::Fill>(item) ? 1u : 0u;
        });
        return count;
      };
      for (std::size_t i = 0; i < with.pages.size(); ++i) {
        const bool cover = i == 0 && whom == sheets::ForWhom::client;
        INFO(with.pages[i].title);
        CHECK(fills(with.pages[i]) == fills(without.pages[i]) + (cover ? 2 : 1));
      }
      CHECK(groups(with) >= groups(without));
    }
}
