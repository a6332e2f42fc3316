// Compound angles of leaning rings, read off the solid model.
#include <cmath>
#include <numbers>

#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

namespace {

test::Built ring(int sides, double lean, const std::string& corners, const std::string& more = "") {
  return test::build(test::job() + test::sheet("panel", "1/2") +
                     "[ring.r]\nplan = { sides = " + std::to_string(sides) +
                     ", across_flats = 20 }\nheight = 3\nlean_out = " + std::to_string(lean) +
                     "\nstock = \"panel\"\ncorners = \"" + corners + "\"\n" + more);
}

struct Settings {
  double face, bevel;
};

Settings settings(const test::Built& built, const std::string& part, const std::string& cut) {
  return {degrees(built.cut(part, cut).face_angle), degrees(built.cut(part, cut).bevel)};
}

// Plain vectors, no closed formula: two unit normals and the arris between them.
Settings by_vectors(int sides, double lean_degrees) {
  const double t = Angle::degrees(lean_degrees).rad, turn = 2 * std::numbers::pi / sides;
  const Vec3 n1{0, -std::cos(t), -std::sin(t)};
  const Vec3 n2{std::sin(turn) * std::cos(t), -std::cos(turn) * std::cos(t), -std::sin(t)};
  const Vec3 arris = unit(cross(n1, n2));
  return {90 - degrees(angle_between(arris, {1, 0, 0})), degrees(angle_between(n1, n2)) / 2};
}

}  // namespace

// Formulas of D. L. Snyder and B. Gottesman, "Compound-Angle Joinery" (technical note, rev. 4,
// 2015): tan M = sin t tan p, sin B = cos t sin p, with t the lean and p half the plan angle of a
// side; and plain vectors as a second witness.
TEST_CASE("mitred rings of 3 to 12 sides, leaning 0 to 60 degrees") {
  for (int n = 3; n <= 12; ++n) {
    for (const double t : {0.0, 5.0, 10.0, 15.0, 22.5, 30.0, 45.0, 60.0}) {
      INFO(n << " sides leaning " << t);
      const test::Built built = ring(n, t, "mitre");
      REQUIRE(built.stops() == "");
      const std::string first = n == 4 ? "front" : "side 1";
      const std::string second = n == 4 ? "right" : "side 2";
      const Settings got = settings(built, first, "mitre to " + second);
      const double p = std::numbers::pi / n, lean = Angle::degrees(t).rad;
      CHECK(got.face == Approx(degrees(std::atan(std::sin(lean) * std::tan(p)))).margin(1e-9));
      CHECK(got.bevel == Approx(degrees(std::asin(std::cos(lean) * std::sin(p)))).margin(1e-9));
      const Settings witness = by_vectors(n, t);
      CHECK(got.face == Approx(std::abs(witness.face)).margin(1e-9));
      CHECK(got.bevel == Approx(witness.bevel).margin(1e-9));
      CHECK(built.row(first).quantity() == static_cast<std::size_t>(n));
    }
  }
}

// Same note: a butted four-sided corner has sin B = sin^2 t.
TEST_CASE("butted four-sided rings") {
  for (const double t : {5.0, 10.0, 15.0, 20.0, 30.0, 45.0, 60.0}) {
    INFO("leaning " << t);
    const test::Built built = ring(4, t, "butt", "through = [\"front\", \"back\"]\n");
    REQUIRE(built.stops() == "");
    const double lean = Angle::degrees(t).rad;
    const Settings end = settings(built, "left", "end against front");
    CHECK(end.face == Approx(degrees(std::atan(std::sin(lean)))).margin(1e-9));
    CHECK(end.bevel == Approx(degrees(std::asin(std::sin(lean) * std::sin(lean)))).margin(1e-9));
  }
}

// http://freeplantboxplans.com/plantbox_1.htm and http://www.howtodothings.com (compound-angle saw
// settings): four sides leaning 5 degrees, blade 44 3/4, gauge at 85 on a scale where 90 is square,
// floor edges bevelled 5.
TEST_CASE("a four-sided planter leaning 5 degrees, its floor with it") {
  const test::Built built =
      ring(4, 5, "mitre", "floor = { stock = \"panel\", underside_at = \"1/2\" }\n");
  REQUIRE(built.stops() == "");
  const Settings got = settings(built, "front", "mitre to right");
  CHECK(got.face == Approx(4.98).margin(0.005));
  CHECK(got.bevel == Approx(44.78).margin(0.005));
  for (const char* edge : {"edge to front", "edge to right", "edge to back", "edge to left"})
    CHECK(degrees(built.cut("floor", edge).bevel) == Approx(5));
  CHECK(degrees(built.cut("front", "foot edge").bevel) == Approx(5));
}

