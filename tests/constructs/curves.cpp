// Curves: arched edges and rounded corners, against the circular segment of any handbook:
// radius = (c*c/4 + h*h) / (2*h), area = r*r*acos((r-h)/r) - (r-h)*sqrt(2*r*h - h*h).
#include <algorithm>
#include <cmath>
#include <numbers>

#include "constructs/curve.h"
#include "support/piece.h"

using namespace splay;

namespace {

double segment_area(double chord, double rise) {
  const double r = (chord * chord / 4 + rise * rise) / (2 * rise);
  return r * r * std::acos((r - rise) / r) - (r - rise) * std::sqrt(2 * r * rise - rise * rise);
}

std::string remark_of(const parts::Part& part, const std::string& start) {
  for (const std::string& remark : part.remarks)
    if (remark.starts_with(start)) return remark;
  return "";
}

const std::string table =
    "[table.t]\nheight = 700\nwidth = 900\ndepth = 500\nleg = { stock = \"leg\", width = 50 }\n";

std::string tabled(const std::string& rest) {
  return test::job("mm") + test::board("oak", "20 mm") + test::board("leg", "50 mm") +
         test::sheet("ply", "18 mm") + test::sheet("thin", "6 mm") + rest;
}

std::string framed(const std::string& rest) {
  return tabled(
      "[frame.f]\noutline = { bottom = 500, height = 700 }\nstock = \"oak\"\nwidth = "
      "60\ncorners = \"mortise and tenon\"\n" +
      rest);
}

// Sharp edges across the thickness within an arch in the lower edge: none, when it is one surface.
int facet_edges(const parts::Part& part, double chord, double rise) {
  int count = 0;
  for (const Edge& edge : part.body.boundary().edges)
    count += !edge.smooth && std::abs(edge.a.z - edge.b.z) > 1 && edge.a.y < rise + 0.5 &&
             std::abs(edge.a.x - part.size.x / 2) < chord / 2 - 0.5;
  return count;
}

}  // namespace

TEST_CASE("the radius of an arch from its chord and rise") {
  // Half a circle: the chord is the diameter. And a published pair of any workshop table: a chord
  // of 24 with a rise of 2 has a radius of 37 (plane geometry: 12*12 = 2 * (2*37 - 2)).
  CHECK(constructs::arch_radius(20, 10) == Approx(10));
  CHECK(constructs::arch_radius(24, 2) == Approx(37));
}

TEST_CASE("arched aprons: a true arc between the shoulders") {
  const std::string apron = "apron = { stock = \"oak\", width = 90";
  const test::Built plain = test::build(tabled(table + apron + " }\n"));
  const test::Built arched =
      test::build(tabled(table + apron + ", arch = { rise = 30, flat = 20 } }\n"));
  REQUIRE(arched.stops() == "");
  for (const std::string side : {"front", "right"}) {
    const parts::Part& part = arched.part(side + " apron");
    // The plan is measured over the legs, each 50.
    const double shoulders = (side == "front" ? 900 : 500) - 100.0, chord = shoulders - 40;
    const double taken = plain.part(side + " apron").body.volume() - part.body.volume();
    CHECK(taken == Approx(20 * segment_area(chord, 30)).epsilon(1e-3));
    const std::string remark = remark_of(part, "Arch in the lower edge");
    CHECK(remark.find("rises 30 mm over " + plain_number(chord, 1) + " mm") != std::string::npos);
    CHECK(facet_edges(part, chord, 30) == 0);
    // Every corner of it lies on the circle.
    const double radius = constructs::arch_radius(chord, 30), middle = part.size.x / 2;
    int on_arc = 0;
    for (const Face& face : part.body.boundary().faces)
      for (const Vec3& v : face.loops.front()) {
        if (!face.smooth) continue;
        CHECK(std::hypot(v.x - middle, v.y - (30 - radius)) == Approx(radius).margin(0.01));
        ++on_arc;
      }
    CHECK(on_arc > 20);
  }
}

TEST_CASE("arches that can't be are refused") {
  const auto refused = [](const std::string& arch) {
    return test::build(
               tabled(table + "apron = { stock = \"oak\", width = 90, arch = " + arch + " }\n"))
        .found("no-arch");
  };
  CHECK(refused("{ rise = 80 }"));
  CHECK(refused("{ rise = 30, flat = 400 }"));
  CHECK(refused("{ rise = 20, flat = 210 }"));
  CHECK_FALSE(refused("{ rise = 40 }"));
}

