// Stands: leaning, tapered legs and lapped braces, against plain trigonometry.
#include <cmath>

#include "constructs/lap_angles.h"
#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;
using test::tan_deg;

namespace {

const std::string stocks =
    test::board("oak", "3/4 in") + test::board("thick", "2 in") + test::sheet("panel", "3/4 in");

test::Built stand(const std::string& sizes, const std::string& leg, const std::string& braces,
                  const std::string& unit = "in") {
  return test::build(test::job(unit) + stocks + "[stand.s]\n" + sizes + "[stand.s.leg]\n" + leg +
                     braces);
}

std::string brace(const std::string& name, const std::string& rest) {
  return "[stand.s.brace." + name + "]\nstock = \"oak\"\nwidth = \"1 1/2\"\n" + rest;
}

const std::string tapered = "stock = \"oak\"\ntop_width = 3\nfoot_width = 1\n";
// Front and back rails over side rails.
const std::string rails =
    brace("rail", "at = 20\n") + brace("tie", "at = 17\nruns = \"left and right\"\n");

double atan_deg(double slope) { return degrees(std::atan(slope)); }

const fabrication::JointReport& joint(const test::Built& built, const std::string& name) {
  for (const fabrication::JointReport& each : built.plan.joints)
    if (each.name == name) return each;
  FAIL("no joint named " << name);
  return built.plan.joints.front();
}

constructs::LapLines lap(const test::Built& built, const std::string& part,
                         const std::string& other) {
  return constructs::lap_lines(built.part(part), built.operation(part, "lap for " + other));
}

double edge_angle(const constructs::LapLines& lines, const std::string& edge) {
  for (const constructs::LapEdge& each : lines.edges)
    if (each.name == edge) return degrees(each.off_square);
  FAIL("no edge named " << edge);
  return 0;
}

}  // namespace

// A lap parallel to the floor in a leg that leans 15 degrees is 15 degrees off square (common
// practice, no source); to the tapered edge it is that and the taper.
TEST_CASE("a level brace in legs that lean 15 degrees and taper inside") {
  const test::Built built =
      stand("height = 24\nwidth = 30\ndepth = 14\nlean_in = [\"15 deg\"]\n", tapered, rails);
  REQUIRE(built.stops() == "");
  test::check_sound(built);
  const constructs::LapLines lines = lap(built, "left front leg", "front rail");
  CHECK(degrees(lines.off_square) == Approx(15));
  CHECK(edge_angle(lines, "outer edge") == Approx(15));
  // The inner edge runs 2 in further in over the height than the outer one.
  CHECK(edge_angle(lines, "inner edge") == Approx(atan_deg(tan_deg(15) + 2.0 / 24)));
  // Widths are level: 1 in at the foot, 3 in at the top.
  const parts::Part& leg = built.part("left front leg");
  double narrow = 0, broad = 0;
  for (const Vec3& v : leg.world.vertices()) {
    const double from_outside = inches(v.x) - inches(v.z) * tan_deg(15);
    if (v.z < 1e-6) narrow = std::max(narrow, from_outside);
    if (inches(v.z) > 24 - 1e-6) broad = std::max(broad, from_outside);
  }
  CHECK(narrow == Approx(1));
  CHECK(broad == Approx(3));
  // The lower wall is 20 in less half the brace's width over the floor, plumb.
  CHECK(inches(test::measure(
            leg, "near wall of the lap for front rail, from the foot along the outer edge")) ==
        Approx((20 - 0.75) / std::cos(Angle::degrees(15).rad)));
  // The brace is flush: as long as the outside is wide, halfway through its ends.
  CHECK(inches(built.row("front rail").long_point) == Approx(30 - 2 * (20 - 0.75) * tan_deg(15)));
  CHECK(built.row("left front leg").hand == fabrication::Hand::left);
  CHECK(built.row("left front leg").quantity() == 2);
  CHECK(built.row("right front leg").quantity() == 2);
}

