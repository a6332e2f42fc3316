// Tops: outlines, overhangs, bevels, curves, breadboard ends, fasteners.
#include <cmath>
#include <numbers>
#include <random>

#include "support/piece.h"

using namespace splay;

namespace {

const std::string top_stocks = test::board("oak", "24 mm") + test::sheet("ply", "18 mm");

std::string topped(const std::string& rest, const std::string& before = "") {
  return test::job("mm") + top_stocks + before + "[top.t]\nstock = \"oak\"\n" + rest;
}

const char* rail =
    "[board.rail]\nat = [100, 100, 600]\nstock = \"oak\"\nlength = 600\nwidth = 80\nroll = \"90 "
    "deg\"\n";

int fittings(const test::Built& built, const std::string& kind) {
  int count = 0;
  for (const parts::Fitting& each : built.plan.assembly.fittings) count += each.kind == kind;
  return count;
}

}  // namespace

TEST_CASE("a round top is a true circle within a hundredth of a millimetre") {
  const test::Built built = test::build(topped("diameter = 600\noverhang = { all = 25 }\n"));
  REQUIRE(built.stops() == "");
  const parts::Part& top = built.part("top");
  CHECK(top.size.x == Approx(650));
  CHECK(top.size.y == Approx(650));
  const double circle = std::numbers::pi * 325 * 325 * 24;
  CHECK(top.body.volume() < circle);
  // Chords that far off a circle of radius r leave out 4/3 of that over r (plane geometry).
  CHECK(top.body.volume() > circle * (1 - 4 * 0.01 / (3 * 325)));
  for (const Vec3& v : top.body.vertices())
    CHECK(std::hypot(v.x - 325, v.y - 325) == Approx(325).margin(0.01));
  // Nothing of the facets is drawn but the two circles.
  int sharp = 0;
  for (const Edge& edge : top.body.boundary().edges)
    sharp += !edge.smooth && std::abs(edge.a.z - edge.b.z) > 1;
  CHECK(sharp == 0);
}

TEST_CASE("a round top with a bevel under it is a cylinder on a cone") {
  const test::Built built =
      test::build(topped("diameter = 400\nbevel = { angle = \"60 deg\", height = 12 }\n"));
  REQUIRE(built.stops() == "");
  const double r = 200, h = 12, s = r - h * std::tan(std::numbers::pi / 3);
  const double exact = std::numbers::pi * (r * r * 12 + h / 3 * (r * r + r * s + s * s));
  CHECK(built.part("top").body.volume() == Approx(exact).epsilon(2e-4));
}

TEST_CASE("overhangs are stated side by side") {
  const test::Built built = test::build(topped(
      "outline = { front = 800, deep = 300 }\noverhang = { all = 20, front = 35, back = 0 }\nat = "
      "[100, 50, 700]\n"));
  REQUIRE(built.stops() == "");
  const Box box = built.part("top").world.bounds();
  CHECK(box.low.x == Approx(80));
  CHECK(box.high.x == Approx(920));
  CHECK(box.low.y == Approx(15));
  CHECK(box.high.y == Approx(350));
  CHECK(box.low.z == Approx(700));
}

TEST_CASE("rounded corners take off what a square less a quarter circle is") {
  const test::Built built =
      test::build(topped("outline = { front = 800, deep = 400 }\ncorner_radius = 50\n"));
  REQUIRE(built.stops() == "");
  const double exact = 24 * (800 * 400 - (4 - std::numbers::pi) * 50 * 50);
  CHECK(built.part("top").body.volume() == Approx(exact).epsilon(1e-5));
  CHECK(built.part("top").size.x == Approx(800));
  CHECK(test::build(topped("outline = { front = 800, deep = 90 }\ncorner_radius = 50\n"))
            .found("radius-too-large"));
}

TEST_CASE("an octagon with bevelled sides") {
  const test::Built built = test::build(
      topped("outline = { sides = 8, across_flats = 500 }\nbevel = { angle = \"30 deg\", height = "
             "10, at = \"top\", sides = [\"side 1\"] }\n"));
  REQUIRE(built.stops() == "");
  const fabrication::CutReport& cut = built.cut("top", "bevel of the side 1 side");
  CHECK(test::degrees(cut.bevel) == Approx(30));
  // A triangle 10 high and 10 tan 30 wide along the side, shorter as it goes in by the neighbours.
  const double side = 500 * std::tan(std::numbers::pi / 8);
  const double wide = 10 * std::tan(std::numbers::pi / 6);
  const double wedge = 10 * wide / 2 * side + 10 * wide * wide / 3;
  const double whole = 24 * 2 * 500 * 500 * std::tan(std::numbers::pi / 8);
  CHECK(built.part("top").body.volume() == Approx(whole - wedge).epsilon(1e-6));
}

