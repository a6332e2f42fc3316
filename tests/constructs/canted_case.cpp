// A case whose sides lean in: corners, tilts, housings, back and frame.
#include <cmath>

#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

namespace {

std::string canted(const std::string& lean, const std::string& rest) {
  return test::job() + test::sheet("panel", "3/4") + test::sheet("thin", "1/4") +
         test::board("oak", "3/4") +
         "[case.body]\noutline = { bottom = 48, height = \"26 1/2\", lean_in = [\"" + lean +
         "\"] }\ndepth = 15\nstock = \"panel\"\n" + rest;
}

}  // namespace

// Common practice, no source: with both sides leaning 15 degrees the corners are 75 and 105 degrees
// and one blade tilt of 37.5 degrees cuts them all, the obtuse ones with the board flat and the
// acute ones with the board standing.
TEST_CASE("a lean of 15 degrees: corners of 75 and 105, one tilt of 37.5") {
  const test::Built built = test::build(canted("15 deg", ""));
  REQUIRE(built.stops() == "");
  int acute = 0, obtuse = 0;
  for (const fabrication::JointReport& joint : built.plan.joints) {
    if (joint.kind != "mitre") continue;
    const double angle = degrees(joint.dihedral);
    acute += std::abs(angle - 75) < 1e-9;
    obtuse += std::abs(angle - 105) < 1e-9;
  }
  CHECK(acute == 2);
  CHECK(obtuse == 2);
  const auto bevel = [&](const char* part, const char* cut) {
    return degrees(built.cut(part, cut).bevel);
  };
  CHECK(bevel("left panel", "mitre to top panel") == Approx(37.5));
  CHECK(90 - bevel("left panel", "mitre to bottom panel") == Approx(37.5));
  CHECK(bevel("top panel", "mitre to left panel") == Approx(37.5));
  CHECK(90 - bevel("bottom panel", "mitre to right panel") == Approx(37.5));
  CHECK(built.cut("bottom panel", "mitre to right panel").long_face == parts::Side::z_high);
  int standing = 0;
  for (const fabrication::Step& step : built.plan.steps)
    standing += step.has(fabrication::Flag::complement);
  CHECK(standing > 0);
  // The sides are mirror images, never two alike.
  CHECK(built.row("left panel").hand == fabrication::Hand::none);
}

TEST_CASE("sides with a housing are a left and a right, found by geometry") {
  const test::Built built = test::build(canted("15 deg",
                                               "[case.body.shelf.a]\ntop_at = 12\nset_back = "
                                               "1\nends = { housing = \"1/4\", stopped = 1 }\n"));
  REQUIRE(built.stops() == "");
  const fabrication::PartRow& left = built.row("left panel");
  const fabrication::PartRow& right = built.row("right panel");
  CHECK(left.hand == fabrication::Hand::left);
  CHECK(right.hand == fabrication::Hand::right);
  CHECK(left.quantity() == 1);
  CHECK(&built.plan.rows[static_cast<std::size_t>(left.pair)] == &right);
  CHECK(left.finished.x == Approx(right.finished.x));
  CHECK(left.volume == Approx(right.volume));
}

// A stack tilted with the wall leaves a floor square to its walls (common practice, no source;
// plane trigonometry): the shelf's end stays square and the deeper wall is t * sin(lean) deeper.
TEST_CASE("a tilted housing: floor square to the walls or parallel to the face") {
  const std::string shelf =
      "[case.body.shelf.a]\ntop_at = 12\nends = { housing = \"1/4\", floor = \"";
  const double tilt = Angle::degrees(15).rad;
  SECTION("square to the walls") {
    const test::Built built = test::build(canted("15 deg", shelf + "square to walls\" }\n"));
    REQUIRE(built.stops() == "");
    const parts::Operation& op = built.operation("left panel", "housing for a shelf");
    CHECK(inches(op.trench.shallow) == Approx(0.25));
    CHECK(inches(op.trench.deep) == Approx(0.25 + 0.75 * std::sin(tilt)));
    for (const Plane& wall : op.trench.walls) {
      CHECK(std::asin(std::abs(wall.n.x)) == Approx(std::numbers::pi / 2 - tilt));
      CHECK(std::abs(dot(wall.n, op.trench.floor.n)) < 1e-12);
    }
    CHECK(degrees(built.cut("a shelf", "end in left panel").bevel) == Approx(0).margin(1e-9));
    CHECK(built.row("a shelf").long_point == Approx(built.row("a shelf").short_point));
  }
  SECTION("parallel to the face") {
    const test::Built built = test::build(canted("15 deg", shelf + "parallel to face\" }\n"));
    REQUIRE(built.stops() == "");
    const parts::Operation& op = built.operation("left panel", "housing for a shelf");
    CHECK(inches(op.trench.shallow) == Approx(0.25));
    CHECK(inches(op.trench.deep) == Approx(0.25));
    CHECK(std::abs(op.trench.floor.n.x) < 1e-12);
    CHECK(degrees(built.cut("a shelf", "end in left panel").bevel) == Approx(15));
  }
}

