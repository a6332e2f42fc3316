// Single members between two points: leans, tapers, end cuts.
#include <cmath>

#include "constructs/orientation.h"
#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

namespace {

const std::string stick_stocks = test::board("oak", "1 3/4 in") + test::board("thin", "3/4 in");

test::Built sticks(const std::string& text, const std::string& unit = "in") {
  return test::build(test::job(unit) + stick_stocks + text);
}

std::string leg(const std::string& more) {
  return "[stick.leg]\nfrom = [0, 0, 0]\nto = [0, 0, 24]\nstock = \"oak\"\nwidth = \"1\"\n" + more;
}

}  // namespace

// https://www.lumberjocks.com/HappyHowie/blog/86402 : a foot that stands out 1 1/4 in over 17 1/2
// in leans 4.09 degrees when the 17 1/2 in is plumb, 4.10 when it is measured along the leg.
TEST_CASE("the lean of a leg from its foot") {
  const std::string rest = ", 0, 0]\nstock = \"oak\"\nwidth = \"1\"\n";
  const test::Built plumb =
      sticks("[stick.leg]\nto = [0, 0, \"17 1/2\"]\nfrom = [\"1 1/4\"" + rest);
  REQUIRE(plumb.stops() == "");
  CHECK(plumb.angle("lean of leg, from the front") == Approx(4.09).margin(0.005));
  const test::Built along = sticks(
      "[stick.leg]\nto = [0, 0, \"17.5 in * cos(asin(1.25 / 17.5))\"]\nfrom = [\"1 1/4\"" + rest);
  REQUIRE(along.stops() == "");
  CHECK(inches(along.part("leg").size.x) == Approx(17.5));
  CHECK(along.angle("lean of leg, from the front") == Approx(4.10).margin(0.005));
}

// https://www.familyhandyman.com/project/leaning-tower-of-shelves1/ : 84 in at 10 degrees stands
// 82.72 in high.
TEST_CASE("a leaning upright, both ends level") {
  const test::Built built = sticks(
      "[stick.upright]\nfrom = [0, 0, 0]\nto = [0, \"84 in * sin(10)\", \"84 in * cos(10)\"]\n"
      "stock = \"thin\"\nwidth = 3\nfrom_end = { cut = \"level\" }\nto_end = { cut = \"level\" "
      "}\n");
  REQUIRE(built.stops() == "");
  const Box box = built.part("upright").world.bounds();
  CHECK(inches(box.high.z - box.low.z) == Approx(82.72).margin(0.005));
  CHECK(degrees(built.cut("upright", "foot").bevel) == Approx(10));
  CHECK(built.cut("upright", "foot").face_angle == Approx(0).margin(1e-12));
  CHECK(test::remarks(built.part("upright"), "Line of the foot: square on the face, 10.00° off"));
}

// Plane trigonometry: 1.75 to 1.00 over 24 is 1.790 degrees on one side, 0.895 on each of two.
TEST_CASE("tapers on one side and on both") {
  SECTION("one edge") {
    const test::Built built =
        sticks(leg("to_width = \"1 3/4\"\nthickness = 1\ntaper_on = [\"right edge\"]\n"));
    REQUIRE(built.stops() == "");
    CHECK(built.angle("taper of leg, right edge") == Approx(1.790).margin(0.0005));
    CHECK(degrees(built.cut("leg", "taper, right edge").face_angle) ==
          Approx(1.790).margin(0.0005));
    // The blank's edge and the line stay parallel; the foot is 1 in wide at the left edge.
    CHECK(inches(built.part("leg").size.y) == Approx(1.75));
    const std::array<double, 2> x = built.part("leg").world.extent({1, 0, 0});
    CHECK(inches(x[0]) == Approx(-0.875));
    CHECK(inches(x[1]) == Approx(0.875));
  }
  SECTION("both edges") {
    const test::Built built = sticks(leg("to_width = \"1 3/4\"\nthickness = 1\n"));
    REQUIRE(built.stops() == "");
    for (const char* side : {"left edge", "right edge"})
      CHECK(built.angle(std::string("taper of leg, ") + side) == Approx(0.895).margin(0.0005));
    CHECK(built.part("leg").body.volume() ==
          Approx(24 * 1.375 * 1 * std::pow(Length::mm_per_inch, 3)));
  }
  SECTION("all four sides, straight at the top") {
    const test::Built built = sticks(
        leg("to_width = \"1 3/4\"\nthickness = 1\nto_thickness = \"1 3/4\"\nstraight = 4\n"));
    REQUIRE(built.stops() == "");
    CHECK(built.angle("taper of leg, face") == Approx(degrees(std::atan(0.375 / 20))).margin(1e-9));
    // A frustum of a pyramid under a straight block.
    const double frustum = 20.0 / 3 * (1.0 + 1.75 * 1.75 + 1.75);
    CHECK(built.part("leg").body.volume() ==
          Approx((frustum + 4 * 1.75 * 1.75) * std::pow(Length::mm_per_inch, 3)));
  }
}

