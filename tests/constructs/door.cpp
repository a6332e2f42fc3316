// Doors: sizes from the opening, hinges in one plumb line, and whether they open, with plain
// vectors as second witness of every collision.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

namespace {

constexpr double pi = std::numbers::pi;

std::string door_stocks(const std::string& unit) {
  return test::job(unit) + test::sheet("ply", "18 mm") + test::sheet("thin", "6 mm") +
         test::board("oak", "20 mm");
}

// A case 18 mm thick whose inside is as stated, and a door in it.
std::string in_case(const std::string& outline, const std::string& door) {
  return door_stocks("mm") + "[case.body]\noutline = { measured = \"inside\", " + outline +
         " }\ndepth = 300\nstock = \"ply\"\n[door.d]\nof = \"body\"\n" + door;
}

// What a finding says in degrees; -1 without one.
double angle_said(const test::Built& built, const std::string& code) {
  for (const Finding& each : built.plan.findings) {
    if (each.code != code) continue;
    const std::size_t at = each.text.find(" at ");
    return std::stod(each.text.substr(at + 4));
  }
  return -1;
}

const Finding& finding(const test::Built& built, const std::string& code) {
  for (const Finding& each : built.plan.findings)
    if (each.code == code) return each;
  FAIL("no finding " << code);
  return built.plan.findings.front();
}

bool remarked(const parts::Part& part, const std::string& words) {
  return std::any_of(part.remarks.begin(), part.remarks.end(), [&](const std::string& remark) {
    return remark.find(words) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("an inset door is the opening less its gaps") {
  const test::Built built = test::build(
      door_stocks("in") +
      "[door.d]\nopening = { bottom = 20, height = 30 }\nslab = { stock = \"ply\" }\ngap = { "
      "bottom = \"1/8\" }\n");
  REQUIRE(built.stops() == "");
  const parts::Part& door = built.part("door");
  // A sixteenth at each edge is common practice, no source.
  CHECK(inches(door.size.x) == Approx(30 - 1.0 / 8 - 1.0 / 16));
  CHECK(inches(door.size.y) == Approx(20 - 2.0 / 16));
  CHECK(inches(door.world.bounds().low.z) == Approx(1.0 / 8));
  CHECK(door.world.bounds().low.y == Approx(0).margin(1e-9));
  CHECK(built.plan.assembly.fittings.size() == 2);
}

TEST_CASE("the opening of a case is found between its parts") {
  const std::string body =
      "bottom = 800, height = 700, lean_in = [\"8 deg\", \"3 deg\"] }\ndepth = 300\nstock = "
      "\"ply\"\n[case.body.shelf.s]\ntop_at = 300\n[case.body.partition.p]\nright_at = "
      "400\nbetween = [\"bottom\", \"s\"]\n";
  const auto door = [&](const std::string& point) {
    return test::build(door_stocks("mm") + "[case.body]\noutline = { measured = \"inside\", " +
                       body +
                       "[door.d]\nof = \"body\"\nslab = { stock = \"ply\" }\nhung = \"right\"\n"
                       "gap = { all = 3 }\n" +
                       "hinges = { kind = \"pivot\" }\n" + point);
  };
  const test::Built upper = door("within = [400, 500]\n");
  REQUIRE(upper.stops() == "");
  const parts::Part& leaf = upper.part("d door");
  const Box box = leaf.world.bounds();
  const double foot = upper.part("body bottom panel").world.bounds().high.z;
  const double shelf = upper.part("body s shelf").world.bounds().high.z;
  CHECK(box.low.z == Approx(shelf + 3));
  CHECK(box.high.z == Approx(foot + 700 - 3));
  CHECK(degrees(upper.cut("d door", "left edge").face_angle) == Approx(8).margin(1e-6));
  CHECK(degrees(upper.cut("d door", "right edge").face_angle) == Approx(3).margin(1e-6));
  const test::Built none = door("within = [400, 5000]\n");
  CHECK(none.found("no-opening"));
  const test::Built unclear = door("");
  CHECK(finding(unclear, "which-opening").text.find("3 clear openings") != std::string::npos);
}

// The corner at the back of the closing edge turns about the pin: plain vectors say when it passes
// the side of the case.
TEST_CASE("a thick narrow door touches the case where its corner's circle says") {
  const double thick = GENERATE(18.0, 30.0, 45.0);
  const double width = GENERATE(80.0, 160.0);
  const double gap = GENERATE(0.5, 1.5);
  CAPTURE(thick, width, gap);
  std::string text = in_case("bottom = " + plain_number(width, 3) + ", height = 400",
                             "slab = { stock = \"thick\" }\ngap = { all = " + plain_number(gap, 3) +
                                 " }\nhinges = { let_in = 0 }\n");
  text.insert(text.find("[case"), test::board("thick", plain_number(thick, 3) + " mm"));
  const test::Built built = test::build(text);
  const double pin = 3;  // half a barrel in front of the face
  const double across = width - 2 * gap + gap / 2, back = thick + pin, side = across + gap;
  // across * cos(t) + back * sin(t) = side, as long as the corner is behind the front.
  const double reach = std::hypot(across, back), first = std::atan2(back, across);
  double expected = -1;
  if (reach > side) {
    const double t = first - std::acos(side / reach);
    if (-across * std::sin(t) + back * std::cos(t) > pin) expected = degrees(t);
  }
  if (expected < 0) {
    CHECK(built.stops() == "");
  } else {
    CHECK(angle_said(built, "door-hits") == Approx(expected).margin(0.1));
    CHECK(finding(built, "door-hits").text.find("body right panel") != std::string::npos);
  }
}

// The usual bevel of a door's closing edge, 1/8 in to 2 in (builders' handbooks, from memory).
TEST_CASE("a bevelled closing edge clears where a square one binds") {
  const std::string door = "slab = { stock = \"ply\" }\ngap = { all = 1 }\n";
  const std::string opening = "bottom = 150, height = 400";
  CHECK(test::build(in_case(opening, door)).found("door-hits"));
  const test::Built built = test::build(in_case(opening, door + "closing_bevel = \"1/8 in 2\"\n"));
  REQUIRE(built.stops() == "");
  CHECK(degrees(built.cut("d door", "bevel of the closing edge").bevel) ==
        Approx(degrees(std::atan(1.0 / 16))));
}

TEST_CASE("a leaning hinge line is refused, and what would do is built") {
  const std::string opening = "bottom = 500, height = 600, lean_in = [\"10 deg\", 0]";
  const std::string slab = "slab = { stock = \"ply\" }\ngap = { all = 3 }\n";
  const test::Built left = test::build(in_case(opening, slab));
  REQUIRE(left.found("hinge-line-leans"));
  CHECK(finding(left, "hinge-line-leans").text.find("10.00°") != std::string::npos);
  CHECK(finding(left, "hinge-line-leans").text.find("falls shut") != std::string::npos);
  CHECK(test::build(in_case(opening, slab + "hung = \"right\"\n")).stops() == "");
  CHECK(test::build(in_case(opening, slab + "hinges = { kind = \"pivot\" }\n")).stops() == "");

  // Opened square, the free edge of a door that hangs on a line leaning out over it sinks into the
  // bottom or the floor; on one that leans in it climbs. By vectors: the sine of the lean times the
  // distance from the line.
  const test::Built out = test::build(in_case("bottom = 500, height = 600, lean_in = [\"-6 deg\"]",
                                              slab + "hinges = { may_lean = true }\n"));
  CHECK(finding(out, "hinge-line-leans").text.find("falls open") != std::string::npos);
  CHECK(out.found("door-hits"));
}

TEST_CASE("hinges on edges that turn are not in one line") {
  const std::string door =
      "[door.d]\nopening = { sides = 6, across_flats = 600, rests = \"on a "
      "side\" }\nslab = { stock = \"ply\" }\n";
  const test::Built built = test::build(door_stocks("mm") + door);
  CHECK(built.found("hinges-not-in-line"));
  CHECK(test::build(door_stocks("mm") + door + "hinges = { at = [60, 200] }\n")
            .found("hinge-line-leans"));
  CHECK(test::build(door_stocks("mm") + door + "hinges = { kind = \"pivot\", line_out = -250 }\n")
            .stops() == "");
}

TEST_CASE("a pair: two hands, a gap between, mirror images") {
  const test::Built built = test::build(in_case(
      "bottom = 700, height = 500",
      "slab = { stock = \"ply\" }\nleaves = 2\nmeeting_gap = 3\ngap = { all = 2 }\nhinges = { at = "
      "[80, 300] }\n"));
  REQUIRE(built.stops() == "");
  const parts::Part& left = built.part("d left leaf");
  const parts::Part& right = built.part("d right leaf");
  CHECK(left.size.y == Approx((700 - 4 - 3) / 2.0));
  CHECK(right.world.bounds().low.x - left.world.bounds().high.x == Approx(3));
  CHECK(built.row("d left leaf").hand != fabrication::Hand::none);
  CHECK(built.row("d left leaf").pair >= 0);
  CHECK(difference_volume(left.world.mirrored_x().transformed(
                              {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {700 + 36, 0, 0}}),
                          right.world) < 1e-3);
  CHECK(remarked(left, "Opens 90.0°"));
}

// Cups 35 mm wide and 13 mm deep, a few millimetres from the edge: common practice, no source.
TEST_CASE("a door over its opening on cup hinges") {
  const test::Built built = test::build(in_case(
      "bottom = 400, height = 600",
      "slab = { stock = \"ply\" }\nfit = \"over\"\noverlap = { all = 16 }\nhinges = { kind = "
      "\"cup\", tab = 4 }\nopens = \"110 deg\"\n"));
  REQUIRE(built.stops() == "");
  const parts::Part& door = built.part("d door");
  CHECK(door.size.x == Approx(632));
  CHECK(door.size.y == Approx(432));
  CHECK(door.world.bounds().high.y == Approx(0).margin(1e-9));
  REQUIRE(built.plan.assembly.fittings.size() == 2);
  const parts::Fitting& cup = built.plan.assembly.fittings.front();
  CHECK(cup.at.x - door.world.bounds().low.x == Approx(4 + 17.5));
  CHECK(cup.at.z - door.world.bounds().low.z == Approx(100));
  // The facets of a cup lie up to 0.01 mm inside its circle.
  const double drilled = 632.0 * 432 * 18 - door.body.volume();
  CHECK(drilled == Approx(2 * pi * 17.5 * 17.5 * 13).epsilon(2e-3));
  CHECK(built.found("no-cup") == false);
  CHECK(test::build(in_case("bottom = 400, height = 600",
                            "slab = { stock = \"thin\" }\nfit = \"over\"\noverlap = { all = 16 "
                            "}\nhinges = { kind = \"cup\" }\n"))
            .found("no-cup"));
}

// 37 mm to the row of holes, 32 mm between them, 5 mm wide and 12 mm deep: common practice, no
// source.
TEST_CASE("plates of cup hinges: where their holes stand in the case's side") {
  const auto holes = [](const test::Built& built, const char* panel) {
    std::vector<Box> found;
    for (const parts::Operation& each : built.part(panel).operations)
      if (each.name == "hole for a hinge plate") {
        Solid hole = built.part(panel).body;
        hole = Solid::box({-1, -1, -1}, built.part(panel).size + Vec3{1, 1, 1});
        hole.keep(each.removed);
        found.push_back(hole.transformed(built.part(panel).place).bounds());
      }
    return found;
  };
  const std::string cups = "slab = { stock = \"ply\" }\nhinges = { kind = \"cup\" }\n";
  const test::Built over = test::build(
      in_case("bottom = 400, height = 700", "fit = \"over\"\noverlap = { all = 15 }\n" + cups));
  const test::Built inset = test::build(
      in_case("bottom = 400, height = 700", "gap = { all = 2 }\nhung = \"right\"\n" + cups));
  for (const test::Built* built : {&over, &inset}) {
    REQUIRE(built->stops() == "");
    const bool inside = built == &inset;
    const char* panel = inside ? "body right panel" : "body left panel";
    const std::vector<Box> found = holes(*built, panel);
    REQUIRE(found.size() == 4);
    const Box side = built->part(panel).world.bounds();
    for (std::size_t i = 0; i < 4; ++i) {
      const Vec3 middle = (found[i].low + found[i].high) * 0.5;
      CHECK(middle.y == Approx(37 + (inside ? 18 : 0)));
      CHECK(found[i].size().y == Approx(5).margin(0.05));
      if (i % 2 == 1) CHECK(middle.z - (found[i - 1].low.z + 2.5) == Approx(32).margin(0.05));
      // From the inside of the panel, 12 mm into it.
      const double deep = inside ? found[i].high.x - side.low.x : side.high.x - found[i].low.x;
      CHECK(deep == Approx(12));
    }
    const parts::Fitting& cup = built->plan.assembly.fittings.front();
    CHECK(cup.at.z == Approx((found[0].low.z + found[1].high.z) / 2));
    CHECK(remarked(built->part("d door"), "plain turn"));
  }
  const auto with = [&](const std::string& hinges) {
    return test::build(in_case("bottom = 400, height = 700",
                               "fit = \"over\"\noverlap = { all = 15 }\nslab = { stock = \"ply\" "
                               "}\nhinges = { kind = \"cup\", " +
                                   hinges + " }\n"));
  };
  CHECK(holes(with("plate = 0"), "body left panel").empty());
  CHECK(with("plate = 1").found("no-plate"));
}

TEST_CASE("a pivot's hole too near an edge, or through what it is to hold in") {
  const auto pivots = [](const std::string& slab, const std::string& hinges) {
    return test::build(in_case("bottom = 400, height = 700",
                               "gap = { all = 3 }\nopens = \"60 deg\"\nslab = { stock = \"" + slab +
                                   "\" }\nhinges = { kind = \"pivot\"" + hinges + " }\n"));
  };
  const test::Built sound = pivots("ply", "");
  REQUIRE(sound.stops() == "");
  // A hole of 6 by 12 mm at head and foot, and in the panels above and below.
  const double hole = pi * 9 * 12;
  CHECK(sound.part("d door").body.volume() ==
        Approx(394 * 694 * 18 - 2 * hole).margin(2 * hole * 0.01));
  CHECK(sound.operation("body top panel", "hole for a pivot").kind == parts::OperationKind::hole);
  CHECK(pivots("ply", ", line_out = -4").found("no-pivot"));
  CHECK(pivots("ply", ", line_in_front = -3").found("no-pivot"));
  CHECK(pivots("thin", "").found("no-pivot"));
  CHECK(pivots("ply", ", barrel = 15").found("no-pivot"));
  CHECK(pivots("ply", ", pin = 17").found("no-pivot"));  // the panels are 18 mm thick
}

TEST_CASE("framed doors: sight, rebate and outside sizes, the panel's room") {
  const std::string frame =
      "[door.d.frame]\nstock = \"oak\"\nwidth = 60\ncorners = \"mortise and tenon\"\n";
  const test::Built built = test::build(
      in_case("bottom = 500, height = 700",
              "gap = { all = 2 }\n" + frame +
                  "panel = { stock = \"thin\", fit = \"groove\", into = 10, clearance = 2 }\n"));
  REQUIRE(built.stops() == "");
  for (const fabrication::JointReport& each : built.plan.joints) CHECK(each.gap < 1e-6);
  CHECK(test::measure(built.part("d left member"), "outside edge") == Approx(696));
  CHECK(test::measure(built.part("d left member"), "sight edge") == Approx(696 - 120));
  CHECK(test::measure(built.part("d bottom member"), "sight edge") == Approx(496 - 120));
  const parts::Part& panel = built.part("d panel");
  CHECK(panel.size.x == Approx(696 - 120 + 2 * (10 - 2)));
  CHECK(test::measure(panel, "room for the panel at every edge") == Approx(2));
  // Rails go into the stiles: their length is the distance between the shoulders and two tenons
  // (joinery handbooks: shoulder length and overall length).
  CHECK(built.part("d top member").size.x > 496 - 120 + 2 * 25);

  const std::string rebated = frame + "rebate = { width = 8, depth = 9 }\npanel = { stock = ";
  const test::Built glazed = test::build(
      in_case("bottom = 500, height = 700", "gap = { all = 2 }\n" + rebated + "\"thin\" }\n"));
  REQUIRE(glazed.stops() == "");
  CHECK(test::measure(glazed.part("d left member"), "rebate edge") == Approx(696 - 120 + 16));
  // A hundredth of the width across the grain, common practice.
  CHECK(test::build(in_case("bottom = 500, height = 700",
                            "gap = { all = 2 }\n" + frame +
                                "panel = { stock = \"solid\", fit = \"groove\" }\n" +
                                test::board("solid", "6 mm")))
            .found("panel-may-swell"));
  CHECK(test::build(in_case("bottom = 500, height = 700",
                            frame + "[door.d.frame.member.lid]\nwidth = 40\n"))
            .found("unknown-side"));
}

TEST_CASE("trapezoid framed pairs close every joint and open") {
  const test::Built built = test::build(in_case(
      "bottom = 800, height = 600, lean_in = [\"7 deg\"]",
      "gap = { all = 3 }\nleaves = 2\nhinges = { kind = \"pivot\" }\n[door.d.frame]\nstock = "
      "\"oak\"\nwidth = 55\npanel = { stock = \"thin\", fit = \"groove\" }\n"));
  CHECK(built.stops() == "");
  for (const fabrication::JointReport& each : built.plan.joints) CHECK(each.gap < 1e-6);
  CHECK(remarked(built.part("d left leaf top member"), "Opens") !=
        remarked(built.part("d left leaf bottom member"), "Opens"));
}

TEST_CASE("what stands in front of a door is found, built before it or after") {
  // A post in front of the case: the door's face reaches it at an angle that vectors give.
  const std::string post =
      "[board.post]\nat = [300, -200, 0]\nstock = \"ply\"\nlength = 700\nwidth = 60\nrise = \"90 "
      "deg\"\n";
  std::string before =
      in_case("bottom = 500, height = 600", "slab = { stock = \"ply\" }\ngap = { all = 2 }\n");
  const std::string after = before + post;
  before.insert(before.find("[door"), post);
  const test::Built one = test::build(before), other = test::build(after);
  const double angle = angle_said(one, "door-hits");
  CHECK(angle == angle_said(other, "door-hits"));
  const Box box = one.part("post").world.bounds();
  // The pin lies half a gap outside the leaf and 3 mm in front of it. The post is met by the leaf's
  // face, 3 mm behind the line through the pin, at that corner of it which the face reaches first.
  const Vec2 pin{18 + 1, -3};
  double expected = 360;
  for (const double x : {box.low.x, box.high.x})
    for (const double y : {box.low.y, box.high.y}) {
      const double away = std::hypot(x - pin.x, pin.y - y);
      expected =
          std::min(expected, degrees(std::atan2(pin.y - y, x - pin.x) + std::asin(3 / away)));
    }
  CHECK(angle == Approx(expected).margin(0.1));
  CHECK(finding(one, "door-hits").text.find("post") != std::string::npos);
}

TEST_CASE("doors hung on one partition can't both stand wide open") {
  const auto pair = [](const std::string& opens) {
    return test::build(
        door_stocks("mm") +
        "[case.body]\noutline = { bottom = 800, height = 500 }\ndepth = 300\nstock = "
        "\"ply\"\n[case.body.partition.p]\nright_at = 409\n[door.a]\nof = \"body\"\nwithin = [200, "
        "200]\nhung = \"right\"\nslab = { stock = \"ply\" }\nopens = \"" +
        opens +
        "\"\n[door.b]\nof = \"body\"\nwithin = [600, 200]\nslab = { stock = \"ply\" "
        "}\nopens = \"" +
        opens + "\"\n");
  };
  const test::Built square = pair("90 deg"), wide = pair("120 deg");
  CHECK(square.stops() == "");
  CHECK_FALSE(square.found("doors-meet-open"));
  CHECK(wide.stops() == "");
  CHECK(wide.found("doors-meet-open"));
}

TEST_CASE("rounded corners take the corner's square less its quarter circle") {
  const test::Built built = test::build(door_stocks("mm") +
                                        "[door.d]\nopening = { bottom = 400, height = 500 }\ngap = "
                                        "{ all = 0 }\nslab = { stock = \"ply\" }\ncorner_radius = "
                                        "40\nhinges = { let_in = 0 }\n");
  REQUIRE(built.stops() == "");
  const double taken = 400.0 * 500 * 18 - built.part("door").body.volume();
  CHECK(taken == Approx(18 * (4 - pi) * 40 * 40).epsilon(2e-3));
  CHECK(remarked(built.part("door"), "radius of 40 mm"));
  CHECK(test::build(door_stocks("mm") +
                    "[door.d]\nopening = { bottom = 400, height = 500 }\nslab = { stock = \"ply\" "
                    "}\ncorner_radius = 250\n")
            .found("radius-too-large"));
}

TEST_CASE("hinges that have nothing to hold on to, or no room") {
  const std::string slab = "slab = { stock = \"ply\" }\n";
  CHECK(test::build(in_case("bottom = 400, height = 600", slab + "hinges = { at = [10, 300] }\n"))
            .found("hinges-have-no-room"));
  CHECK(test::build(in_case("bottom = 400, height = 600", slab + "gap = { all = 2, left = 30 }\n"))
            .found("hinge-on-nothing") == false);
  CHECK(test::build(in_case("bottom = 400, height = 600", slab + "set_back = 320\n"))
            .found("hinge-on-nothing"));
  CHECK(test::build(in_case("bottom = 400, height = 600", slab + "gap = { all = 250 }\n"))
            .found("no-door"));
}

TEST_CASE("doors that contradict themselves are read out at once") {
  const auto codes = [](const std::string& door) {
    const auto result = reading::read_project(door_stocks("mm") + "[door.d]\n" + door, "test.toml",
                                              constructs::registry());
    std::string list;
    for (const Diagnostic& each : result.diagnostics) list += each.code + " ";
    return list;
  };
  CHECK(codes("slab = { stock = \"ply\" }\n").find("missing-field") != std::string::npos);
  CHECK(codes("opening = { bottom = 9, height = 9 }\n").find("missing-field") != std::string::npos);
  const std::string plain =
      "opening = { bottom = 900, height = 900 }\nslab = { stock = \"ply\" }\n";
  CHECK(codes(plain) == "");
  CHECK(codes(plain + "fit = \"over\"\n").find("missing-field") != std::string::npos);
  CHECK(codes(plain + "overlap = { all = 4 }\n").find("not-together") != std::string::npos);
  CHECK(codes(plain + "within = [1, 2]\n").find("wrong-count") != std::string::npos);
  CHECK(codes(plain + "leaves = 2\nhung = \"left\"\n").find("not-together") != std::string::npos);
  CHECK(codes(plain + "hinges = { kind = \"cup\", leaf = 9 }\n").find("not-together") !=
        std::string::npos);
  CHECK(codes(plain + "hinges = { at = [100] }\n").find("wrong-count") != std::string::npos);
  CHECK(codes("of = \"nobody\"\nslab = { stock = \"ply\" }\n") != "");
}

TEST_CASE("invented doors open or say where they touch, and inches and millimetres agree") {
  std::mt19937 random(20260314);
  const auto pick = [&](int from, int to) {
    return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
  };
  int sound = 0;
  for (int i = 0; i < 40; ++i) {
    const int lean = i % 3 == 0 ? 0 : pick(-9, 9);
    const std::string kind = i % 4 == 0 ? "cup" : i % 2 == 0 ? "butt" : "pivot";
    const bool over = kind == "cup";
    const auto mm = [&](int from, int to) {
      return "\"" + std::to_string(pick(from, to)) + " mm\"";
    };
    const std::string rest =
        "[case.body]\noutline = { measured = \"inside\", bottom = " + mm(300, 900) +
        ", height = " + mm(300, 700) + ", lean_in = [\"" + std::to_string(lean) +
        " deg\"] }\ndepth = \"300 mm\"\nstock = \"ply\"\n[door.d]\nof = \"body\"\n" +
        (over ? "fit = \"over\"\noverlap = { all = \"12 mm\" }\n"
              : "gap = { all = " + mm(1, 4) + " }\n") +
        "leaves = " + std::to_string(pick(1, 2)) + "\nhinges = { kind = \"" + kind + "\"" +
        (kind == "butt" ? ", length = \"60 mm\"" : "") + " }\n" +
        (i % 5 < 2 ? "slab = { stock = \"ply\" }\n"
                   : "[door.d.frame]\nstock = \"oak\"\nwidth = \"58 mm\"\npanel = { stock = "
                     "\"thin\", fit = \"groove\" }\n");
    const std::string text = door_stocks("mm") + rest;
    CAPTURE(text);
    const test::Built built = test::build(text), in_inches = test::build(door_stocks("in") + rest);
    for (const Finding& each : built.plan.findings) {
      if (each.level != Level::stop) continue;
      INFO(each.text);
      CHECK((each.code == "hinge-line-leans" || each.code == "door-hits" ||
             each.code == "no-opening"));
    }
    for (const fabrication::JointReport& each : built.plan.joints) CHECK(each.gap < 1e-5);
    sound += built.stops().empty();
    REQUIRE(built.plan.assembly.parts.size() == in_inches.plan.assembly.parts.size());
    for (const parts::Part& part : built.plan.assembly.parts)
      CHECK(part.body.volume() == Approx(in_inches.part(part.name).body.volume()));
    CHECK(built.plan.findings.size() == in_inches.plan.findings.size());
  }
  CHECK(sound >= 15);
}
