// Drawers: the box from the opening at the runners' height, packing, fronts that follow the
// opening.
#include <cmath>
#include <random>

#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

namespace {

std::string drawer(const std::string& unit, const std::string& rest) {
  return test::job(unit) + test::board("ash", "12.7 mm") + test::board("pine", "40 mm") +
         test::sheet("thin", "6 mm") + test::sheet("face", "19 mm") +
         "[drawer.d]\nbox = { stock = \"ash\", bottom = \"thin\" }\n" + rest;
}

double width(const test::Built& built) {
  return built.part("right side").world.bounds().high.x -
         built.part("left side").world.bounds().low.x;
}

double height(const test::Built& built) { return built.part("left side").size.y; }

}  // namespace

// https://www.eaglewoodworking.com/dovetail-drawers/measuring-instructions : side runners take 1/2
// in on either side and 1/16 in of play, so that an opening of 20 in has a box of 18 15/16 in.
TEST_CASE("side runners: an opening of 20 in takes a box of 18 15/16") {
  const test::Built built =
      test::build(drawer("in", "opening = { bottom = 20, height = 6 }\ndepth = 20\n"));
  REQUIRE(built.stops() == "");
  CHECK(inches(width(built)) == Approx(18.9375));
  CHECK(inches(built.part("left side").size.x) == Approx(18));  // the longest whole 2 in
  CHECK(built.plan.assembly.fittings.size() == 2);
  CHECK_FALSE(built.found("space-out-of-reach"));
}

// The same page: undermount runners take 13/16 in of the opening's height.
TEST_CASE("undermount runners: 13/16 in of height") {
  const test::Built built =
      test::build(drawer("in",
                         "opening = { bottom = 20, height = 6 }\ndepth = 20\nrunner = { kind = "
                         "\"undermount\" }\n"));
  REQUIRE(built.stops() == "");
  CHECK(inches(height(built)) == Approx(6 - 13.0 / 16));
  // Common practice, no source: the inside is 42 mm narrower than the opening.
  CHECK(width(built) - 2 * 12.7 == Approx(20 * 25.4 - 42));
}

TEST_CASE("wooden runners: a sixteenth on either side") {
  const test::Built built = test::build(drawer(
      "in", "opening = { bottom = 20, height = 6 }\ndepth = 20\nrunner = { kind = \"wooden\" }\n"));
  REQUIRE(built.stops() == "");
  CHECK(inches(width(built)) == Approx(19.875));
}

TEST_CASE("leaning sides: the box is measured where the runners are, on plumb packing") {
  const test::Built built = test::build(
      drawer("mm",
             "opening = { bottom = 500, height = 150, lean_in = [\"10 deg\", 0] }\ndepth = "
             "420\nrunner = { at = 110, height = 40, length = 400 }\npacking = { stock = "
             "\"pine\", least = 4 }\nfront = { stock = \"face\", gap = 2 }\n"));
  REQUIRE(built.stops() == "");
  const double tangent = std::tan(Angle::degrees(10).rad);
  const double at_runner = 500 - 130 * tangent - 4;  // narrowest at the runner's top
  CHECK(width(built) == Approx(at_runner - 2 * 12.7 - 25.4 / 16));
  const parts::Part& pack = built.part("left packing");
  CHECK(pack.size.x == Approx(400));
  CHECK(pack.size.y == Approx(40));
  CHECK(pack.size.z == Approx(4 + 40 * tangent));
  CHECK(pack.body.volume() == Approx(400 * 40 * (4 + 20 * tangent)));
  CHECK(degrees(built.cut("left packing", "bevel to the left side").bevel) == Approx(10));
  CHECK(built.found("space-out-of-reach"));
  for (const parts::Part& part : built.plan.assembly.parts) CHECK(part.name != "right packing");
  // The front follows the opening.
  CHECK(degrees(built.cut("front", "left end").face_angle) == Approx(10));
}