TEST_CASE("splayed tables and stretchers take arches too") {
  const std::string legs = GENERATE("3", "4", "6");
  const std::string plan = legs == "4"
                               ? "width = 420\ndepth = 340\nsplay = [\"8 deg\", \"6 deg\"]\n"
                               : "radius = 220\nlean = \"9 deg\"\n";
  const test::Built built = test::build(tabled(
      "[table.t]\nlegs = " + legs + "\nheight = 600\n" + plan +
      "leg = { stock = \"leg\", width = 45 }\napron = { stock = \"oak\", width = 70, arch = { rise "
      "= 15 } }\n[table.t.stretcher.low]\nstock = \"oak\"\nwidth = 40\nat = 150\narch = { rise = 8 "
      "}\n"));
  CAPTURE(legs);
  CHECK(built.stops() == "");
  for (const fabrication::JointReport& each : built.plan.joints) CHECK(each.gap < 1e-5);
  for (const parts::Part& part : built.plan.assembly.parts)
    if (part.name.find("apron") != std::string::npos || part.name.find("low") != std::string::npos)
      CHECK(remark_of(part, "Arch") != "");
}

TEST_CASE("an arched rail of a frame: sight edge curved, panel straight behind it") {
  const std::string top = "[frame.f.member.top]\nwidth = 90\narch = { rise = 25 }\n";
  const test::Built bare = test::build(framed("")), arched = test::build(framed(top));
  REQUIRE(arched.stops() == "");
  const double sight = 500 - 120;
  const test::Built broad = test::build(framed("[frame.f.member.top]\nwidth = 90\n"));
  CHECK(broad.part("top member").body.volume() - arched.part("top member").body.volume() ==
        Approx(20 * segment_area(sight, 25)).epsilon(1e-3));
  CHECK(bare.part("top member").size.y == Approx(60));

  for (const std::string held :
       {"panel = { stock = \"thin\", fit = \"groove\", into = 10, clearance "
        "= 2 }\n",
        "rebate = { width = 10, depth = 8 }\npanel = { stock = \"thin\", "
        "clearance = 2 }\n"}) {
    const test::Built panelled = test::build(framed(held + top));
    INFO(held);
    REQUIRE(panelled.stops() == "");
    for (const fabrication::JointReport& each : panelled.plan.joints) CHECK(each.gap < 1e-6);
    const parts::Part& panel = panelled.part("panel");
    // Higher by the rise, so that the arch never shows its edge.
    CHECK(panel.size.x == Approx(700 - 60 - 90 + 2 * (10 - 2) + 25));
    CHECK(panel.size.y == Approx(sight + 2 * (10 - 2)));
  }
  CHECK(test::build(framed("[frame.f.member.top]\narch = { rise = 50 }\n")).found("no-arch"));
  CHECK(
      test::build(framed("rebate = { width = 10, depth = 8 }\n[frame.f.member.top]\narch = { rise "
                         "= 50 }\n"))
          .found("rebate-too-large"));
}

TEST_CASE("arched members of a face frame and its rails") {
  const std::string body =
      "[case.c]\noutline = { bottom = 700, height = 800, lean_in = [\"5 deg\"] }\ndepth = "
      "300\nstock = \"ply\"\n[case.c.frame]\nstock = \"oak\"\nwidth = 50\n";
  const std::string rail = "[case.c.frame.rail.mid]\nat = 450\n";
  const test::Built plain =
      test::build(tabled(body + "[case.c.frame.member.bottom]\nwidth = 70\n" + rail));
  const test::Built arched = test::build(
      tabled(body + "[case.c.frame.member.bottom]\nwidth = 70\narch = { rise = 20, flat = 50 }\n" +
             rail + "arch = { rise = 18 }\n"));
  REQUIRE(arched.stops() == "");
  const auto taken = [&](const std::string& part) {
    return plain.part(part).body.volume() - arched.part(part).body.volume();
  };
  // Along the sight edge: 70 up at the foot, and 50 of width measured square to the leaning sides.
  const double t = std::tan(Angle::degrees(5).rad), c = std::cos(Angle::degrees(5).rad);
  const auto inside = [&](double z) { return 700 - 2 * z * t - 2 * 50 / c; };
  CHECK(taken("frame bottom") == Approx(20 * segment_area(inside(70) - 100, 20)).epsilon(1e-3));
  CHECK(taken("frame mid rail") == Approx(20 * segment_area(inside(400), 18)).epsilon(1e-3));
}

TEST_CASE("boards with round corners") {
  const std::string board =
      "[board.b]\nat = [0, 0, 0]\nstock = \"oak\"\nlength = 400\nwidth = 150\nrise = \"30 deg\"\n";
  const test::Built built = test::build(tabled(board + "corner_radius = 25\n"));
  REQUIRE(built.stops() == "");
  const double taken = 400.0 * 150 * 20 - built.part("b").body.volume();
  CHECK(taken == Approx(20 * (4 - std::numbers::pi) * 25 * 25).epsilon(2e-3));
  CHECK(built.part("b").size.x == Approx(400));
  CHECK(remark_of(built.part("b"), "Corners to a radius of 25 mm") != "");
  CHECK(test::build(tabled(board + "corner_radius = 75\n")).found("radius-too-large"));
}