// http://www.woodweb.com/knowledge_base/Figuring_Complex_Leg_Angles_for_Furniture.html : a plumb
// post turned 10 degrees in plan under a top that slopes 25 degrees: the lines on its two faces are
// 24.67 and 4.63 degrees off square.
TEST_CASE("a turned post under a sloping top") {
  const test::Built built =
      sticks(leg("thickness = 1\nroll = \"10 deg\"\n"
                 "to_end = { cut = \"slope\", slope = \"25 deg\", downhill = 0 }\n"));
  REQUIRE(built.stops() == "");
  CHECK(degrees(built.cut("leg", "head").face_angle) == Approx(24.67).margin(0.005));
  const Plane cut = built.operation("leg", "head").cut;
  CHECK(degrees(std::atan(std::abs(cut.n.z / cut.n.x))) == Approx(4.63).margin(0.005));
  CHECK(test::remarks(built.part("leg"),
                      "24.67° off square on the face, 4.63° off square on the edge"));
}

TEST_CASE("plumb ends and ends set by saw angles") {
  const test::Built built = sticks(
      "[stick.rail]\nfrom = [0, 0, 0]\nto = [30, 0, 10]\nstock = \"thin\"\nwidth = 2\n"
      "from_end = { cut = \"plumb\" }\n"
      "to_end = { cut = \"angles\", face_angle = \"30 deg\", bevel = \"20 deg\" }\n");
  REQUIRE(built.stops() == "");
  CHECK(degrees(built.cut("rail", "left end").face_angle) == Approx(degrees(std::atan(1.0 / 3))));
  CHECK(built.part("rail").world.extent({1, 0, 0})[0] == Approx(0).margin(1e-9));
  CHECK(degrees(built.cut("rail", "right end").face_angle) == Approx(30));
  CHECK(degrees(built.cut("rail", "right end").bevel) == Approx(20));
}

TEST_CASE("an end against another part's face, short of it or past it") {
  const std::string post =
      "[stick.post]\nfrom = [0, 0, 0]\nto = [0, 0, 30]\nstock = \"oak\"\n"
      "width = \"1 3/4\"\n";
  for (const char* stop : {"-4", "0", "3"}) {
    INFO(stop);
    const test::Built built =
        sticks(post + "[stick.strut]\nfrom = [-12, 0, 8]\nto = [\"" + stop + " + 0\", 0, \"20 + " +
               stop + "\"]\nstock = \"thin\"\nwidth = 1\nto_end = { against = \"post\" }\n");
    REQUIRE(built.stops() == "");
    REQUIRE(built.plan.joints.size() == 1);
    CHECK(built.plan.joints[0].gap < 1e-6);
    CHECK(inches(built.part("strut").world.extent({1, 0, 0})[1]) == Approx(-0.875));
    CHECK(degrees(built.cut("strut", "end against post").face_angle) == Approx(45));
  }
}

