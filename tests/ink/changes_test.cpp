// Where a page is not as it was.
#include <catch2/catch.hpp>

#include "ink/changes.h"

using namespace splay;
using namespace splay::ink;

namespace {

Page page_with(std::vector<Item> items) {
  Page page;
  page.items = std::move(items);
  return page;
}

Text word(const std::string& text, double y) { return Text{{20, y}, text, 3}; }

}  // namespace

TEST_CASE("ink that moved is marked where it was and where it is") {
  const FontSet fonts;
  const std::vector<Span> spans =
      changed_spans(page_with({word("left", 50)}), page_with({word("left", 150)}), fonts);
  REQUIRE(spans.size() == 2);
  CHECK((spans[0].low > 148 && spans[0].high < 155));
  CHECK((spans[1].low > 48 && spans[1].high < 55));
}

TEST_CASE("what leaves no ink changes nothing") {
  const FontSet fonts;
  const Page bare = page_with({word("left", 50)});
  const Page blank = page_with({word("left", 50), word(" ", 80), word("", 90), Stroke{}});
  CHECK(changed_spans(bare, blank, fonts).empty());
  CHECK(changed_spans(blank, bare, fonts).empty());
}
