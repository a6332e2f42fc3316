// Dowels, loose tenons, splines and screws.
#include <cmath>

#include "joinery/bench.h"
#include "joinery/dowel.h"
#include "joinery/glued.h"
#include "joinery/loose_tenon.h"
#include "joinery/screw.h"
#include "joinery/spline.h"

using namespace splay;
using joinery::BedOn;
using joinery::DowelKind;
using joinery::LooseTenonKind;
using joinery::ScrewKind;
using joinery::SplineKind;
using test::Bench;
using test::deg;
using test::give;
using test::Tee;

namespace {

double host_volume(const Tee& tee) { return tee.host_width * tee.host_thickness * tee.host_length; }
double guest_volume(const Tee& tee) {
  return tee.guest_width * tee.guest_thickness * tee.guest_length;
}

// Chords 0.01 mm off the circle at most: the faceted hole is that much smaller, never larger.
void check_round(double lost, double diameter, double depth) {
  const double r = diameter / 2, whole = std::numbers::pi * r * r * depth;
  CHECK(lost < whole);
  CHECK(lost > whole * std::pow(1 - 0.01 / r, 2));
}

int smooth_edges(const parts::Part& part) {
  int count = 0;
  for (const Edge& edge : part.body.boundary().edges) count += edge.smooth;
  return count;
}

Tee rail(double lean = 0) {
  Tee tee;
  tee.guest_width = 60;
  tee.host_width = 60;
  tee.lean = lean;
  return tee;
}

// Two boards that lie on each other; the guest on top.
Bench stack(double host_thick, double guest_thick) {
  Bench bench;
  bench.bar("host", frame({0, 0, -host_thick / 2}, {1, 0, 0}, {0, 0, 1}), -200, 200, 80,
            host_thick);
  bench.bar("guest", frame({0, 0, guest_thick / 2}, {0, 1, 0}, {0, 0, 1}), -200, 200, 60,
            guest_thick);
  return bench;
}

}  // namespace

TEST_CASE("dowels: holes in both parts, fittings with their place") {
  for (const double lean : {0.0, 15 * deg}) {
    const Tee tee = rail(lean);
    DowelKind kind;
    const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
    // A third of 20 mm is nearest to a dowel of 6 mm; two diameters deep and 1/16 in of room.
    const double depth = 12 + 25.4 / 16;
    check_round((host_volume(tee) - made.part("host").body.volume()) / 2, 6, depth);
    check_round((guest_volume(tee) - made.part("guest").body.volume()) / 2, 6, depth);
    CHECK(smooth_edges(made.part("host")) > 2 * 20);
    REQUIRE(made.assembly.fittings.size() == 2);
    const parts::Fitting& dowel = made.assembly.fittings.front();
    CHECK(dowel.kind == "dowel");
    CHECK(dowel.size == "6 x 24 mm");
    CHECK(dowel.joint == made.joint().name);
    CHECK(dowel.parts == std::vector<int>{1, 0});
    // Half of it on either side of the host's face, square to it.
    CHECK(std::abs(dowel.at.y - 30) == Approx(12));
    CHECK(dowel.axis.y == Approx(-1));
    CHECK(norm(made.assembly.fittings[1].at - dowel.at) == Approx(30 / std::cos(lean)));
  }
}

TEST_CASE("dowels along a leaning part, and in a mitre") {
  DowelKind kind;
  give(kind.diameter, 8);
  SECTION("along the part") {
    kind.line.value = joinery::FastenerLine::along_guest;
    const test::Made made = test::make_sound(test::lay(rail(15 * deg)), kind, 0, 1);
    CHECK(angle_between(made.assembly.fittings[0].axis, made.part("guest").place.ex) < 1e-9);
  }
  SECTION("in a mitre") {
    kind.on.value = BedOn::mitre;
    give(kind.embed, 12);
    Bench bench;
    bench.bar("host", {}, -100, 300, 60, 25);
    bench.bar("guest", frame({}, {std::cos(80 * deg), std::sin(80 * deg), 0}, {0, 0, 1}), -100, 300,
              60, 25);
    const test::Made made = test::make_sound(std::move(bench), kind, 0, 1);
    CHECK(made.assembly.fittings.size() == 2);
  }
}

TEST_CASE("loose tenons: round and square ends") {
  for (const bool round : {true, false}) {
    const Tee tee = rail(15 * deg);
    LooseTenonKind kind;
    give(kind.thickness, 6);
    give(kind.width, 30);
    give(kind.embed, 20);
    kind.bottom_gap.value = {1};
    kind.round_ends.value = round;
    const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
    const double lost = host_volume(tee) - made.part("host").body.volume();
    if (round)
      check_round(lost - 6 * 24 * 21, 6, 21);
    else
      CHECK(lost == Approx(6 * 30 * 21));
    CHECK(guest_volume(tee) - made.part("guest").body.volume() == Approx(lost).epsilon(1e-6));
    CHECK((smooth_edges(made.part("host")) > 0) == round);
    REQUIRE(made.assembly.fittings.size() == 1);
    CHECK(made.assembly.fittings[0].size == "6 x 30 x 40 mm");
  }
}