TEST_CASE("the show face looks where it is told to, square to the length") {
  struct Case {
    const char* facing;
    Vec3 along, face;
  };
  const auto at =
      GENERATE(Case{"front", {12, 0, 0}, {0, -1, 0}}, Case{"back", {12, 0, 0}, {0, 1, 0}},
               Case{"left", {0, 12, 0}, {-1, 0, 0}}, Case{"right", {0, 0, 12}, {1, 0, 0}},
               Case{"top", {12, 0, 0}, {0, 0, 1}}, Case{"underside", {0, 12, 0}, {0, 0, -1}},
               // By itself to the front, or up when it runs to the back.
               Case{"by itself", {12, 0, 0}, {0, -1, 0}}, Case{"by itself", {0, 12, 0}, {0, 0, 1}});
  INFO(at.facing);
  const auto inch = [](double v) { return std::to_string(static_cast<int>(v)); };
  const test::Built built = sticks(
      "[stick.s]\nfrom = [0, 0, 0]\nto = [" + inch(at.along.x) + ", " + inch(at.along.y) + ", " +
      inch(at.along.z) + "]\nstock = \"oak\"\nwidth = 1\nfacing = \"" + at.facing + "\"\n");
  const Rigid& place = built.part("s").place;
  CHECK(norm(place.ez - at.face) < 1e-9);
  CHECK(norm(place.ex - unit(at.along)) < 1e-9);
}

TEST_CASE("what a stick can't be") {
  CHECK(sticks(leg("facing = \"top\"\n")).found("facing-along"));
  CHECK(sticks(leg("to_end = { cut = \"plumb\" }\n")).found("no-cut"));
  const test::Built lost = sticks(leg("to_end = { against = \"psot\" }\n") +
                                  "[stick.post]\nfrom = [9, 0, 0]\nto = [9, 0, 9]\nstock = "
                                  "\"oak\"\nwidth = 1\n");
  CHECK(lost.found("unknown-part"));
  CHECK(sticks(leg("thickness = 2\n")).found("thickness"));
  CHECK(sticks("[stick.post]\nfrom = [0, 0, 0]\nto = [0, 0, 30]\nstock = \"oak\"\nwidth = 1\n"
               "[stick.strut]\nfrom = [12, 0, 8]\nto = [20, 0, 8]\nstock = \"thin\"\nwidth = 1\n"
               "to_end = { against = \"post\" }\n")
            .found("no-joint"));
  const auto faults = [](const std::string& text) {
    return reading::read_project(test::job() + stick_stocks + text, "test.toml",
                                 constructs::registry())
        .diagnostics;
  };
  CHECK(faults(leg("taper_on = [\"left egde\"]\n")).at(0).hint == "did you mean \"left edge\"?");
  CHECK(faults(leg("taper_on = [\"face\"]\n")).at(0).code == "missing-field");
  CHECK(
      faults("[stick.a]\nfrom = [0, 0]\nto = [0, 0, 9]\nstock = \"oak\"\nwidth = 1\n").at(0).code ==
      "wrong-count");
  CHECK(faults(leg("to_end = { cut = \"level\", slope = \"3 deg\" }\n")).at(0).code ==
        "not-together");
}

TEST_CASE("the same stick in millimetres and in inches") {
  const test::Built metric = sticks(
      "[stick.leg]\nfrom = [0, 0, 0]\nto = [50.8, 25.4, 609.6]\nstock = \"oak\"\nwidth = 25.4\n"
      "to_width = 38.1\nfrom_end = { cut = \"level\" }\n",
      "mm");
  const test::Built imperial = sticks(
      "[stick.leg]\nfrom = [0, 0, 0]\nto = [2, 1, 24]\nstock = \"oak\"\nwidth = 1\n"
      "to_width = \"1 1/2\"\nfrom_end = { cut = \"level\" }\n");
  REQUIRE(metric.stops() == "");
  CHECK(difference_volume(metric.part("leg").world, imperial.part("leg").world) < 1e-3);
}