TEST_CASE("which edge tapers") {
  const std::string sizes = "height = 24\nwidth = 30\ndepth = 14\nlean_in = [\"8 deg\"]\n";
  const test::Built inside = stand(sizes, tapered + "taper = \"inside\"\n", rails);
  const test::Built outside = stand(sizes, tapered + "taper = \"outside\"\n", rails);
  const test::Built both = stand(sizes, tapered + "taper = \"both\"\n", rails);
  for (const test::Built* built : {&inside, &outside, &both}) REQUIRE(built->stops() == "");
  const std::string leg = "right back leg";
  // Every choice has the same outside and, with level widths, the same leg before its laps.
  const Solid plain = stand(sizes, tapered, "").part(leg).world;
  for (const char* side : {"outside", "both"}) {
    const test::Built bare = stand(sizes, tapered + "taper = \"" + side + "\"\n", "");
    CHECK(difference_volume(plain, bare.part(leg).world) < 1e-3);
  }
  const double taper = atan_deg(tan_deg(8) + 2.0 / 24) - 8;
  const auto lines = [&](const test::Built& built) { return lap(built, leg, "back rail"); };
  CHECK(degrees(lines(inside).off_square) == Approx(8));
  CHECK(degrees(lines(outside).off_square) == Approx(8 + taper));
  CHECK(degrees(lines(both).off_square) == Approx(8 + taper / 2));
  for (const test::Built* built : {&inside, &outside, &both}) {
    CHECK(edge_angle(lines(*built), "outer edge") == Approx(8));
    CHECK(edge_angle(lines(*built), "inner edge") == Approx(8 + taper));
  }
  for (const constructs::LapEdge& edge : lines(both).edges)
    CHECK(degrees(edge.taper) == Approx(taper / 2));
}

TEST_CASE("widths square to the blank: the taper over the outer edge's length") {
  const double slant = 24 / std::cos(Angle::degrees(10).rad);
  const auto taper = [&](const std::string& side) {
    const test::Built built =
        stand("height = 24\nwidth = 30\ndepth = 14\nlean_in = [\"10 deg\"]\n",
              tapered + "widths = \"square\"\ntaper = \"" + side + "\"\n", rails);
    REQUIRE(built.stops() == "");
    double most = 0;
    for (const constructs::LapEdge& edge : lap(built, "left back leg", "back rail").edges)
      most = std::max(most, degrees(edge.taper));
    return most;
  };
  CHECK(taper("inside") == Approx(atan_deg(2 / slant)));
  CHECK(taper("outside") == Approx(degrees(std::asin(2 / slant))));
  CHECK(taper("both") == Approx(degrees(std::asin(1 / slant))));
}

TEST_CASE("braces crossed in plan: the true angle of the plan's proportions") {
  const double foot_x = 30, foot_y = 16, lean = 8, at = 7;
  const test::Built built =
      stand("height = 24\nwidth = 30\ndepth = 16\nlean_in = [\"8 deg\"]\n", tapered,
            brace("cross", "at = 7\ncrossed = \"in plan\"\nwithin = 0\n") + rails);
  REQUIRE(built.stops() == "");
  test::check_sound(built);
  // Middles of the legs at that height: the outside less the lean and half the tapered width; legs
  // are 3/4 in thick in the depth.
  const double width = 1 + 2 * at / 24;
  const double across = foot_x - 2 * (at * tan_deg(lean) + width / 2), through = foot_y - 0.75;
  CHECK(degrees(joint(built, "cross right to cross left").dihedral) ==
        Approx(2 * atan_deg(through / across)));
  CHECK(inches(test::measure(built.part("cross left"), "between the middles of the legs")) ==
        Approx(std::hypot(across, through)));
  // The leg's lap is level, so that it is as far off square as the leg leans.
  CHECK(built.part("cross left").size.z == Approx(0.75 * 25.4));
}

