// Stands on three, five or more legs, and braces between legs by their names: the engine's pieces
// against plane geometry.
#include <cmath>
#include <numbers>

#include "constructs/lap_angles.h"
#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::tan_deg;

namespace {

constexpr double height = 500, radius = 260, lean = 8, top_width = 70, foot_width = 30;

std::string stand(int legs, const std::string& braces, const std::string& more = "") {
  return test::job("mm") + test::board("ash", "32 mm") + test::board("thin", "18 mm") +
         test::sheet("panel", "18 mm") + more + "[stand.s]\nlegs = " + std::to_string(legs) +
         "\nheight = 500\nradius = 260\nlean_in = [\"8 deg\"]\n" +
         (more.empty() ? "" : "under = \"body\"\n") +
         "[stand.s.leg]\nstock = \"ash\"\ntop_width = 70\nfoot_width = 30\n" + braces;
}

std::string brace(const std::string& name, const std::string& first, const std::string& second,
                  double at, const std::string& rest = "") {
  return "[stand.s.brace." + name + "]\nstock = \"thin\"\nwidth = 40\nat = " + std::to_string(at) +
         "\nbetween = [\"" + first + "\", \"" + second + "\"]\n" + rest;
}

const std::string tee = brace("low", "leg 2", "leg 3", 150) + brace("tee", "leg 1", "low", 150);

// From the middle of the plan to the middle of a leg: its outer edge less half its width there.
double to_leg(double z) {
  return radius - z * tan_deg(lean) - (foot_width + (top_width - foot_width) * z / height) / 2;
}

void check_joined(const test::Built& built) {
  REQUIRE(!built.plan.joints.empty());
  test::check_sound(built);
}

std::vector<std::string> codes(const std::string& text) {
  std::vector<std::string> result;
  for (const Diagnostic& each :
       reading::read_project(text, "test.toml", constructs::registry()).diagnostics)
    result.push_back(each.code);
  return result;
}

}  // namespace

// Plane geometry: every outer edge lies on the cone of the stated lean, the plan is regular, and
// the legs' widths are level.
TEST_CASE("legs on a ring stand evenly round it and lean towards its middle") {
  for (const int legs : {3, 5, 6, 7, 12}) {
    std::string braces;
    for (int i = 1; i < legs; ++i)
      braces += brace("b" + std::to_string(i), "leg " + std::to_string(i),
                      "leg " + std::to_string(i + 1), i % 2 == 0 ? 120 : 220);
    const test::Built built = test::build(stand(legs, braces));
    INFO(legs << " legs");
    check_joined(built);
    for (int i = 0; i < legs; ++i) {
      const double turn = 2 * std::numbers::pi * i / legs - std::numbers::pi / 2;
      const Vec3 out{std::cos(turn), std::sin(turn), 0}, side{-std::sin(turn), std::cos(turn), 0};
      double least[2] = {1e9, 1e9}, most[2] = {-1e9, -1e9};
      for (const Vec3& v : built.part("leg " + std::to_string(i + 1)).world.vertices()) {
        CHECK(std::abs(dot(v, side)) < 16 + 1e-9);
        if (v.z > 1e-6 && v.z < height - 1e-6) continue;
        const int end = v.z > 1 ? 1 : 0;
        least[end] = std::min(least[end], dot(v, out));
        most[end] = std::max(most[end], dot(v, out));
      }
      CHECK(most[0] == Approx(radius));
      CHECK(most[1] == Approx(radius - height * tan_deg(lean)));
      CHECK(most[0] - least[0] == Approx(foot_width));
      CHECK(most[1] - least[1] == Approx(top_width));
    }
  }
}

TEST_CASE("three legs: a brace between two of them and one from the third into its middle") {
  const test::Built built = test::build(stand(3, tee));
  check_joined(built);
  // An equilateral triangle: its side and its height.
  CHECK(test::measure(built.part("low"), "between the middles of the legs") ==
        Approx(to_leg(150) * std::sqrt(3.0)));
  CHECK(test::measure(built.part("tee"), "from the middle of the leg to the middle of low") ==
        Approx(to_leg(150) * 1.5));
  // Seen from the front, legs 2 and 3 are mirror images.
  CHECK(built.row("leg 2").hand != fabrication::Hand::none);
  CHECK(built.row("leg 3").hand != built.row("leg 2").hand);
  CHECK(built.part("leg 2").body.volume() == Approx(built.part("leg 3").body.volume()));
  // A level brace square to a leg's faces is off square by the lean alone; the tapered edge adds
  // its own.
  const constructs::LapLines lines =
      constructs::lap_lines(built.part("leg 1"), built.operation("leg 1", "lap for tee"));
  CHECK(degrees(lines.off_square) == Approx(lean));
  for (const constructs::LapEdge& edge : lines.edges)
    if (!edge.straight())
      CHECK(degrees(edge.off_square) ==
            Approx(degrees(std::atan(tan_deg(lean) + (top_width - foot_width) / height))));
  // The end is flush with the far side of the brace it ends in.
  const Box low = built.part("low").world.bounds(), end = built.part("tee").world.bounds();
  CHECK(end.high.y == Approx(low.high.y));
}

