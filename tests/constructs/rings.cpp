// Regular outlines, thickness from the measured stock, diagonals.
#include <cmath>

#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

// https://www.routerforums.com/threads/here-is-a-little.1047/?u=79 : an octagon that hugs a 2 in
// pipe has an inside side of 0.828 in.
TEST_CASE("an octagon round a 2 in pipe") {
  const test::Built built = test::build(
      test::job() + test::sheet("panel", "1/2") +
      "[case.ring]\noutline = { sides = 8, across_flats = 2, measured = \"inside\" }\ndepth = 4\n"
      "stock = \"panel\"\n");
  REQUIRE(built.stops() == "");
  CHECK(inches(built.row("side 1 panel").short_point) == Approx(0.828).margin(0.0005));
  CHECK(built.row("side 1 panel").quantity() == 8);
}

// https://www.penturners.org/threads/segmenting-question.159820/ : a hexagonal box, 5 1/2 in inside
// from flat to flat with a 3/8 in wall, has outside pieces 3.608 in wide.
TEST_CASE("a hexagonal box from its inside size") {
  const test::Built built = test::build(
      test::job() + test::sheet("panel", "3/8") +
      "[case.ring]\noutline = { sides = 6, across_flats = \"5 1/2\", measured = \"inside\" }\n"
      "depth = 4\nstock = \"panel\"\n");
  REQUIRE(built.stops() == "");
  CHECK(inches(built.row("side 1 panel").long_point) == Approx(3.608).margin(0.0005));
  CHECK(degrees(built.cut("side 1 panel", "mitre to side 2 panel").bevel) == Approx(30));
}

// https://homeguides.sfgate.com/make-octagon-wood-planter-63824.html : an octagonal rim of 3 1/2 in
// stock, 8 in on its short edge, both ends at 22 1/2 degrees. The page says "about 12" for the long
// edge; 8 in + 2 * 3.5 in * tan(22.5) is 10.899.
TEST_CASE("an octagonal rim: long edge from the short one") {
  const test::Built built =
      test::build(test::job() + test::sheet("panel", "1/2") + test::board("rim", "3/4") +
                  "[case.ring]\noutline = { sides = 8, side = \"8 in + 2 * 3.5 in * tan(22.5)\" "
                  "}\ndepth = 4\nstock = "
                  "\"panel\"\n[case.ring.frame]\nstock = \"rim\"\nwidth = \"3 1/2\"\n");
  REQUIRE(built.stops() == "");
  const fabrication::PartRow& rim = built.row("frame side 1");
  CHECK(inches(rim.long_point) == Approx(10.899).margin(0.0005));
  CHECK(inches(rim.short_point) == Approx(8));
  CHECK(degrees(built.cut("frame side 1", "mitre to frame side 2").face_angle) == Approx(22.5));
}

// https://www.thisoldhouse.com/ideas/real-thickness-plywood and
// http://www.woodworkingtips.com/etips/etip102700wb.html : a housing is as wide as the measured
// sheet, never as its name.
TEST_CASE("every housing is as wide as the sheet measures") {
  const std::string text =
      test::job() + test::sheet("panel", "3/4") + test::sheet("thin", "0.703") +
      "[case.body]\noutline = { bottom = 30, height = 40, measured = \"inside\" }\n"
      "depth = 12\nstock = \"panel\"\n[case.body.shelf.a]\ntop_at = 14\nstock = "
      "\"thin\"\nends = { housing = \"1/4\" }\n[case.body.shelf.b]\ntop_at = 27\n"
      "stock = \"thin\"\nends = { housing = \"1/4\" }\n";
  const test::Built built = test::build(text);
  REQUIRE(built.stops() == "");
  int housings = 0;
  for (const parts::Part& part : built.plan.assembly.parts)
    for (const parts::Operation& op : part.operations)
      if (op.kind == parts::OperationKind::housing) {
        ++housings;
        REQUIRE(op.trench.walls.size() == 2);
        // The walls face each other, so that their offsets from the origin add up to the width.
        CHECK(inches(std::abs(op.trench.walls[0].d + op.trench.walls[1].d)) == Approx(0.703));
      }
  CHECK(housings == 4);
  // The inside width stays 30: the shelf is that and both housings.
  CHECK(inches(built.row("a shelf").finished.x) == Approx(30.5));
  CHECK(inches(built.row("a shelf").finished.z) == Approx(0.703));
}

TEST_CASE("diagonals of a front, and one more length that fixes the lean") {
  SECTION("30 at the foot, 24 at the top, 36 high: plane trigonometry") {
    const test::Built built = test::build(test::job() + test::sheet("panel", "3/4") +
                                          "[case.body]\noutline = { bottom = 30, top = 24, height "
                                          "= 36 }\ndepth = 12\nstock = \"panel\"\n");
    REQUIRE(built.stops() == "");
    const fabrication::LoopReport& loop = built.plan.loops.front();
    CHECK(inches(loop.diagonal_1) == Approx(45));
    CHECK(inches(loop.diagonal_2) == Approx(45));
    CHECK(inches(loop.check) == Approx(36));
    CHECK(std::hypot(30.0, 36.0) == Approx(46.86).margin(0.005));  // what a square case would show
  }
  SECTION("unequal leans: the diagonals differ") {
    const test::Built built = test::build(test::job() + test::sheet("panel", "3/4") +
                                          "[case.body]\noutline = { bottom = 30, height = 36, "
                                          "lean_in = [\"10 deg\", 0] }\ndepth = 12\n"
                                          "stock = \"panel\"\n");
    REQUIRE(built.stops() == "");
    const fabrication::LoopReport& loop = built.plan.loops.front();
    const double top = 30 - 36 * std::tan(Angle::degrees(10).rad);
    CHECK(inches(loop.diagonal_1) == Approx(std::hypot(30, 36)));
    CHECK(inches(loop.diagonal_2) == Approx(std::hypot(top, 36)));
  }
}