TEST_CASE("a box that a leaning side would hit is refused, with what would do") {
  const auto leaning = [](const std::string& runner) {
    return test::build(drawer("mm",
                              "opening = { bottom = 500, height = 200, lean_in = [\"15 "
                              "deg\"] }\ndepth = 420\npacking = { stock = \"pine\" }\n" +
                                  runner));
  };
  CHECK(leaning("runner = { at = 40 }\n").found("box-hits-side"));
  CHECK(leaning("runner = { at = 170 }\n").stops() == "");
}

TEST_CASE("corners and fronts: every joint closes") {
  const std::string corners =
      GENERATE("butt", "rabbet", "tongue", "dowel", "box joint", "dovetail");
  const std::string front =
      GENERATE("", "front = { stock = \"face\", gap = 2 }\n",
               "front = { stock = \"face\", fit = \"over\", overlap = 10 }\n");
  CAPTURE(corners, front);
  std::string text =
      drawer("mm", "opening = { bottom = 500, height = 150 }\ndepth = 420\n" + front);
  text.replace(text.find("bottom = \"thin\""), 0, "corners = \"" + corners + "\", ");
  const test::Built built = test::build(text);
  REQUIRE(built.stops() == "");
  for (const fabrication::JointReport& each : built.plan.joints) CHECK(each.gap < 1e-6);
  const double into = 6.35 - 25.4 / 32;
  CHECK(built.part("bottom").size.x == Approx(width(built) - 2 * 12.7 + 2 * into));
  if (front.find("over") != std::string::npos) {
    CHECK(built.part("front").size.x == Approx(520));
    CHECK(built.part("left side").world.bounds().low.y == Approx(0).margin(1e-9));
  }
}

// Plain arithmetic: what a corner takes off the sides and off the front, whatever the joint's own
// planes are.
TEST_CASE("the wood that every kind of corner leaves") {
  constexpr double t = 12.7, high = 150 - 12.7;  // box: 1/4 in below and above
  const auto volumes = [&](const std::string& corners) {
    std::string text = drawer("mm", "opening = { bottom = 500, height = 150 }\ndepth = 420\n");
    text.replace(text.find("bottom = \"thin\""), 0,
                 "bottom_up = 60, into = 4, clearance = 0.5, " + corners + ", ");
    const test::Built built = test::build(text);
    REQUIRE(built.stops() == "");
    for (const fabrication::JointReport& each : built.plan.joints) CHECK(each.gap < 1e-6);
    struct {
      double length, width, side, front, back, front_length;
    } found{built.part("left side").size.x,        width(built),
            built.part("left side").body.volume(), built.part("box front").body.volume(),
            built.part("box back").body.volume(),  built.part("box front").size.x};
    return found;
  };
  const auto groove = [&](double length) { return length * 4 * 6; };
  const auto butt = volumes("corners = \"butt\"");
  const double length = butt.length, inside = butt.width - 2 * t;
  CHECK(butt.side == Approx(length * high * t - groove(length - 2 * t + 8)));
  CHECK(butt.front == Approx(inside * high * t - groove(inside)));
  // A tongue half as thick as the front, half a side's thickness long, in a groove of its size.
  const auto tongue = volumes("corners = \"tongue\"");
  CHECK(tongue.front_length == Approx(inside + t));
  const double both = 4 * 4 * 6;  // of the bottom's groove and the tongue's, where they cross
  CHECK(tongue.side == Approx(butt.side - 2 * (high * t * t / 4 - both)));
  CHECK(tongue.front == Approx(butt.front + high * t * t / 2 - groove(t)));
  // Fingers: an odd number as wide as the sides are thick or nearly; the front has one more.
  const auto fingers = volumes("corners = \"box joint\"");
  CHECK(fingers.front_length == Approx(inside + 2 * t));
  const double n = 11;  // of 12.48 mm
  const double corner = high * t * t;
  const double with_groove = inside * high * t - groove(inside + 8);
  CHECK(fingers.front == Approx(with_groove + 2 * corner * (n + 1) / (2 * n)).epsilon(1e-3));
  // Tails that come through or stop 4 mm short: four of them, twice as wide as the pins.
  const auto tails = volumes("corners = \"dovetail\"");
  const auto lapped = volumes("corners = \"dovetail\", lap = 4");
  const double share = 4 * 2 / 13.0;
  CHECK(tails.front == Approx(with_groove + 2 * corner * (1 - share)).epsilon(1e-3));
  CHECK(lapped.front == Approx(with_groove + 2 * corner * (1 - share * (t - 4) / t)).epsilon(1e-3));
  CHECK(lapped.back == Approx(tails.back));
}