TEST_CASE("spline: through a mitre and stopped") {
  for (const double stop : {0.0, 16.0}) {
    Bench bench;
    const double angle = 75 * deg;
    bench.bar("host", {}, -100, 300, 60, 18);
    bench.bar("guest", frame({}, {std::cos(angle), std::sin(angle), 0}, {0, 0, 1}), -100, 300, 60,
              18);
    SplineKind kind;
    give(kind.width, 20);
    kind.bottom_gap.value = {0.5};
    if (stop > 0) give(kind.stopped, stop);
    const test::Made made = test::make_sound(std::move(bench), kind, 0, 1);
    const double mouth = 60 / std::sin(angle / 2);
    const parts::Fitting& spline = made.assembly.fittings.front();
    CHECK(spline.length == Approx(mouth - 2 * stop));
    CHECK(spline.diameter == Approx(6));
    const double lost = 60 * 18 * 300 - made.part("host").body.volume();
    // Run out, the slot is as long at its bottom as at its mouth: both sides slope alike.
    CHECK(lost == Approx(6 * 10.5 * (mouth - 2 * stop)));
    CHECK(made.operation("host", "slot for the spline to guest").kind ==
          parts::OperationKind::groove);
  }
}

TEST_CASE("screws: through a board into another's end, and boards that lie on each other") {
  SECTION("into an end") {
    Tee tee = rail(15 * deg);
    tee.host_width = 20;
    ScrewKind kind;
    const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
    REQUIRE(made.assembly.fittings.size() == 2);
    const parts::Fitting& screw = made.assembly.fittings.front();
    // Gauge 8: 0.164 in. 20 mm and seven shanks are 49.2 mm: two inches.
    CHECK(screw.diameter == Approx(0.164 * 25.4));
    CHECK(screw.length == Approx(50.8));
    CHECK(screw.size == "#8 x 50.8 mm");
    CHECK(screw.at.y == Approx(-10));
    CHECK(screw.axis.y == Approx(1));
    CHECK(screw.parts == std::vector<int>{0, 1});
    check_round((guest_volume(tee) - made.part("guest").body.volume()) / 2,
                0.164 * 25.4 * 2 / 3 * 0.9, 30.8);
  }
  SECTION("lying on each other, from either side") {
    for (const auto through : {joinery::ScrewThrough::host, joinery::ScrewThrough::guest}) {
      ScrewKind kind;
      kind.on.value = BedOn::touching;
      kind.through.value = through;
      kind.countersink.value = false;
      give(kind.length, 30);
      const test::Made made = test::make_sound(stack(18, 18), kind, 0, 1);
      const bool host = through == joinery::ScrewThrough::host;
      const parts::Fitting& screw = made.assembly.fittings.front();
      CHECK(screw.at.z == Approx(host ? -18 : 18));
      CHECK(made.joint().name == "guest to host, screw");
      const double first = (host ? 80 : 60) * 400 * 18;
      check_round((first - made.part(host ? "host" : "guest").body.volume()) / 2, 11.0 / 64 * 25.4,
                  18);
    }
  }
  SECTION("a counterbore") {
    ScrewKind kind;
    kind.on.value = BedOn::touching;
    kind.countersink.value = false;
    kind.count.value = 1;
    give(kind.counterbore, 10);
    give(kind.length, 20);
    const test::Made made = test::make_sound(stack(18, 18), kind, 0, 1);
    CHECK(made.assembly.fittings.front().at.z == Approx(-8));
    const double r = 0.164 * 25.4;
    const double wide = std::numbers::pi * r * r * 10;
    const double narrow = std::numbers::pi * std::pow(11.0 / 128 * 25.4, 2) * 8;
    CHECK(80 * 400 * 18 - made.part("host").body.volume() == Approx(wide + narrow).epsilon(0.01));
  }
}