TEST_CASE("a back in sides that lean 8 degrees") {
  const test::Built built = test::build(
      canted("8 deg", "[case.body.back]\nstock = \"thin\"\ninto = \"3/8\"\nclearance = 0\n"));
  REQUIRE(built.stops() == "");
  // Its sides are 8 degrees on the face and square through the thickness.
  for (const char* edge : {"left edge", "right edge"}) {
    CHECK(degrees(built.cut("back", edge).face_angle) == Approx(8));
    CHECK(built.cut("back", edge).bevel == Approx(0).margin(1e-12));
  }
  // The rabbets are square in the leaning panels: as deep as asked, as wide as the back is thick.
  for (const char* panel : {"left panel", "right panel", "top panel", "bottom panel"}) {
    const parts::Operation& rabbet = built.operation(panel, "rabbet for back");
    const parts::Part& part = built.part(panel);
    CHECK(inches(rabbet.trench.shallow) == Approx(0.375));
    CHECK(std::abs(rabbet.trench.floor.n.z) == Approx(1));
    CHECK(std::abs(rabbet.trench.walls[0].n.y) == Approx(1));
    const double from_back = rabbet.trench.walls[0].n.y > 0 ? part.size.y - rabbet.trench.walls[0].d
                                                            : -rabbet.trench.walls[0].d;
    CHECK(inches(from_back) == Approx(0.25));
  }
  // Back width at the foot: inside width there plus what goes into both rabbets, all on the slope.
  const double lean = Angle::degrees(8).rad;
  const double inside = 48 - 2 * (0.75 / std::cos(lean) + 0.75 * std::tan(lean));
  const double into = 2 * (0.375 / std::cos(lean) + 0.375 * std::tan(lean));
  CHECK(inches(built.row("back").finished.y) == Approx(inside + into));
  // The level panels keep their own bevels: half of 82 and of 98 degrees.
  CHECK(90 - degrees(built.cut("bottom panel", "mitre to left panel").bevel) == Approx(41));
  CHECK(degrees(built.cut("top panel", "mitre to left panel").bevel) == Approx(41));
}

TEST_CASE("a face frame on a trapezoid: 37.5 and 52.5 where widths are equal") {
  const test::Built built =
      test::build(canted("15 deg", "[case.body.frame]\nstock = \"oak\"\nwidth = 2\n"));
  REQUIRE(built.stops() == "");
  // Common practice, no source: half the corner, off square.
  CHECK(degrees(built.cut("frame left", "mitre to frame top").face_angle) == Approx(37.5));
  CHECK(degrees(built.cut("frame top", "mitre to frame left").face_angle) == Approx(37.5));
  CHECK(degrees(built.cut("frame left", "mitre to frame bottom").face_angle) == Approx(52.5));
  CHECK(degrees(built.cut("frame bottom", "mitre to frame left").face_angle) == Approx(52.5));
}

// https://www.beehappygraphics.com/blog/2019/using-multiple-moulding-widths-in-one-frame : members
// of unequal width at a right corner; the narrow one is cut past 45 degrees.
TEST_CASE("frame members of unequal width: each end its own angle") {
  struct Published {
    const char* narrow;
    const char* wide;
    double narrow_angle, wide_angle;
  };
  const auto row =
      GENERATE(Published{"1 1/4", "2", 57.99, 32.01}, Published{"1 1/4", "3", 67.38, 22.62},
               Published{"2", "3", 56.31, 33.69});
  const test::Built built = test::build(
      test::job() + test::sheet("panel", "3/4") + test::board("oak", "3/4") +
      "[case.body]\noutline = { bottom = 24, height = 30 }\ndepth = 10\nstock = \"panel\"\n"
      "[case.body.frame]\nstock = \"oak\"\nwidth = \"" +
      row.narrow + "\"\n[case.body.frame.member.bottom]\nwidth = \"" + row.wide + "\"\n");
  REQUIRE(built.stops() == "");
  CHECK(degrees(built.cut("frame left", "mitre to frame bottom").face_angle) ==
        Approx(row.narrow_angle).margin(0.005));
  CHECK(degrees(built.cut("frame bottom", "mitre to frame left").face_angle) ==
        Approx(row.wide_angle).margin(0.005));
}
