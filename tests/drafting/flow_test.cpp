#include "drafting/flow.h"

#include <algorithm>
#include <array>

#include "drafting/table.h"
#include "page_fixture.h"

using namespace splay;
using namespace splay::drafting;

namespace {

Table rows(int count, const std::string& text) {
  Table table;
  table.columns = {{.head = "No", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "Text"}};
  for (int i = 1; i <= count; ++i)
    table.rows.push_back({{std::to_string(i), text}, {ink::PartClaim{std::to_string(i), "row"}}});
  return table;
}

int claims(const Items& items) {
  int count = 0;
  for (const ink::Item& item : items) {
    if (std::holds_alternative<ink::PartClaim>(item)) ++count;
    if (const auto* group = std::get_if<ink::Group>(&item)) count += claims(group->items);
  }
  return count;
}

}  // namespace

TEST_CASE("a table breaks over pages with its heading, every row once, none alone") {
  const Kit kit = test::kit();
  const ink::Rect area = free_area(paper_named("A4"));
  for (const int count : {1, 2, 30, 38, 39, 40, 41, 42, 77, 200}) {
    INFO(count << " rows");
    const std::vector<Items> pages =
        flow(table(kit, rows(count, "a row of the table"), area.width()), {area}, {area});
    int total = 0;
    for (const Items& page : pages) {
      const std::vector<std::string> words = test::words(page);
      CHECK(std::count(words.begin(), words.end(), "Text") == 1);
      if (count > 1) CHECK(claims(page) >= 2);
      total += claims(page);
      CHECK(extent(kit, page).low.y >= area.low.y - 1e-6);
    }
    CHECK(total == count);
    CHECK(test::faults(pages.front(), paper_named("A4")).find("text-over") == std::string::npos);
  }
}

TEST_CASE("cells wrap inside their columns") {
  const Kit kit = test::kit();
  const std::string text =
      "a text that is far too long for one line of so narrow a table and must be broken, with a "
      "worddddddddddddddddddddddddddddddddddddddddddddd that fits on no line";
  const Picture picture = as_picture(table(kit, rows(3, text), 60), 60);
  const ink::Rect box = extent(kit, picture.items);
  CHECK(box.low.x >= -1e-6);
  CHECK(box.high.x <= 60 + 1e-6);
  CHECK(box.low.y >= -picture.height - 1e-6);
}

TEST_CASE("figures stay whole when words that may not break are too long") {
  const Kit kit = test::kit();
  Table table;
  table.columns = {{.head = "Measure", .share = 0, .wrap = false},
                   {.head = "Must be", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "Measured", .share = 1, .least = 22}};
  table.rows = {{{"Diagonals 1/16 apart: corners out by", "0.07", ""}, {}, false},
                {{"Diagonal 1 to 3", "146 23/32", ""}, {}, false}};
  const Picture picture = as_picture(drafting::table(kit, table, 66), 66);
  const std::vector<std::string> words = test::words(picture.items);
  CHECK(std::count(words.begin(), words.end(), "146 23/32") == 1);
  CHECK(extent(kit, picture.items).high.x <= 66 + 1e-6);
}

TEST_CASE("words left too little room run under their rows, not down the page word by word") {
  const Kit kit = test::kit();
  const std::string words = "one edge at an angle, then another at a second angle and so on";
  Table table;
  table.columns = {{.head = "Mark", .share = 0, .wrap = false}};
  for (int i = 0; i < 8; ++i)
    table.columns.push_back(
        {.head = "Figure", .align = ink::Align::right, .share = 0, .wrap = false});
  table.columns.push_back({.head = "Ends"});
  table.rows = {{{"A", "1", "2", "3", "4", "5", "6", "7", "8", words}, {}, false},
                {{"B", "1", "2", "3", "4", "5", "6", "7", "8", "none"}, {}, false}};
  const auto texts = [&](double width) {
    const Picture picture = as_picture(drafting::table(kit, table, width), width);
    const ink::Rect box = extent(kit, picture.items);
    CHECK(box.high.x <= width + 1e-6);
    CHECK(box.low.y >= -picture.height - 1e-6);
    CHECK_THAT(test::faults(moved(picture.items, {20, 200})), Catch::Equals(""));
    return test::words(picture.items);
  };
  const auto has = [](const std::vector<std::string>& all, const std::string& text) {
    return std::ranges::count(all, text) == 1;
  };
  const std::vector<std::string> wide = texts(240), narrow = texts(115);
  CHECK(has(wide, "Ends"));
  CHECK(has(wide, words));
  CHECK_FALSE(has(narrow, "Ends"));
  CHECK(has(narrow, "Ends: " + words));
  CHECK(has(narrow, "Ends: none"));
}