TEST_CASE("fasteners: 200 random leaning and rolled ends each") {
  test::Chance chance(61);
  for (int i = 0; i < 200; ++i) {
    INFO("case " << i);
    const Tee tee = test::random_tee(chance, 15 * deg, 8 * deg, 180 * deg);
    DowelKind dowel;
    give(dowel.diameter, 5);
    give(dowel.embed, 10);
    const test::Made doweled = test::make_sound(test::lay(tee), dowel, 0, 1);
    check_round((host_volume(tee) - doweled.part("host").body.volume()) / 2, 5, 10 + 25.4 / 16);
    LooseTenonKind loose;
    give(loose.thickness, 4);
    give(loose.width, 10);
    loose.line.value =
        i % 2 == 0 ? joinery::FastenerLine::along_guest : joinery::FastenerLine::square_to_joint;
    test::make_sound(test::lay(tee), loose, 0, 1);
    ScrewKind screw;
    screw.gauge.value = 4;
    give(screw.pilot, 1.5);
    give(screw.length, (tee.face < 4 ? tee.host_width : tee.host_thickness) + 15);
    test::make_sound(test::lay(tee), screw, 0, 1);
  }
}

TEST_CASE("splines: 200 random mitres") {
  test::Chance chance(62);
  for (int i = 0; i < 200; ++i) {
    INFO("case " << i);
    Bench bench;
    const Rigid world = any_frame(chance);
    const double angle = chance.between(60, 130) * deg, width = chance.between(30, 60);
    bench.bar("host", world, -200, 300, width, 20);
    bench.bar("guest", world * frame({}, {std::cos(angle), std::sin(angle), 0}, {0, 0, 1}), -200,
              300, width, 20);
    SplineKind kind;
    give(kind.width, 16);
    test::make_sound(std::move(bench), kind, 0, 1);
  }
}

TEST_CASE("glued: parts that touch") {
  const test::Made made = test::make_sound(stack(18, 12), joinery::GluedKind{}, 0, 1);
  CHECK(made.joint().mates.size() == 1);
  CHECK(made.joint().mates[0].plane.n.z == Approx(1));
  Bench apart = stack(18, 12);
  apart.bar("third", frame({0, 0, 40}, {1, 0, 0}, {0, 0, 1}), 0, 100, 20, 20);
  CHECK(test::refusal(apart, joinery::GluedKind{}, 0, 2) ==
        "third and host have no surface in common.");
}

TEST_CASE("fasteners: why they can't be made") {
  const auto refused = [](Bench bench, const joinery::JointKind& kind, const char* part_of_it) {
    const std::string why = test::refusal(bench, kind, 0, 1);
    INFO(why);
    CHECK(why.find(part_of_it) != std::string::npos);
  };
  DowelKind dowel;
  LooseTenonKind loose;
  SplineKind spline;
  ScrewKind screw;
  SECTION("too thick for the joint") {
    give(dowel.diameter, 25);
    refused(test::lay(rail()), dowel, "thicker than the joint");
    give(loose.thickness, 21);
    refused(test::lay(rail()), loose, "thicker than the joint");
    spline.on.value = BedOn::butt;
    give(spline.thickness, 20);
    refused(test::lay(rail()), spline, "as thick as the joint");
  }
  SECTION("no room in the row") {
    dowel.count.value = 20;
    refused(test::lay(rail()), dowel, "no room for 20 of 6 mm along 60 mm");
    loose.count.value = 6;
    refused(test::lay(rail()), loose, "No width is left");
    spline.on.value = BedOn::butt;
    give(spline.stopped, 30);
    refused(test::lay(rail()), spline, "between its stops");
  }
  SECTION("out of the wood") {
    give(dowel.embed, 59);
    refused(test::lay(rail()), dowel, "break out of host");
    dowel.embed = {};
    dowel.offset.value = {8};
    refused(test::lay(rail()), dowel, "break out of guest");
    give(loose.embed, 59);
    refused(test::lay(rail()), loose, "break out of host");
    spline.on.value = BedOn::butt;
    give(spline.width, 130);
    refused(test::lay(rail()), spline, "break out of host");
    give(screw.length, 70);
    screw.through.value = joinery::ScrewThrough::guest;
    screw.on.value = BedOn::touching;
    refused(stack(18, 18), screw, "would come out of it");
  }
  SECTION("screws that don't hold or fit") {
    screw.on.value = BedOn::touching;
    give(screw.length, 18);
    refused(stack(18, 18), screw, "do not reach from host, 18 mm thick, into guest");
    give(screw.counterbore, 18);
    refused(stack(18, 18), screw, "as deep as host is thick");
    screw.counterbore = {};
    give(screw.length, 30);
    screw.offset.value = {29};
    refused(stack(18, 18), screw, "out of");
  }
  SECTION("nothing to hold together") {
    screw.on.value = BedOn::touching;
    Tee apart = rail();
    apart.past = -20;
    refused(test::lay(apart), screw, "no surface in common");
    refused(test::lay(apart), dowel, "stops short");
    refused(test::lay(apart), spline, "does not reach the corner");
  }
}
