// Edging that is on its panel before the cuts, as the pages tell it.
#include <catch2/catch.hpp>

#include "part_pages.h"

using namespace splay;

namespace {

std::vector<const ink::Page*> titled(const ink::Packet& packet, const std::string& title) {
  std::vector<const ink::Page*> pages;
  for (const ink::Page& page : packet.pages)
    if (page.title == title) pages.push_back(&page);
  return pages;
}

test::Built banded(const std::string& glued) {
  return test::build(test::job("mm") + test::sheet("panel", "18 mm") + test::sheet("band", "1 mm") +
                     "[case.c]\noutline = { bottom = 800, height = 600, lean_in = [\"12 deg\", "
                     "\"0 deg\"] }\ndepth = 300\nstock = \"panel\"\ncorners = \"mitre\"\nfront = "
                     "{ edge = \"band\", stock = \"band\", glued = \"" +
                     glued + "\" }\n");
}

}  // namespace

TEST_CASE("edging from before the cuts stands before stage 1, with the step that glues it") {
  const test::Built piece = banded("before the cuts");
  const std::string panel = piece.row("left panel").mark,
                    band = piece.row("left panel edge band").mark;
  const std::string line =
      band + " left panel edge band on " + panel + " left panel, step " + panel + ".";
  for (const model::PaperSize paper : {model::PaperSize::a4, model::PaperSize::letter}) {
    const ink::Packet packet = test::binder(piece, paper);
    CHECK(test::shows(titled(packet, "Glue-up"), "Edging, before the ends are cut"));
    CHECK(test::shows(titled(packet, "Glue-up"), line));
    CHECK(test::shows(titled(packet, "Saw steps"), "Edging, glued on"));
    CHECK(test::shows(titled(packet, "Saw steps"), "From here on the two are one piece."));
    // Its ends are the panel's: nothing to glue on them or to saw along.
    CHECK_FALSE(test::shows(titled(packet, "Templates"), band + ": "));
    CHECK(test::page_faults(piece, packet) == "");
  }
}

TEST_CASE("edging from after the cuts has a stage and templates of its own") {
  const test::Built piece = banded("after the cuts");
  const ink::Packet packet = test::binder(piece);
  CHECK_FALSE(test::shows(titled(packet, "Glue-up"), "Edging, before the ends are cut"));
  CHECK_FALSE(test::shows(titled(packet, "Saw steps"), "Edging, glued on"));
  CHECK(test::shows(titled(packet, "Templates"), piece.row("left panel edge band").mark + ": "));
}
