#include <array>
#include <catch2/catch.hpp>

#include "furniture.h"

using namespace reading_test;

namespace {

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("explain without a word lists the words") {
  const std::string text = reading::explain("", furniture());
  for (const char* word : {"job", "sizes", "shop", "stock", "crate", "stool", "A box with ledges"})
    CHECK(holds(text, word));
}

TEST_CASE("explain tells every field with kind, range, default and help") {
  const std::string text = reading::explain("crate", furniture());
  CHECK(holds(text, "[crate.NAME]: A box with ledges\n"));
  CHECK(holds(
      text,
      "  depth    Front to back\n           length, more than 0.01, at most 10000 mm; needed\n"));
  CHECK(holds(text, "angle, 0 to 45 deg; left out: 0 deg\n"));
  CHECK(holds(text, "number, 0 to 10; left out: 1.5\n"));
  CHECK(holds(text, "whole number, 1 to 20; left out: 1\n"));
  CHECK(holds(text, "name of a stock; needed\n"));
  CHECK(holds(text, "name of an item; left out: on its own\n"));
  CHECK(holds(text, "tables with names of your own"));
}

TEST_CASE("explain goes in by dots") {
  CHECK(holds(reading::explain("crate.ledge", furniture()),
              "[crate.NAME.ledge.NAME]: A ledge\n\n  top_at  Height of its top face\n"));
  CHECK(holds(reading::explain("crate.ledge.ends", furniture()),
              "\"butt\" or \"housed\"; left out: \"butt\"\n"));
  CHECK(holds(reading::explain("crate.outline.top", furniture()),
              "length, more than 0.01, at most 10000 mm; left out: none\n"));
  CHECK(holds(reading::explain("shop.saw", furniture()), "[shop.saw]"));
  CHECK(holds(reading::explain("shop.saw.kerf", furniture()), "left out: 3.2 mm"));
  CHECK(holds(reading::explain("sizes", furniture()), "\"1 in 6\""));
}

TEST_CASE("explain finds a word that stands further in") {
  CHECK(reading::explain("ledge", furniture()) == reading::explain("crate.ledge", furniture()));
  CHECK(holds(reading::explain("top_at", furniture()), "Height of its top face"));
  const std::string places = reading::explain("width", furniture());
  CHECK(holds(places, "in more places than one"));
  CHECK(holds(places, "stock.rack.width"));
}

TEST_CASE("explain says nothing of a word it doesn't know") {
  for (const char* word : {"crates", "crate.x", "crate.depth.x", ".", "crate.", "..", "job.title."})
    CHECK(reading::explain(word, furniture()).empty());
}

TEST_CASE("a style's file is explained and stands in the reference, with the pages it may name") {
  constexpr std::array<model::PageKind, 2> kinds{{{"labels", ""}, {"checks", "carries cautions"}}};
  const auto explained = [&](std::string_view word) {
    return reading::explain(word, furniture(), kinds);
  };
  CHECK(holds(explained(""), "styles/NAME.toml"));
  CHECK(holds(explained("style"), "list of words: \"labels\", \"checks\"; left out: none"));
  CHECK(holds(explained("style.symbols"), "[symbols] of a style: "));
  CHECK(holds(explained("style.symbols"), "SVG file of the triangle"));
  CHECK(holds(explained("style.paper"), "a field of a style\n"));
  const std::string page = reading::reference_page(furniture(), kinds);
  for (const char* part : {"# The style file", "| `leave_out` |", "`[symbols]`", "| `face_edge` |"})
    CHECK(holds(page, part));
}

TEST_CASE("no line of an explanation is wider than a terminal") {
  for (const char* word :
       {"", "job", "sizes", "shop", "stock", "crate", "crate.outline", "stool", "style"}) {
    const std::string text = reading::explain(word, furniture());
    REQUIRE_FALSE(text.empty());
    std::size_t start = 0;
    for (std::size_t end = text.find('\n'); end != std::string::npos;
         end = text.find('\n', start)) {
      CHECK(end - start <= 100);
      start = end + 1;
    }
  }
}

TEST_CASE("the reference page has every table and every field, in cells of equal number") {
  const std::string page = reading::reference_page(furniture());
  for (const char* part : {"`[job]`", "`[shop.saw]`", "`[stock.NAME]`", "`[crate.NAME]`",
                           "`[crate.NAME.outline]`", "`[crate.NAME.ledge.NAME]`", "`[stool.NAME]`",
                           "| `fraction` |", "| `top_at` |", "| `longest_on_end` |"})
    CHECK(holds(page, part));
  std::size_t start = 0;
  for (std::size_t end = page.find('\n'); end != std::string::npos; end = page.find('\n', start)) {
    const std::string line = page.substr(start, end - start);
    start = end + 1;
    if (line.empty() || line[0] != '|') continue;
    int bars = 0;
    for (std::size_t i = 0; i < line.size(); ++i)
      if (line[i] == '|' && (i == 0 || line[i - 1] != '\\')) ++bars;
    CHECK(bars == 5);
  }
}