TEST_CASE("braces crossed in plan lie flat or stand proud of the legs") {
  const std::string sizes =
      "height = 24\nwidth = 30\ndepth = 16\nlean_in = [\"6 deg\"]\n"
      "lean_in_depth = [\"4 deg\"]\n";
  const std::string leg = "stock = \"thick\"\ntop_width = 3\nfoot_width = 2\n";
  const test::Built flat =
      stand(sizes, leg, brace("cross", "at = 7\ncrossed = \"in plan\"\nlies = \"flat\"\n") + rails);
  REQUIRE(flat.stops() == "");
  test::check_sound(flat);
  const Box box = flat.part("cross left").world.bounds();
  CHECK(inches(box.high.z - box.low.z) == Approx(0.75));
  const test::Built proud =
      stand(sizes, leg, brace("cross", "at = 7\ncrossed = \"in plan\"\nproud = \"1/2\"\n") + rails);
  REQUIRE(proud.stops() == "");
  test::check_sound(proud);
  CHECK(proud.part("cross left").size.x > flat.part("cross left").size.x);
}

TEST_CASE("braces crossed in the front and back frames") {
  const double lean = 10, low = 5, high = 19;
  for (const char* walls : {"along the brace", "parallel to the floor"}) {
    INFO(walls);
    const test::Built built = stand(
        "height = 24\nwidth = 32\ndepth = 14\nlean_in = [\"10 deg\"]\n", tapered,
        brace("x", "at = 5\nother_at = 19\ncrossed = \"in elevation\"\nwithin = 2\nwalls = \"" +
                       std::string(walls) + "\"\n") +
            brace("rail", "at = 22\nruns = \"left and right\"\n"));
    REQUIRE(built.stops() == "");
    test::check_sound(built);
    const auto middle = [&](double z) { return z * tan_deg(lean) + (1 + 2 * z / 24) / 2; };
    const double run = 32 - middle(low) - middle(high);
    CHECK(degrees(joint(built, "front x falling to front x rising").dihedral) ==
          Approx(2 * atan_deg((high - low) / run)));
    // The middles of the legs make a trapezium, whose diagonals cross nearer to the narrow end.
    const double wide = 32 - 2 * middle(low), narrow = 32 - 2 * middle(high);
    const double off = std::hypot(run, high - low) * (wide / (wide + narrow) - 0.5);
    CHECK(inches(test::measure(built.part("front x rising"), "crossing, off the middle")) ==
          Approx(off));
    const double rising = degrees(lap(built, "left front leg", "front x rising").off_square);
    const double falling = degrees(lap(built, "left front leg", "front x falling").off_square);
    const double rise = atan_deg((high - low) / run);
    // Along the brace the lap has the brace's rise as well as the leg's lean.
    const bool level = std::string(walls) == "parallel to the floor";
    CHECK(built.found("thin-neck") == level);
    CHECK(rising == Approx(level ? lean : rise + lean));
    CHECK(falling == Approx(level ? lean : rise - lean));
  }
}

// In frames that lean, walls that are level on the leg's face and square to it are bevelled
// nowhere.
TEST_CASE("level walls in frames that lean both ways") {
  const test::Built built = stand(
      "height = 24\nwidth = 32\ndepth = 18\nlean_in = [\"7 deg\"]\nlean_in_depth = [\"6 deg\"]\n",
      tapered,
      brace("rail", "at = 9\nother_at = 10\nwalls = \"parallel to the floor\"\n") +
          brace("tie", "at = 17\nruns = \"left and right\"\n"));
  REQUIRE(built.stops() == "");
  test::check_sound(built);
  const parts::Operation& op = built.operation("left front leg", "lap for front rail");
  for (const Plane& wall : op.trench.walls) {
    CHECK(wall.n.z == Approx(0).margin(1e-12));  // square to the face
    const Vec3 line = built.part("left front leg").place.direction(cross(wall.n, {0, 0, 1}));
    CHECK(line.z == Approx(0).margin(1e-12));
  }
}

TEST_CASE("crossings off the middle are refused when the author wants them near it") {
  const std::string sizes = "height = 24\nwidth = 30\ndepth = 16\nlean_in = [\"12 deg\", 0]\n";
  const std::string cross = "at = 5\nother_at = 19\ncrossed = \"in elevation\"\n";
  const test::Built free = stand(sizes, tapered, brace("x", cross) + rails);
  CHECK(!free.found("crossing-off-centre"));
  const double off = inches(test::measure(free.part("front x rising"), "crossing, off the middle"));
  CHECK(off > 0.01);
  CHECK(stand(sizes, tapered, brace("x", cross + "within = \"1/1000\"\n") + rails)
            .found("crossing-off-centre"));
  CHECK(!stand(sizes, tapered, brace("x", cross + "within = 4\n") + rails)
             .found("crossing-off-centre"));
}

