// Cabinets on stands, stands on rings of legs and splayed tables from a seed, measured on the
// finished pieces; the second witness is plain vectors between the middles of the legs.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/audit.h"
#include "support/chance.h"
#include "support/mirror.h"
#include "support/piece.h"

using namespace splay;
using test::Chance;
using test::degrees;
using test::tan_deg;

namespace {

std::string num(double value) { return plain_number(value, 12); }
std::string deg(double angle) { return "\"" + num(angle) + " deg\""; }

void check_closed(const test::Built& built) {
  REQUIRE(built.stops() == "");
  test::check_joints_closed(built);
  test::check_no_clash(built);
}

double crossing(const test::Built& built, const std::string& name) {
  for (const fabrication::JointReport& each : built.plan.joints)
    if (each.name == name) return degrees(each.dihedral);
  FAIL("no joint named " << name);
  return 0;
}

double acute(Vec3 a, Vec3 b) {
  const double angle = degrees(angle_between(a, b));
  return std::min(angle, 180 - angle);
}

// A cabinet on a stand: legs 25.4 mm wide at the foot and 76.2 mm at the top, their outside going
// on at the cabinet's lean.
struct CabinetSizes {
  double width, depth, high, under, left, right, at, other_at;
  const char* taper;
  bool in_plan;
  // The middle of a leg at a height over the floor; the cabinet's foot is at `under`.
  Vec3 middle(bool at_right, bool at_back, double z) const {
    const double share = z / under, leg = 25.4 + (76.2 - 25.4) * share;
    const double x = at_right ? width + (under - z) * tan_deg(right) - leg / 2
                              : -(under - z) * tan_deg(left) + leg / 2;
    return {x, at_back ? depth - 16 : 16, z - under};
  }
};

std::string write(const CabinetSizes& s) {
  std::string text =
      test::job("mm") + test::sheet("panel", "18 mm") + test::board("leg", "32 mm") +
      test::board("brace", "18 mm") + "[case.c]\noutline = { bottom = " + num(s.width) +
      ", height = " + num(s.high) + ", lean_in = [" + deg(s.left) + ", " + deg(s.right) +
      "] }\ndepth = " + num(s.depth) +
      "\nstock = \"panel\"\n[stand.s]\nunder = \"c\"\nheight = " + num(s.under) +
      "\n[stand.s.leg]\nstock = \"leg\"\ntop_width = 76.2\nfoot_width = "
      "25.4\ntaper = \"" +
      s.taper + "\"\n[stand.s.brace.x]\nstock = \"brace\"\nwidth = 36\nat = " + num(s.at) + "\n";
  text += s.in_plan ? "crossed = \"in plan\"\n"
                    : "crossed = \"in elevation\"\nother_at = " + num(s.other_at) + "\n";
  for (const char* runs : {"front and back", "left and right"})
    text +=
        std::string("[stand.s.brace.") + (runs[0] == 'f' ? "rail" : "tie") +
        "]\nstock = \"brace\"\nwidth = 40\nat = " + num(s.under * (runs[0] == 'f' ? 0.93 : 0.8)) +
        "\nruns = \"" + runs + "\"\n";
  return text;
}

void check_cabinet(const CabinetSizes& s) {
  const std::string text = write(s);
  INFO(text);
  const test::Built built = test::build(text);
  check_closed(built);
  const double wanted =
      s.in_plan ? acute(s.middle(true, true, s.at) - s.middle(false, false, s.at),
                        s.middle(true, false, s.at) - s.middle(false, true, s.at))
                : acute(s.middle(true, false, s.other_at) - s.middle(false, false, s.at),
                        s.middle(true, false, s.at) - s.middle(false, false, s.other_at));
  CHECK(crossing(built, s.in_plan ? "s x right to s x left"
                                  : "s front x falling to s front x rising") == Approx(wanted));
  // The legs' outsides lie in the planes of the cabinet's.
  for (const char* side : {"left", "right"}) {
    const parts::Part& panel = built.part(std::string("c ") + side + " panel");
    const Plane outside = panel.place.plane({{0, 0, 1}, panel.size.z});
    for (const char* where : {" front leg", " back leg"}) {
      const parts::Part& leg = built.part(std::string("s ") + side + where);
      CHECK(outside.distance(leg.world.vertices()[0]) < 1e-6);
      CHECK(leg.world.extent(outside.n)[1] == Approx(outside.d).margin(1e-6));
      CHECK(leg.world.bounds().high.z == Approx(0).margin(1e-9));
    }
  }
}

}  // namespace

TEST_CASE(
    "a cabinet on a stand with crossed braces: every lap closes, the crossing is the plan's") {
  for (const bool in_plan : {true, false})
    for (const char* taper : {"inside", "outside", "both"})
      check_cabinet({914.4, 381, 635, 558.8, 7, 7, 140, 380, taper, in_plan});
}

TEST_CASE("twenty random cabinets on stands") {
  constexpr unsigned seed = 20261101;
  Chance chance(seed);
  const char* tapers[] = {"inside", "outside", "both"};
  for (int i = 0; i < 20; ++i) {
    CabinetSizes s{};
    s.width = chance.between(700, 1200);
    s.depth = chance.between(320, 500);
    s.high = chance.between(400, 700);
    s.under = chance.between(450, 700);
    s.left = chance.between(-4, 12);
    s.right = chance.coin() ? s.left : chance.between(-4, 12);
    s.at = chance.between(0.15, 0.3) * s.under;
    s.other_at = chance.between(0.5, 0.62) * s.under;
    s.taper = tapers[i % 3];
    s.in_plan = chance.coin();
    INFO("seed " << seed << ", cabinet " << i);
    check_cabinet(s);
  }
}