TEST_CASE("the columns of the last page are about equally high") {
  const Kit kit = test::kit();
  const std::vector<ink::Rect> two = columns(free_area(paper_named("A3")), 2);
  Story story;
  for (int i = 0; i < 11; ++i)
    story.push_back(body_text(kit, "One line that is short.", two[0].width()));
  const std::vector<Items> pages = flow(story, two, two);
  REQUIRE(pages.size() == 1);
  int left = 0, right = 0;
  for (const ink::Item& item : pages[0])
    ++(extent(kit, {item}).low.x < two[1].low.x ? left : right);
  CHECK(left == 6);
  CHECK(right == 5);
}

TEST_CASE("a heading stays with its text, and a block higher than a column is refused") {
  const Kit kit = test::kit();
  const ink::Rect column{{20, 100}, {120, 140}};
  Story story;
  const double line = body_text(kit, "x", 100).picture.height + 2;
  for (double used = 0; used + 2 * line < 40; used += line)
    story.push_back(body_text(kit, "x", 100));
  story.push_back(heading(kit, "Heading", 100));
  story.push_back(body_text(kit, "under the heading", 100));
  const std::vector<Items> pages = flow(story, {column}, {column}, false);
  REQUIRE(pages.size() == 2);
  CHECK(test::words(pages[1]) == std::vector<std::string>{"Heading", "under the heading"});
  CHECK_THROWS_AS(flow({of_picture({{}, 10, 41}, 0)}, {column}, {column}), std::length_error);
}

TEST_CASE("text is broken, fitted and shortened within its width") {
  const Kit kit = test::kit();
  const std::string text = "The quick brown fox jumps over the lazy dog again and again";
  for (const double width : {8.0, 20.0, 55.0, 200.0})
    for (const std::string& line : wrap(kit, text, width, 2.5))
      CHECK(kit.width(line, 2.5) <= std::max(width, kit.width("again", 2.5)) + 1e-5);
  CHECK(wrap(kit, "one\ntwo", 100, 2.5).size() == 2);
  CHECK(wrap(kit, "", 100, 2.5).size() == 1);
  // As wide as its own room, whatever order that was added up in.
  const double own = kit.width("Thick", 2.5);
  CHECK(wrap(kit, "Thick", std::nextafter(own, 0), 2.5) == std::vector<std::string>{"Thick"});
  CHECK(wrap(kit, "Thick", own - 0.01, 2.5).size() == 2);
  const std::string cut = shortened(kit, text, 30, 2.5);
  CHECK(kit.width(cut, 2.5) <= 30);
  CHECK(cut.ends_with("…"));
  const ink::Rect box{{10, 10}, {40, 22}};
  const ink::Rect taken = extent(kit, {fitted(kit, text, box, {.height = 5})});
  CHECK(taken.low.x >= 10 - 1e-9);
  CHECK(taken.high.x <= 40 + 1e-9);
}

TEST_CASE("pages are about equally full") {
  const Kit kit = test::kit();
  const ink::Rect area = free_area(paper_named("A4"));
  const auto on_pages = [&](int count, bool level) {
    const Story story = table(kit, rows(count, "a row of the table"), area.width());
    std::vector<Items> pages = flow(story, {area}, {area}, level);
    REQUIRE(pages.size() == 2);
    return std::array{claims(pages[0]), claims(pages[1])};
  };
  const auto even = on_pages(50, true), full = on_pages(50, false);
  CHECK(std::abs(even[0] - even[1]) <= 2);
  CHECK(full[1] < 18);
  // Of pages filled one by one the last is still not left nearly empty.
  const auto shared = on_pages(45, false);
  CHECK(std::abs(shared[0] - shared[1]) <= 2);
}

TEST_CASE("a table that fits on one page is not split to make pages equally full") {
  const Kit kit = test::kit();
  const ink::Rect area = free_area(paper_named("A4"));
  Story story = table(kit, rows(22, "a row of the first table"), area.width());
  add(story, table(kit, rows(4, "a row of the second"), area.width()));
  add(story, table(kit, rows(14, "a row of the third"), area.width()));
  const std::vector<Items> pages = flow(story, {area}, {area});
  REQUIRE(pages.size() == 2);
  std::size_t heads = 0;
  for (const Items& page : pages) {
    const std::vector<std::string> words = test::words(page);
    heads += static_cast<std::size_t>(std::count(words.begin(), words.end(), "Text"));
  }
  CHECK(heads == 3);
}
