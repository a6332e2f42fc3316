// Published saw settings and frame charts, each read off a piece that was built; plain vectors
// where neighbours differ.
#include <cmath>
#include <numbers>

#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

namespace {

constexpr double pi = std::numbers::pi;

std::string text_of(double value) { return plain_number(value, 9); }

test::Built ring(const std::string& plan, double lean, const std::string& more) {
  return test::build(test::job() + test::sheet("panel", "1/2") + "[ring.r]\nplan = " + plan +
                     "\nheight = 2\nlean_out = " + text_of(lean) + "\nstock = \"panel\"\n" + more);
}

std::string regular(int sides) {
  return "{ sides = " + std::to_string(sides) + ", across_flats = 20 }";
}

}  // namespace

// The frame charts of compound-mitre-saw manuals: 4 to 10 sides are cut at these angles.
TEST_CASE("flat frames of 4 to 10 sides: the chart of the saw manuals") {
  const double chart[] = {45, 36, 30, 25.7, 22.5, 20, 18};
  for (int n = 4; n <= 10; ++n) {
    INFO(n << " sides");
    const test::Built built =
        test::build(test::job() + test::board("oak", "3/4") + "[frame.f]\noutline = { sides = " +
                    std::to_string(n) + ", side = 10, names = [" +
                    [n] {
                      std::string names;
                      for (int i = 1; i <= n; ++i)
                        names += (i > 1 ? ", \"s" : "\"s") + std::to_string(i) + "\"";
                      return names;
                    }() +
                    "] }\nwidth = 2\nstock = \"oak\"\n");
    REQUIRE(built.stops() == "");
    const fabrication::CutReport& cut = built.cut("s1 member", "mitre to s2 member");
    CHECK(degrees(cut.face_angle) == Approx(chart[n - 4]).margin(0.05));
    CHECK(cut.bevel == Approx(0).margin(1e-9));
    CHECK(built.row("s1 member").quantity() == static_cast<std::size_t>(n));
  }
}

// The same manuals' worked example: a four-sided box whose sides slope 26 degrees from level is
// read off the chart as mitre 42, bevel 18.
TEST_CASE("a box with sides 26 degrees from level") {
  const test::Built built = ring(regular(4), 64, "");
  REQUIRE(built.stops() == "");
  const fabrication::CutReport& cut = built.cut("front", "mitre to right");
  CHECK(degrees(cut.face_angle) == Approx(42).margin(0.5));
  CHECK(degrees(cut.bevel) == Approx(18).margin(0.5));
}

// A workshop article on a square pyramid with sides of 60 degrees (2008, from memory): 63.43 from
// the base edge, hips that rise 50.77 and 104.48 between the faces.
TEST_CASE("a square pyramid with sides sloping 60 degrees") {
  const test::Built built = ring(regular(4), -30, "");
  REQUIRE(built.stops() == "");
  const fabrication::CutReport& cut = built.cut("front", "mitre to right");
  CHECK(90 - degrees(cut.face_angle) == Approx(63.43).margin(0.006));
  CHECK(180 - 2 * degrees(cut.bevel) == Approx(104.48).margin(0.006));
  // The hip is the front's outer arris at the corner: from the solid's vertices.
  const parts::Part& front = built.part("front");
  Vec3 foot{-1e9, 0, 0}, head = foot;
  for (const Vec3& v : front.world.vertices()) {
    if (v.z < 1e-6 && v.x > foot.x) foot = v;
    if (v.z > 2 * 25.4 - 1e-6 && v.x > head.x) head = v;
  }
  const Vec3 hip = head - foot;
  CHECK(degrees(std::atan2(hip.z, std::hypot(hip.x, hip.y))) == Approx(50.77).margin(0.006));
}