TEST_CASE("thirty random stands on a ring of legs") {
  constexpr unsigned seed = 20261102;
  Chance chance(seed);
  for (int i = 0; i < 30; ++i) {
    const int drawn = static_cast<int>(chance.between(3, 9)), count = drawn == 4 ? 5 : drawn;
    const double height = chance.between(350, 700), radius = chance.between(250, 420);
    const double lean = chance.between(-4, 9), top = chance.between(45, 70);
    const double foot = chance.between(25, 45), low = chance.between(0.2, 0.4) * height;
    const bool at_top = chance.coin();
    // Legs are counted anticlockwise from the front: a mirror counts them the other way round.
    const auto text = [&](const std::string& unit, bool mirrored) {
      const auto mm = [&](double length) {
        return num(unit == "mm" ? length : length / Length::mm_per_inch);
      };
      std::string piece =
          test::job(unit) + test::board("leg", "30 mm") + test::board("thin", "16 mm") +
          "[stand.s]\nlegs = " + std::to_string(count) + "\nheight = " + mm(height) +
          "\nradius = " + mm(radius) + "\nlean_in = [" + deg(lean) + "]\nstated_at = \"" +
          (at_top ? "top" : "foot") + "\"\n[stand.s.leg]\nstock = \"leg\"\n" +
          "top_width = " + mm(top) + "\nfoot_width = " + mm(foot) + "\n";
      const auto named = [&](int leg) {
        return "\"leg " + std::to_string(mirrored ? (count + 1 - leg) % count + 1 : leg) + "\"";
      };
      for (int leg = 1; leg < count; ++leg)
        piece += "[stand.s.brace.b" + std::to_string(leg) +
                 "]\nstock = \"thin\"\nwidth = " + mm(34) +
                 "\nat = " + mm(low + (leg % 2 == 0 ? 60 : 0)) + "\nbetween = [" + named(leg) +
                 ", " + named(leg + 1) + "]\n";
      return piece;
    };
    INFO("seed " << seed << ", stand " << i << "\n" << text("mm", false));
    const test::Built built = test::build(text("mm", false));
    check_closed(built);
    // Chords of a regular plan: the middles of neighbouring legs at the brace's height.
    const auto middle_radius = [&](double z) {
      const double level = at_top ? height : 0;
      return radius - (z - level) * tan_deg(lean) - (foot + (top - foot) * z / height) / 2;
    };
    for (int leg = 1; leg < count; ++leg) {
      const parts::Part& brace = built.part("b" + std::to_string(leg));
      const double z = low + (leg % 2 == 0 ? 60 : 0);
      for (const parts::Measure& each : brace.measures)
        if (each.name == "between the middles of the legs")
          CHECK(each.mm == Approx(2 * middle_radius(z) * std::sin(std::numbers::pi / count)));
    }
    test::check_mirrored(built, test::build(text("mm", true)));
    const test::Built inches = test::build(text("in", false));
    REQUIRE(inches.plan.assembly.parts.size() == built.plan.assembly.parts.size());
    for (std::size_t p = 0; p < built.plan.assembly.parts.size(); ++p)
      CHECK(built.plan.assembly.parts[p].body.volume() ==
            Approx(inches.plan.assembly.parts[p].body.volume()).epsilon(1e-8));
  }
}

// tan R = sqrt(tan2 a + tan2 b), the sight line at atan(tan b / tan a): chair makers' formulas,
// from memory; and the same by the direction of the finished leg.
TEST_CASE("forty random splayed tables: the finished legs lean as stated") {
  constexpr unsigned seed = 20261103;
  Chance chance(seed);
  for (int i = 0; i < 40; ++i) {
    const double a = chance.between(0, 16), b = chance.between(0, 16);
    const double height = chance.between(400, 760), width = chance.between(700, 1100);
    const double depth = chance.between(500, 800), leg = chance.between(38, 60);
    const bool at_foot = chance.coin(), trued = chance.coin();
    const std::string text =
        test::job("mm") + test::board("leg", "120 mm") + test::board("oak", "20 mm") +
        "[table.t]\nheight = " + num(height) + "\nwidth = " + num(width) +
        "\ndepth = " + num(depth) + "\nsplay = [" + deg(a) + ", " + deg(b) + "]\nstated_at = \"" +
        (at_foot ? "foot" : "top") + "\"\n[table.t.leg]\nstock = \"leg\"\nwidth = " + num(leg) +
        "\nsection = \"" + (trued ? "trued" : "square") +
        "\"\n[table.t.apron]\nstock = \"oak\"\nwidth = 70\n";
    INFO("seed " << seed << ", table " << i << "\n" << text);
    const test::Built built = test::build(text);
    check_closed(built);
    Box stated;
    for (const char* name :
         {"left front leg", "right front leg", "right back leg", "left back leg"}) {
      const parts::Part& part = built.part(name);
      const Vec3 d = part.place.ex.z < 0 ? -part.place.ex : part.place.ex;
      CHECK(std::abs(d.x / d.z) == Approx(tan_deg(a)).margin(1e-9));
      CHECK(std::abs(d.y / d.z) == Approx(tan_deg(b)).margin(1e-9));
      CHECK(degrees(std::acos(d.z)) ==
            Approx(degrees(std::atan(std::hypot(tan_deg(a), tan_deg(b))))).margin(1e-6));
      for (const Vec3& v : part.world.vertices())
        if (std::abs(v.z - (at_foot ? 0 : height)) < 1e-6) stated.add(v);
    }
    CHECK(stated.size().x == Approx(width));
    CHECK(stated.size().y == Approx(depth));
    // Sections: square across the leg, or level.
    const parts::Part& part = built.part("left front leg");
    if (!trued) {
      CHECK(part.size.y == Approx(leg));
      CHECK(part.size.z == Approx(leg));
    }
  }
}
