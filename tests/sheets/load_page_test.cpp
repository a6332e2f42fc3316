// What stiffens shelves, the slots of pins and the fasteners of tops, on the page of figures.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "fabrication/hardware.h"
#include "part_pages.h"

using namespace splay;

namespace {

const char* const title = "Hardware, finish, balance";

// The pages of figures on both papers hold the words, and no page has a fault.
void check_pages(const test::Built& piece, const std::vector<std::string>& all) {
  CAPTURE(piece.stops());
  REQUIRE(piece.stops().empty());
  for (const model::PaperSize paper : {model::PaperSize::a4, model::PaperSize::letter}) {
    const ink::Packet packet = test::binder(piece, paper);
    std::vector<const ink::Page*> pages;
    for (const ink::Page& page : packet.pages)
      if (page.title == title) pages.push_back(&page);
    for (const std::string& each : all) {
      CAPTURE(each);
      CHECK(test::shows(pages, each));
    }
    CHECK(test::page_faults(piece, packet) == "");
  }
}

const std::string oak =
    "[stock.oak]\nkind = \"board\"\nthickness = 1\nspecies = \"white oak\"\nmaterial = \"oak\"\n";

}  // namespace

TEST_CASE("what a shelf goes down with stands under the table of loads") {
  check_pages(
      test::build(test::job() + test::sheet("panel", "3/4") + "stiffness = 9\n" +
                  test::sheet("thin", "1/4") +
                  "[case.a]\noutline = { bottom = 36, height = 60 }\ndepth = 12\nstock = "
                  "\"panel\"\ncorners = \"butt\"\nthrough = [\"left\", \"right\"]\n"
                  "[case.a.back]\nstock = \"panel\"\nfit = \"rabbet\"\ninto = \"3/8\"\n"
                  "[case.a.shelf.one]\ntop_at = 20\nends = { housing = \"1/4\" }\n"
                  "[joint.hold]\nkind = \"glued\"\nhost = \"back\"\nguest = \"one shelf\"\n"),
      {"goes down with", "at its back edge", "G = 0.06 E"});
}

TEST_CASE("slots of breadboard pins, and how far they have to reach, are printed") {
  check_pages(test::build(test::job() + oak +
                          "[top.t]\nstock = \"oak\"\noutline = { front = 48, deep = 24 "
                          "}\nbreadboard = { width = 4, movement = \"1/2\" }\n"),
              {"from its middle the slot is 3/4 long", "1/4 by 3/4"});
}

// asin(x / 5/8 in): 11.5 degrees for 1/8 in of movement, plane trigonometry.
TEST_CASE("how far figure-8s swing is printed") {
  const test::Built piece = test::build(
      test::job() + oak + test::board("leg", "2 in") +
      "[table.t]\nheight = 28\nwidth = 30\ndepth = 13\n[table.t.leg]\nstock = \"leg\"\nwidth = "
      "2\n[table.t.apron]\nstock = \"oak\"\nwidth = 3\n[table.t.top]\nstock = \"oak\"\noverhang = "
      "1\n[table.t.top.fastener.a]\nto = \"left apron\"\n");
  double moved = 0;
  for (const fabrication::TopFastening& each : fabrication::top_fastenings(piece.plan))
    moved = std::max({moved, each.shrinks, each.swells});
  REQUIRE(moved > 0);
  const double swing = test::degrees(std::asin(moved / (25.4 * 5 / 8)));
  check_pages(piece, {degrees_text(swing, 1), "between its holes"});
}