// D. L. Snyder and B. Gottesman, "Compound-Angle Joinery" (technical note, rev. 4, 2015): butted
// corners have the mitred ones' face angle and a tilt off square of
// 90 - acos(cos^2 S + sin^2 S cos 2p), S the slope from level, 2p the turn from side to side.
TEST_CASE("butted rings of 4 to 12 sides, leaning 0 to 60 degrees") {
  for (int n = 4; n <= 12; n += 2) {
    std::string through = "corners = \"butt\"\nthrough = [";
    for (int i = 1; i <= n; i += 2)
      through += n == 4 ? (i == 1 ? "\"front\"" : ", \"back\"")
                        : (i == 1 ? "" : ", ") + ("\"side " + std::to_string(i)) + "\"";
    through += "]\n";
    for (const double lean : {0.0, 5.0, 10.0, 15.0, 20.0, 30.0, 45.0, 60.0}) {
      INFO(n << " sides leaning " << lean);
      const test::Built built = ring(regular(n), lean, through);
      REQUIRE(built.stops() == "");
      const double t = Angle::degrees(lean).rad, p = pi / n;
      const fabrication::CutReport& cut = n == 4 ? built.cut("right", "end against front")
                                                 : built.cut("side 2", "end against side 1");
      const double s = std::sin(t) * std::sin(t), c = std::cos(t) * std::cos(t);
      CHECK(degrees(cut.face_angle) == Approx(degrees(std::atan(std::sin(t) * std::tan(p)))));
      CHECK(degrees(cut.bevel) ==
            Approx(std::abs(90 - degrees(std::acos(s + c * std::cos(2 * p))))).margin(1e-7));
    }
  }
  // Round an odd number of sides through and butting ones can't take turns.
  CHECK(ring(regular(5), 10, "corners = \"butt\"\nthrough = [\"side 1\", \"side 3\"]\n")
            .found("unclear-corner"));
}

// Mouldings in corners of any angle c with a spring angle s, laid flat: tan M = sin s / tan(c / 2),
// sin B = cos s cos(c / 2); the same note, and the 90-degree rows of two saw manuals: 31.62 and
// 33.85 (another rounds to 31.6 and 33.9), 35.3 and 30.
TEST_CASE("leaning sides in corners of 60 to 135 degrees") {
  for (const double spring : {38.0, 45.0, 52.0}) {
    for (const double corner : {60.0, 80.0, 85.0, 88.0, 90.0, 92.0, 95.0, 100.0, 120.0, 135.0}) {
      INFO("spring " << spring << ", corner " << corner);
      const double half = Angle::degrees(corner / 2).rad;
      // A triangle with that corner at the back.
      const double across = 20 * std::sin(half), deep = 20 * std::cos(half);
      const test::Built built = ring("{ corners = [[0, 0], [" + text_of(2 * across) + ", 0], [" +
                                         text_of(across) + ", " + text_of(deep) + "]] }",
                                     spring, "");
      REQUIRE(built.stops() == "");
      const fabrication::CutReport& cut = built.cut("side 2", "mitre to side 3");
      const double s = Angle::degrees(spring).rad;
      CHECK(degrees(cut.face_angle) == Approx(degrees(std::atan(std::sin(s) / std::tan(half)))));
      CHECK(degrees(cut.bevel) == Approx(degrees(std::asin(std::cos(s) * std::cos(half)))));
      if (corner == 90 && spring == 38) {
        CHECK(degrees(cut.face_angle) == Approx(31.62).margin(0.006));
        CHECK(degrees(cut.bevel) == Approx(33.85).margin(0.015));
      }
    }
  }
}