TEST_CASE("packing is screwed to the parts beside the opening") {
  const std::string sides =
      "[case.body]\noutline = { bottom = 500, height = 200, lean_in = [\"5 deg\"], measured = "
      "\"inside\" }\ndepth = 440\nstock = \"face\"\n";
  std::string text =
      drawer("mm",
             "opening = { bottom = 500, height = 200, lean_in = [\"5 deg\"] }\nat = [CORNER, 0, "
             "19]\ndepth = 420\nrunner = { at = 150 }\npacking = { stock = \"pine\", least = 3 "
             "}\nbeside = [\"body left panel\", \"body right panel\"]\n");
  // The inside's corner stands in by the level thickness of a side and its lean over the bottom.
  const double corner = 19 / std::cos(Angle::degrees(5).rad) + 19 * std::tan(Angle::degrees(5).rad);
  text.replace(text.find("CORNER"), 6, "\"" + plain_number(corner, 9) + " mm\"");
  text.insert(text.find("[drawer.d]"), sides);
  const test::Built built = test::build(text);
  CHECK(built.stops() == "");
  int screwed = 0;
  for (const parts::Joint& joint : built.plan.assembly.joints) screwed += joint.kind == "screwed";
  CHECK(screwed == 2);
}

// The front follows the opening: with vectors, its ends lie a gap inside the leaning sides, or an
// overlap outside them, and its face is flush with the front or a thickness before it.
TEST_CASE("fronts of leaning openings, flush and over") {
  const double lean = Angle::degrees(8).rad, t = std::tan(lean), c = std::cos(lean);
  const bool over = GENERATE(false, true);
  const test::Built built = test::build(drawer(
      "mm", std::string("opening = { bottom = 500, height = 160, lean_in = [\"8 deg\"] }\ndepth = "
                        "420\nrunner = { at = 130, height = 40 }\npacking = { stock = \"pine\", "
                        "least = 3 }\nfront = { stock = \"face\", ") +
                (over ? "fit = \"over\", overlap = 12 }\n" : "gap = 2 }\n")));
  REQUIRE(built.stops() == "");
  const parts::Part& front = built.part("front");
  const double grow = over ? 12 : -2, foot = -grow, head = 160 + grow;
  // Each leaning edge moved square to itself.
  const double at_foot = 500 - 2 * t * foot + 2 * grow / c,
               at_head = 500 - 2 * t * head + 2 * grow / c;
  CHECK(front.size.x == Approx(at_foot));
  CHECK(front.size.y == Approx(160 + 2 * grow));
  CHECK(front.body.volume() == Approx((at_foot + at_head) / 2 * (head - foot) * 19));
  CHECK(front.world.bounds().low.y == Approx(over ? -19 : 0).margin(1e-9));
}

TEST_CASE("the space beside a box in a leaning opening is stated") {
  const test::Built built = test::build(
      drawer("mm",
             "opening = { bottom = 500, height = 160, lean_in = [\"-8 deg\"] }\ndepth = "
             "420\nrunner = { at = 30, height = 40 }\npacking = { stock = \"pine\", least = 3 "
             "}\n"));
  REQUIRE(built.stops() == "");
  const Box left = built.part("left side").world.bounds(),
            right = built.part("right side").world.bounds();
  // Sides that lean out: most is lost at the box's upper edge.
  const double t = std::tan(Angle::degrees(8).rad), shift = 160 * t;
  const double lost = left.low.x - (shift - t * left.high.z);
  const double share =
      100 * (right.high.x - left.low.x) * (left.high.z - left.low.z) / (160 * (500 + 160 * t));
  for (const Finding& each : built.plan.findings) {
    if (each.code != "space-out-of-reach") continue;
    CHECK(each.text.find(plain_number(share, 0) + " %") != std::string::npos);
    CHECK(each.text.find("up to " + plain_number(lost, 1) + " mm") != std::string::npos);
  }
  CHECK(built.found("space-out-of-reach"));
}

