#include "drafting/sheet_frame.h"

#include "drafting/room.h"
#include "ink/outline.h"
#include "page_fixture.h"

using namespace splay;
using namespace splay::drafting;

namespace {

TitleFields fields() {
  TitleFields f;
  f.job = "A title that is a good deal longer than the field has room for, to see it wrapped";
  f.client = "A client with an uncommonly long name and a long address (invented)";
  f.number = "2026-0014-B";
  f.revision = "C";
  f.date = "2026-03-02";
  f.maker = "The workshop by the canal";
  f.sheet = "Part view of the middle upright, left";
  f.scale = "1:16 (3/4 in = 1 ft)";
  f.units = "Lengths in millimetres";
  f.projection = true;
  return f;
}

}  // namespace

TEST_CASE("frame, title block and bars are sound on every paper, bound on either side") {
  const Kit kit = test::kit();
  for (const char* name : {"A4", "Letter", "A3", "Tabloid"}) {
    for (const bool bind_right : {false, true}) {
      INFO(name << (bind_right ? ", bound right" : ""));
      ink::Page page = start_page(kit, paper_named(name), fields());
      number_page(kit, page, 118, 250, bind_right);
      CHECK(page.label == "118");
      CHECK(page.paper.margin_left == (bind_right ? 10 : 20));
      CHECK(page.paper.margin_right == (bind_right ? 20 : 10));
      CHECK_THAT(test::faults(page.items, page.paper), Catch::Equals(""));
      const std::vector<std::string> words = test::words(page.items);
      for (const char* word : {"118 of 250", "C", "2026-03-02", "100 mm", "4 in"})
        CHECK(std::count(words.begin(), words.end(), word) >= 1);
      CHECK(std::count(words.begin(), words.end(), "100 mm") == 2);  // across and up
    }
  }
  CHECK_THROWS_AS(paper_named("foolscap"), std::invalid_argument);
}

TEST_CASE("a sheet's large title stands clear of the name of its field") {
  const Kit kit = test::kit();
  TitleFields short_title = fields();
  short_title.sheet = "Glue-up";
  const ink::Page page = start_page(kit, paper_named("Letter"), short_title);
  const ink::Text *name = nullptr, *title = nullptr;
  ink::walk(page.items, [&](const ink::Item& item) {
    const auto* text = std::get_if<ink::Text>(&item);
    if (text != nullptr && text->utf8 == "Sheet") name = text;
    if (text != nullptr && text->utf8 == "Glue-up") title = text;
  });
  REQUIRE(name != nullptr);
  REQUIRE(title != nullptr);
  CHECK(title->height == 5);
  CHECK(name->at.y - (title->at.y + title->height) > 0.3 * title->height);
}

TEST_CASE("the free area is clear of frame, block and bars") {
  const Kit kit = test::kit();
  for (const char* name : {"A4", "Letter", "A3", "Tabloid"}) {
    const ink::Paper paper = paper_named(name);
    const ink::Rect area = free_area(paper);
    Room room(area);
    room.take(kit, start_page(kit, paper, fields()).items);
    CHECK(room.free(quad(grown(area, -1.3))));
    CHECK(area.width() * area.height() > 0.6 * paper.width * paper.height);
  }
}

TEST_CASE("the bar is 100 mm and 4 in long, across and up") {
  const Kit kit = test::kit();
  for (const bool upright : {false, true}) {
    const ink::Group bar = scale_bar(kit, {50, 60}, upright);
    double longest = 0;
    for (const ink::Item& item : bar.items) {
      const auto* stroke = std::get_if<ink::Stroke>(&item);
      if (!stroke) continue;
      const ink::Rect box = extent(kit, {*stroke});
      longest = upright ? box.height() : box.width();
    }
    CHECK(longest == Approx(101.6));
    std::vector<double> centimetres;
    for (const ink::Item& item : bar.items)
      if (const auto* text = std::get_if<ink::Text>(&item))
        if (text->utf8 == "100 mm")
          CHECK((upright ? text->at.y - 60 : text->at.x - 50) == Approx(100));
  }
}