// Plain vectors: the arris of two faces is the cross product of their normals, the face angle is
// between it and the level edge, and boards of one thickness halve the angle between the normals.
TEST_CASE("neighbours that lean differently: each end its own face angle, one bevel") {
  for (const double one : {0.0, 5.0, 20.0, 45.0}) {
    for (const double other : {-15.0, 0.0, 10.0, 30.0, 60.0}) {
      INFO("leaning " << one << " and " << other);
      const test::Built built = ring("{ front = 30, deep = 26 }", one,
                                     "[ring.r.side.right]\nlean_out = " + text_of(other) + "\n");
      REQUIRE(built.stops() == "");
      const double a = Angle::degrees(one).rad, b = Angle::degrees(other).rad;
      const Vec3 front{0, -std::cos(a), -std::sin(a)}, right{std::cos(b), 0, -std::sin(b)};
      const Vec3 arris = unit(cross(front, right));
      const auto off = [&](Vec3 edge) {
        return std::abs(90 - degrees(angle_between(arris, edge)));
      };
      const fabrication::CutReport& from_front = built.cut("front", "mitre to right");
      const fabrication::CutReport& from_right = built.cut("right", "mitre to front");
      CHECK(degrees(from_front.face_angle) == Approx(off({1, 0, 0})).margin(1e-7));
      CHECK(degrees(from_right.face_angle) == Approx(off({0, 1, 0})).margin(1e-7));
      const double bevel = degrees(angle_between(front, right)) / 2;
      CHECK(degrees(from_front.bevel) == Approx(bevel).margin(1e-7));
      CHECK(degrees(from_right.bevel) == Approx(bevel).margin(1e-7));
      for (const fabrication::JointReport& joint : built.plan.joints) CHECK(joint.gap < 1e-6);
    }
  }
}

// Plane trigonometry: members w1 and w2 wide at a corner k share the mitre from the outer to the
// inner corner; tan a1 = sin k / (w2 / w1 + cos k), a1 between the mitre and the first one's edge.
TEST_CASE("frame members of unequal width at corners that aren't square") {
  for (const double lean : {0.0, 10.0, 25.0}) {
    for (const double width : {1.5, 2.0, 3.0, 4.0}) {
      INFO("lean " << lean << ", bottom " << width << " wide");
      const test::Built built = test::build(
          test::job() + test::board("oak", "3/4") +
          "[frame.f]\noutline = { bottom = 40, height = 24, lean_in = [" + text_of(lean) +
          "] }\nwidth = 2\nstock = \"oak\"\n[frame.f.member.bottom]\nwidth = " + text_of(width) +
          "\n");
      REQUIRE(built.stops() == "");
      const double k = Angle::degrees(90 - lean).rad;
      const double a1 = std::atan2(std::sin(k), width / 2 + std::cos(k));
      CHECK(degrees(built.cut("left member", "mitre to bottom member").face_angle) ==
            Approx(std::abs(90 - degrees(a1))).margin(1e-7));
      CHECK(degrees(built.cut("bottom member", "mitre to left member").face_angle) ==
            Approx(std::abs(90 - degrees(k - a1))).margin(1e-7));
    }
  }
}