TEST_CASE("side frames: the legs' faces look left and right") {
  const test::Built built = stand(
      "height = 20\nwidth = 24\ndepth = 16\nlean_in_depth = [\"9 deg\"]\n",
      tapered + "faces = \"left and right\"\n",
      brace("x", "at = 4\nother_at = 15\nruns = \"left and right\"\ncrossed = \"in elevation\"\n") +
          brace("rail", "at = 18\nruns = \"front and back\"\n"));
  REQUIRE(built.stops() == "");
  test::check_sound(built);
  const auto middle = [&](double z) { return z * tan_deg(9) + (1 + 2 * z / 20) / 2; };
  CHECK(degrees(joint(built, "left x falling to left x rising").dihedral) ==
        Approx(2 * atan_deg(11 / (16 - middle(4) - middle(15)))));
  CHECK(norm(built.part("left front leg").place.ez - Vec3{-1, 0, 0}) < 1e-12);
}

TEST_CASE("a stand under a case follows its outside and its lean") {
  const std::string text =
      test::job() + stocks +
      "[case.body]\noutline = { bottom = 30, height = 26, lean_in = [\"7 deg\"] }\ndepth = 14\n"
      "stock = \"panel\"\n[stand.s]\nunder = \"body\"\nheight = 20\n[stand.s.leg]\n" +
      tapered + brace("rail", "at = 17\n") + brace("tie", "at = 14\nruns = \"left and right\"\n");
  const test::Built built = test::build(text);
  REQUIRE(built.stops() == "");
  test::check_sound(built);
  // Outside of the legs at the foot: the case's bottom and the lean over the stand's height.
  const Box leg = built.part("s left front leg").world.bounds();
  CHECK(inches(leg.low.x) == Approx(-20 * tan_deg(7)));
  CHECK(inches(leg.low.z) == Approx(-20));
  CHECK(inches(leg.high.z) == Approx(0).margin(1e-9));
  // The left outside of the leg is the plane of the case's left outside.
  const parts::Part& panel = built.part("body left panel");
  const Plane outside = panel.place.plane({{0, 0, 1}, panel.size.z});
  const parts::Part& part = built.part("s left front leg");
  double nearest = -1e9;
  for (const Vec3& v : part.world.vertices()) nearest = std::max(nearest, outside.distance(v));
  CHECK(nearest == Approx(0).margin(1e-6));
  int resting = 0;
  for (const fabrication::JointReport& each : built.plan.joints) resting += each.kind == "resting";
  CHECK(resting == 4);
}

TEST_CASE("what a stand can't be") {
  const std::string sizes = "height = 24\nwidth = 30\ndepth = 16\nlean_in = [\"8 deg\"]\n";
  CHECK(stand("height = 60\nwidth = 30\ndepth = 16\nlean_in = [\"30 deg\"]\n", tapered, rails)
            .found("no-inside"));
  CHECK(stand(sizes, tapered, brace("rail", "at = 30\n")).found("brace-too-high"));
  CHECK(stand(sizes, tapered, "").found("floating"));
  CHECK(stand(sizes, tapered, rails + brace("other", "at = 20\nruns = \"front\"\n"))
            .found("no-joint"));
  const auto faults = [](const std::string& text) {
    return reading::read_project(test::job() + stocks + text, "test.toml", constructs::registry())
        .diagnostics;
  };
  const std::string leg = "[stand.s.leg]\n" + tapered;
  CHECK(faults("[stand.s]\nheight = 20\n" + leg).at(0).code == "missing-field");
  CHECK(faults("[stand.s]\nheight = 20\nunder = \"boddy\"\n" + leg).at(0).code == "unknown-item");
  CHECK(faults("[stand.s]\n" + sizes + leg + brace("x", "at = 9\ncrossed = \"in elevation\"\n"))
            .at(0)
            .code == "not-together");
}