// https://wb8nbs.wordpress.com/2014/11/29/compound-angle-box-joints/ : 15 degrees, butted.
TEST_CASE("a flared tote with butted corners") {
  const test::Built butted = ring(4, 15, "butt", "through = [\"front\", \"back\"]\n");
  const Settings got = settings(butted, "right", "end against front");
  CHECK(got.face == Approx(14.51).margin(0.005));
  CHECK(got.bevel == Approx(3.84).margin(0.005));
  const test::Built mitred = ring(4, 15, "mitre");
  CHECK(settings(mitred, "front", "mitre to right").bevel == Approx(43.08).margin(0.005));
}

// https://www.woodworkingtalk.com/threads/question-re-multiple-angles.4097/ : 18 wide at the top,
// 10 at the foot, 14 high. The reply takes thicknesses off level and says 13 1/2 and 5 1/2 for a
// box inside with an even wall gap of 1 1/2 in 3/4 stock; square to the walls it is 13.32 and 5.32.
TEST_CASE("a tapered form, sizes level and along the slope") {
  const test::Built built = test::build(
      test::job() + test::sheet("panel", "3/4") +
      "[ring.r]\nplan = { front = 10, deep = 10 }\nheight = 14\nlean_out = \"4 in 14\"\nstock = "
      "\"panel\"\n");
  REQUIRE(built.stops() == "");
  CHECK(degrees(built.plan.assembly.angles.front().radians) == Approx(15.945).margin(0.0005));
  const Settings got = settings(built, "front", "mitre to right");
  CHECK(got.face == Approx(15.36).margin(0.005));
  CHECK(got.bevel == Approx(42.84).margin(0.005));
  const auto measure = [&](const std::string& name) {
    for (const parts::Measure& each : built.part("front").measures)
      if (each.name == name) return inches(each.mm);
    return 0.0;
  };
  CHECK(measure("outside, top") == Approx(18));
  CHECK(measure("outside, foot") == Approx(10));
  CHECK(measure("height, along the slope") == Approx(14.560).margin(0.0005));
  // A second ring whose outside lies 2.25 in square inside the first's outside.
  const test::Built inner = test::build(
      test::job() + test::sheet("panel", "2 1/4") +
      "[ring.r]\nplan = { front = 10, deep = 10 }\nheight = 14\nlean_out = \"4 in 14\"\nstock = "
      "\"panel\"\n");
  const auto inner_measure = [&](const std::string& name) {
    for (const parts::Measure& each : inner.part("front").measures)
      if (each.name == name) return inches(each.mm);
    return 0.0;
  };
  CHECK(inner_measure("inside, top") == Approx(13.32).margin(0.005));
  CHECK(inner_measure("inside, foot") == Approx(5.32).margin(0.005));
}

// http://idvwdesign.blogspot.com/2011/11/building-square-base-pyramid.html : ends that slope 22.5
// in the face belong to a lean of 24.47 (bevel 40.06); a lean of 22.5 gives 20.94 and 40.79.
TEST_CASE("a lean and the angle drawn on the face are not the same") {
  const Settings from_face = settings(ring(4, 24.4698, "mitre"), "front", "mitre to right");
  CHECK(from_face.face == Approx(22.5).margin(0.005));
  CHECK(from_face.bevel == Approx(40.06).margin(0.005));
  const Settings from_lean = settings(ring(4, 22.5, "mitre"), "front", "mitre to right");
  CHECK(from_lean.face == Approx(20.94).margin(0.005));
  CHECK(from_lean.bevel == Approx(40.79).margin(0.005));
}

// A saw manual (http://it.all-manuals.su/lobziki-i-pily/78981-ms-1065lz.html): moulding with a
// spring angle of 38 degrees in a right corner, laid flat: 31.62 and 33.85. At 45 degrees 35.26 and
// 30; a guide headed "45" (https://winenfood.com/your-saw-setup-for-45-degree-crown-molding) prints
// 38's.
TEST_CASE("leaning mouldings are rings too") {
  const Settings spring_38 = settings(ring(4, 38, "mitre"), "front", "mitre to right");
  CHECK(spring_38.face == Approx(31.62).margin(0.005));
  CHECK(spring_38.bevel == Approx(33.86).margin(0.01));
  const Settings spring_45 = settings(ring(4, 45, "mitre"), "front", "mitre to right");
  CHECK(spring_45.face == Approx(35.26).margin(0.005));
  CHECK(spring_45.bevel == Approx(30.00).margin(0.005));
}

TEST_CASE("neighbours that lean differently close without a gap") {
  for (const double lean : {-20.0, 0.0, 8.0, 25.0, 40.0}) {
    const test::Built built =
        ring(5, 12, "mitre", "[ring.r.side.\"side 2\"]\nlean_out = " + std::to_string(lean) + "\n");
    INFO("one side leans " << lean);
    REQUIRE(built.stops() == "");
    for (const fabrication::JointReport& joint : built.plan.joints) CHECK(joint.gap < 1e-6);
  }
}

TEST_CASE("a ring's own faults") {
  CHECK(ring(4, -75, "mitre").found("no-inside"));
  CHECK(ring(4, 5, "butt").found("unclear-corner"));
  CHECK(ring(4, 5, "mitre", "floor = { stock = \"panel\", underside_at = 4 }\n")
            .found("floor-too-high"));
}