// Plane trigonometry: a stile between level members has square ends wherever it stands; a rail
// between leaning ones is cut at the lean and is as long as the opening is wide there.
TEST_CASE("mid stiles and mid rails of a face frame on a trapezoid") {
  const test::Built built = test::build(
      test::job() + test::sheet("panel", "3/4") + test::board("oak", "3/4") +
      "[case.c]\noutline = { bottom = 40, height = 30, lean_in = [12, 7] }\ndepth = 12\nstock = "
      "\"panel\"\n[case.c.frame]\nstock = \"oak\"\nwidth = 2\n[case.c.frame.rail.mid]\nat = "
      "16\nwidth = 1.5\n[case.c.frame.stile.low]\nat = 18\nwidth = 1.75\nbetween = [\"bottom\", "
      "\"mid\"]\n[case.c.frame.stile.edge]\nat = 14\nbetween = [\"mid\", \"top\"]\n");
  REQUIRE(built.stops() == "");
  const parts::Part& low = built.part("frame low stile");
  CHECK(inches(low.size.x) == Approx(16 - 1.5 - 2));
  CHECK(inches(low.size.y) == Approx(1.75));
  CHECK(inches(low.world.bounds().low.x) == Approx(18 - 0.875));
  CHECK(inches(built.part("frame edge stile").size.x) == Approx(30 - 2 - 16));
  for (const char* stile : {"frame low stile", "frame edge stile"})
    for (const fabrication::CutReport& cut : built.row(stile).cuts) {
      CHECK(cut.face_angle == Approx(0).margin(1e-9));
      CHECK(cut.bevel == Approx(0).margin(1e-9));
    }
  const auto tangent = [](double angle) { return std::tan(Angle::degrees(angle).rad); };
  const auto level = [](double angle) { return 2 / std::cos(Angle::degrees(angle).rad); };
  const auto opening = [&](double z) {
    return 40 - z * (tangent(12) + tangent(7)) - level(12) - level(7);
  };
  const fabrication::PartRow& rail = built.row("frame mid rail");
  CHECK(inches(rail.finished.x) == Approx(opening(14.5)));
  CHECK(inches(built.part("frame mid rail").body.volume()) / (25.4 * 25.4) ==
        Approx(0.75 * 1.5 * (opening(14.5) + opening(16)) / 2));
  CHECK(degrees(built.cut("frame mid rail", "end against frame left").face_angle) == Approx(12));
  CHECK(degrees(built.cut("frame mid rail", "end against frame right").face_angle) == Approx(7));
  for (const fabrication::JointReport& joint : built.plan.joints) CHECK(joint.gap < 1e-6);
}

// A stile that meets a leaning member follows it: from the side's lean and its own place.
TEST_CASE("a stile that runs up into a leaning member") {
  const test::Built built = test::build(
      test::job() + test::sheet("panel", "3/4") + test::board("oak", "3/4") +
      "[case.c]\noutline = { corners = [[0, 0], [40, 0], [40, 30], [20, 36], [0, 30]] }\ndepth = "
      "12\nstock = \"panel\"\n[case.c.frame]\nstock = \"oak\"\nwidth = "
      "2\n[case.c.frame.stile.s]\nat "
      "= 10\n");
  REQUIRE(built.stops() == "");
  // The roof rises 6 in 20; its member's inside lies 2 in square below.
  const double slope = 6.0 / 20, drop = 2 * std::hypot(1, slope);
  const auto under = [&](double x) { return 30 + slope * x - drop; };
  const parts::Part& stile = built.part("frame s stile");
  CHECK(inches(stile.size.x) == Approx(under(11) - 2));
  for (const fabrication::CutReport& cut : built.row("frame s stile").cuts)
    if (cut.name.find("end against frame side") == 0 && cut.face_angle > 1e-6)
      CHECK(degrees(cut.face_angle) == Approx(degrees(std::atan(slope))));
  CHECK(inches(stile.body.volume()) / (25.4 * 25.4) == Approx(0.75 * 2 * (under(10) - 2)));
}

// Plane geometry: a partition's housing is cut through a shelf and its nosing alike.
TEST_CASE("a partition housed in a shelf with a nosing") {
  const test::Built built = test::build(
      test::job("mm") + test::sheet("panel", "18 mm") + test::board("lip", "5 mm") +
      "[case.c]\noutline = { bottom = 800, height = 900 }\ndepth = 300\nstock = \"panel\"\n"
      "[case.c.shelf.s]\ntop_at = 400\nends = { housing = 6 }\nfront = { edge = \"nosing\", stock "
      "= "
      "\"lip\" }\n[case.c.partition.p]\ncentre_at = 400\nbetween = [\"bottom\", \"s\"]\nlower = { "
      "housing = 6 }\nupper = { housing = 6 }\nfront = { edge = \"nosing\", stock = \"lip\" }\n");
  REQUIRE(built.stops() == "");
  const double whole = (800 - 36 + 12) * 18 * 5;
  CHECK(built.part("s shelf nosing").body.volume() == Approx(whole - 18 * 6 * 5));
  CHECK(built.part("p partition nosing").size.x == Approx(400 - 18 - 18 + 12));
}