TEST_CASE("breadboard ends: a tongue, a fixed pin, slots as long as the movement") {
  const std::string stop = GENERATE("", ", stopped = 20");
  const test::Built built = test::build(
      topped("outline = { front = 1200, deep = 480 }\ncorner_radius = 15\nbreadboard = { width = "
             "80, movement = 6, pin = 8" +
             stop + " }\n"));
  REQUIRE(built.stops() == "");
  // Shoulder to shoulder and a tongue of 1 in at both ends.
  CHECK(built.part("top").size.x == Approx(1200 - 160 + 2 * 25.4));
  CHECK(built.part("left end board").size.x == Approx(480));
  CHECK(built.part("left end board").size.y == Approx(80));
  CHECK(fittings(built, "dowel") == 6);
  int slots = 0;
  for (const parts::Operation& each : built.part("top").operations)
    slots += each.name == "slot for a sliding pin";
  CHECK(slots == 4);
  for (const fabrication::JointReport& each : built.plan.joints) CHECK(each.gap < 1e-6);
  // The boards end where the outline does: together they measure as the top was stated.
  CHECK(built.part("left end board").world.bounds().low.x == Approx(0).margin(1e-9));
  CHECK(built.part("right end board").world.bounds().high.x == Approx(1200));
}

TEST_CASE("breadboard ends that can't be are refused") {
  const auto refused = [](const std::string& outline, const std::string& board) {
    return test::build(topped("outline = " + outline + "\nbreadboard = { " + board + " }\n"))
        .found("no-breadboard");
  };
  const std::string plain = "{ front = 1200, deep = 480 }";
  CHECK_FALSE(refused(plain, "width = 80"));
  CHECK(refused("{ front = 1200, back = 1000, deep = 480 }", "width = 80"));
  CHECK(refused(plain, "width = 28"));
  CHECK(refused(plain, "width = 80, tongue_thickness = 23"));
  CHECK(refused(plain, "width = 80, pin = 20"));
  CHECK(refused(plain, "width = 80, stopped = 3, movement = 8"));
  CHECK(refused("{ front = 200, deep = 480 }", "width = 80"));
}

TEST_CASE("fasteners on a rail") {
  const std::string type = GENERATE("figure-8", "clip", "slotted block");
  const test::Built built = test::build(
      topped("outline = { front = 800, deep = 400 }\nat = [0, 0, 680]\n[top.t.fastener.a]\ntype = "
             "\"" +
                 type + "\"\nto = \"rail\"\nface = \"front\"\ncount = 3\n",
             rail));
  REQUIRE(built.stops() == "");
  CHECK(built.plan.assembly.fittings.size() == 3);
  int cuts = 0;
  for (const parts::Operation& each : built.part("rail").operations)
    cuts += each.kind == parts::OperationKind::hole || each.kind == parts::OperationKind::mortise;
  CHECK(cuts == 3);
  const double whole = 600 * 80 * 24;
  const double gone = whole - built.part("rail").body.volume();
  if (type == "clip") CHECK(gone == Approx(3 * 19 * 3.2 * 9.5));
  if (type == "slotted block") CHECK(gone == Approx(3 * 38 * 12.7 * 9.5));
  if (type == "figure-8") {  // less than the whole disc, more than half of it
    CHECK(gone > 3 * 3.2 * std::numbers::pi * 7.95 * 7.95 / 2);
    CHECK(gone < 3 * 3.2 * std::numbers::pi * 7.95 * 7.95);
  }
}

TEST_CASE("a top that does not lie on its rail, or fasteners without room") {
  const std::string plain = "outline = { front = 800, deep = 400 }\n";
  const std::string held = "[top.t.fastener.a]\nto = \"rail\"\nface = \"front\"\n";
  CHECK(test::build(topped(plain + "at = [0, 0, 690]\n" + held, rail)).found("no-fastener"));
  CHECK(test::build(topped(plain + "at = [0, 0, 680]\n" + held + "count = 20\n", rail))
            .found("no-fastener"));
  CHECK(test::build(topped(plain + "at = [0, 0, 680]\n[top.t.fastener.a]\nto = \"reil\"\n", rail))
            .found("unknown-part"));
  CHECK(test::build(topped("outline = { corners = [[0, 0], [400, 0], [400, 400], [200, 100]] }\n"))
            .found("inside-corner"));
}

TEST_CASE("invented tops build soundly or say why not") {
  std::mt19937 random(20260312);
  const auto pick = [&](int from, int to) {
    return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
  };
  int sound = 0;
  for (int i = 0; i < 40; ++i) {
    std::string text = "outline = { front = " + std::to_string(pick(300, 1400)) +
                       ", back = " + std::to_string(pick(300, 1400)) +
                       ", deep = " + std::to_string(pick(200, 800)) + " }\n";
    if (i % 2 == 0) text += "corner_radius = " + std::to_string(pick(2, 200)) + "\n";
    if (i % 3 == 0)
      text += "bevel = { angle = \"" + std::to_string(pick(5, 70)) +
              " deg\", height = " + std::to_string(pick(1, 30)) + " }\n";
    if (i % 5 == 0) text += "grain = \"deep\"\n";
    CAPTURE(text);
    const test::Built built = test::build(topped(text));
    for (const Finding& each : built.plan.findings)
      if (each.level == Level::stop) {
        INFO(each.text);
        CHECK((each.code == "radius-too-large" || each.code == "bevel-too-high"));
      }
    sound += built.stops().empty();
  }
  CHECK(sound >= 25);
}