TEST_CASE("a drawer in the opening of a case: its runners hold on to the case") {
  const std::string body =
      "[case.body]\noutline = { bottom = 500, height = 500, lean_in = [\"5 deg\", 0], measured = "
      "\"inside\" }\ndepth = 440\nstock = \"face\"\n[case.body.shelf.s]\ntop_at = 269\n";
  std::string text = drawer("mm",
                            "of = \"body\"\nwithin = [250, 150]\ndepth = 420\nrunner = { at = 200 "
                            "}\npacking = { stock = \"pine\", least = 3 }\nfront = { stock = "
                            "\"face\", gap = 2 }\n");
  text.insert(text.find("[drawer.d]"), body);
  const test::Built built = test::build(text);
  REQUIRE(built.stops() == "");
  const Box shelf = built.part("body s shelf").world.bounds();
  const Box front = built.part("d front").world.bounds();
  CHECK(front.high.z == Approx(shelf.low.z - 2));
  for (const parts::Fitting& each : built.plan.assembly.fittings) CHECK(each.parts.size() == 2);
  const auto built_behind =
      test::build(text.substr(0, text.find("[drawer.d]")) +
                  "[case.other]\noutline = { bottom = 90, height = 90 }\ndepth "
                  "= 90\nstock = \"face\"\n[drawer.e]\nof = "
                  "\"body\"\nwithin = [5000, 0]\ndepth = 300\nbox = { stock = "
                  "\"ash\", bottom = \"thin\" }\n");
  CHECK(built_behind.found("no-opening"));
}

TEST_CASE("drawers that can't be are refused") {
  const std::string plain = "opening = { bottom = 500, height = 150 }\n";
  CHECK(test::build(drawer("mm", plain + "depth = 420\nrunner = { length = 450 }\n"))
            .found("box-too-long"));
  CHECK(test::build(drawer("mm",
                           "opening = { bottom = 500, height = 40 }\ndepth = 420\nrunner = { "
                           "height = 20 }\n"))
            .found("box-too-high"));
  CHECK(test::build(drawer("mm", plain + "depth = 420\nrunner = { at = 10 }\n"))
            .found("runner-outside"));
  CHECK(test::build(drawer("mm", "opening = { bottom = 70, height = 150 }\ndepth = 420\n"))
            .found("box-too-narrow"));
  CHECK(test::build(drawer("mm",
                           "opening = { bottom = 500, height = 150, lean_in = [\"4 deg\"] "
                           "}\ndepth = 420\n"))
            .found("no-packing"));
  CHECK(test::build(drawer("mm", "opening = { sides = 6, side = 300 }\ndepth = 420\n"))
            .found("opening-shape"));
}

TEST_CASE("invented drawers build soundly or say why not") {
  std::mt19937 random(20260313);
  const auto pick = [&](int from, int to) {
    return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
  };
  const char* kinds[] = {"side", "undermount", "wooden"};
  int sound = 0;
  for (int i = 0; i < 60; ++i) {
    const std::string text = drawer(
        "mm", "opening = { bottom = " + std::to_string(pick(200, 900)) +
                  ", height = " + std::to_string(pick(60, 300)) + ", lean_in = [\"" +
                  std::to_string(pick(-12, 12)) + " deg\", \"" + std::to_string(pick(-12, 12)) +
                  " deg\"] }\ndepth = " + std::to_string(pick(150, 700)) +
                  "\npacking = { stock = \"pine\", least = 3 }\nrunner = { kind = \"" +
                  kinds[i % 3] + "\"" +
                  (i % 2 != 0 ? ", at = " + std::to_string(pick(30, 200)) : std::string()) +
                  " }\nfront = { stock = \"face\" }\n");
    CAPTURE(text);
    const test::Built built = test::build(text);
    for (const Finding& each : built.plan.findings)
      if (each.level == Level::stop) {
        INFO(each.text);
        CHECK((each.code == "box-hits-side" || each.code == "box-too-high" ||
               each.code == "runner-outside"));
      }
    sound += built.stops().empty();
  }
  CHECK(sound >= 15);
}