TEST_CASE("a brace may slope into the middle of another") {
  check_joined(test::build(
      stand(3, brace("low", "leg 2", "leg 3", 150) + brace("tee", "leg 1", "low", 300))));
}

// Euclid, Elements III.20: two chords of a regular pentagon that cross, of two sides each, make an
// angle of 72 degrees.
TEST_CASE("braces between named legs cross at the angle of their chords") {
  const test::Built built =
      test::build(stand(5, brace("a", "leg 1", "leg 3", 150) +
                               brace("b", "leg 2", "leg 4", 150, "crosses = [\"a\"]\n") +
                               brace("c", "leg 5", "leg 1", 250)));
  check_joined(built);
  bool found = false;
  for (const fabrication::JointReport& each : built.plan.joints) {
    if (each.name != "b to a") continue;
    found = true;
    CHECK(degrees(each.dihedral) == Approx(72));
  }
  CHECK(found);
}

TEST_CASE("a brace between named legs of a rectangle is the diagonal of its plan") {
  const test::Built built = test::build(
      test::job("mm") + test::board("ash", "32 mm") + test::board("thin", "18 mm") +
      "[stand.s]\nheight = 500\nwidth = 600\ndepth = 400\n[stand.s.leg]\nstock = "
      "\"ash\"\ntop_width = 50\n" +
      brace("a", "left front leg", "right back leg", 150) +
      brace("b", "right front leg", "left back leg", 150, "crosses = [\"a\"]\nlies = \"flat\"\n"));
  // One upright, the other flat: laps need not be alike.
  check_joined(built);
  CHECK(test::measure(built.part("a"), "between the middles of the legs") ==
        Approx(std::hypot(600 - 50, 400 - 32)));
}

TEST_CASE("three legs under a six-sided case") {
  const std::string body =
      "[ring.body]\nplan = { sides = 6, across_flats = 400 }\nheight = 100\nlean_out = \"10 "
      "deg\"\nstock = \"panel\"\nfloor = { stock = \"panel\", underside_at = 0 }\n";
  const test::Built built = test::build(stand(3, tee, body));
  check_joined(built);
  int resting = 0;
  for (const fabrication::JointReport& each : built.plan.joints) resting += each.kind == "resting";
  CHECK(resting == 3);
  CHECK(built.part("s leg 1").world.bounds().high.z ==
        Approx(built.part("body floor").world.bounds().low.z).margin(1e-9));
}

TEST_CASE("what legs on a ring can't be") {
  const std::string ring = "radius = 260\n";
  const auto with = [&](const std::string& old, const std::string& fresh) {
    std::string text = stand(3, tee);
    text.replace(text.find(old), old.size(), fresh);
    return codes(text);
  };
  CHECK(codes(stand(3, tee)).empty());
  CHECK(with(ring, "").at(0) == "missing-field");
  CHECK(with(ring, ring + "width = 500\n").at(0) == "not-together");
  CHECK(with("[\"8 deg\"]", "[\"8 deg\", 7]").at(0) == "wrong-count");
  CHECK(with("\"low\"]", "\"lwo\"]").at(0) == "unknown-side");
  CHECK(with("\"leg 1\"", "\"leg 4\"").at(0) == "unknown-side");
  CHECK(with("between = [\"leg 1\", \"low\"]\n", "").at(0) == "missing-field");
  CHECK(with("[\"leg 1\", \"low\"]", "[\"leg 1\"]").at(0) == "wrong-count");
  CHECK(with("[\"leg 1\", \"low\"]\n", "[\"leg 1\", \"low\"]\nruns = \"front\"\n").at(0) ==
        "not-together");
  // Legs that would meet before they are up.
  std::string steep = stand(3, tee);
  steep.replace(steep.find("8 deg"), 5, "28 deg");
  CHECK(test::build(steep).found("no-inside"));
  // Braces of two sides that meet in one leg at one height.
  CHECK(
      !test::build(stand(3, brace("a", "leg 1", "leg 2", 150) + brace("b", "leg 2", "leg 3", 150)))
           .stops()
           .empty());
}
