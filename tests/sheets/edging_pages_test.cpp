// Edging that is on its panel before the cuts, as the pages tell it.
#include <catch2/catch.hpp>

#include "part_pages.h"

using namespace splay;

namespace {

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
    CHECK(test::shows(test::titled(packet, "Glue-up"), "Edging, before the ends are cut"));
    CHECK(test::shows(test::titled(packet, "Glue-up"), line));
    CHECK(test::shows(test::titled(packet, "Saw steps"), "Edging, glued on"));
    CHECK(test::shows(test::titled(packet, "Saw steps"), "From here on the two are one piece."));
    // Its ends are the panel's: nothing to glue on them or to saw along.
    CHECK_FALSE(test::shows(test::titled(packet, "Templates"), band + ": "));
    CHECK(test::page_faults(piece, packet) == "");
  }
}

TEST_CASE("edging from after the cuts has a stage and templates of its own") {
  const test::Built piece = banded("after the cuts");
  const ink::Packet packet = test::binder(piece);
  CHECK_FALSE(test::shows(test::titled(packet, "Glue-up"), "Edging, before the ends are cut"));
  CHECK_FALSE(test::shows(test::titled(packet, "Saw steps"), "Edging, glued on"));
  CHECK(test::shows(test::titled(packet, "Templates"),
                    piece.row("left panel edge band").mark + ": "));
}

TEST_CASE("a lipped board by itself has its edging on the glue-up page, and no stage") {
  const test::Built piece =
      test::build(test::job("mm") + test::board("oak", "20 mm") +
                  "[board.one]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 600\nwidth = 200\n"
                  "[board.lip]\nstock = \"oak\"\nat = [0, -12, 0]\nlength = 600\nwidth = 12\n"
                  "[joint.lipping]\nkind = \"glued\"\nhost = \"one\"\nguest = \"lip\"\n"
                  "made = \"before the cuts\"\n");
  const ink::Packet packet = test::binder(piece);
  const auto pages = test::titled(packet, "Glue-up");
  REQUIRE(pages.size() == 1);
  CHECK(test::shows(pages, "lip on "));
  CHECK(test::shows(pages, "Cautions for gluing"));
  CHECK_FALSE(test::shows(pages, "Stage 1"));
  CHECK(test::page_faults(piece, packet) == "");
}

TEST_CASE("pieces that only stand together come in stages that one picture shows") {
  std::string text = test::job("mm") + test::board("oak", "20 mm");
  for (int i = 0; i < 90; ++i)
    text += "[board.b" + std::to_string(i) + "]\nstock = \"oak\"\nat = [0, " +
            std::to_string(i * 60) + ", 0]\nlength = " + std::to_string(300 + i) + "\nwidth = 50\n";
  const test::Built piece = test::build(text);
  for (const fabrication::GlueStage& stage : piece.plan.glue_up.stages)
    CHECK(stage.joinings.size() <= 24);
  const ink::Packet packet = test::binder(piece);
  CHECK(test::titled(packet, "Glue-up").size() >= 4);
  CHECK(test::page_faults(piece, packet) == "");
}
