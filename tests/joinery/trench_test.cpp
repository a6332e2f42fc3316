// Housings, grooves and rabbets.
#include <cmath>

#include "joinery/bench.h"
#include "joinery/groove.h"
#include "joinery/housing.h"
#include "joinery/rabbet.h"

using namespace splay;
using joinery::GrooveKind;
using joinery::HousingKind;
using joinery::RabbetKind;
using test::Bench;
using test::deg;
using test::give;
using test::Tee;

namespace {

// A panel whose end crosses the host's broad face from edge to edge.
Tee shelf() {
  Tee tee;
  tee.host_width = 200;
  tee.host_thickness = 18;
  tee.face = 5;
  tee.guest_width = 200;
  tee.guest_thickness = 16;
  tee.roll = 90 * deg;  // its faces across the host's length
  return tee;
}

Tee random_shelf(test::Chance& chance, double most_lean, double most_turn) {
  Tee tee = shelf();
  tee.guest_thickness = chance.between(10, 20);
  tee.host_thickness = chance.between(15, 30);
  tee.lean = chance.between(-most_lean, most_lean);
  tee.skew = chance.between(-most_turn, most_turn);
  tee.roll += chance.between(-most_turn, most_turn);
  tee.past = 200;
  tee.world = any_frame(chance);
  return tee;
}

}  // namespace

TEST_CASE("housing: square, leaning 15 degrees with either floor") {
  for (const double lean : {0.0, 15 * deg}) {
    for (const auto floor :
         {joinery::HousingFloor::parallel_to_face, joinery::HousingFloor::square_to_walls}) {
      Tee tee = shelf();
      tee.lean = lean;
      HousingKind kind;
      give(kind.depth, 6);
      kind.floor.value = floor;
      const double host = tee.host_width * tee.host_thickness * tee.host_length;
      const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
      const parts::Trench& trench = made.operation("host", "housing for guest").trench;
      const bool level = floor == joinery::HousingFloor::parallel_to_face;
      CHECK(trench.shallow == Approx(6));
      CHECK(trench.deep == Approx(6 + (level ? 0 : tee.guest_thickness * std::sin(lean))));
      const double mouth = tee.guest_thickness / std::cos(lean);
      const double depth = (trench.shallow + trench.deep) / 2;
      CHECK(host - made.part("host").body.volume() ==
            Approx(mouth * depth * tee.host_width).epsilon(1e-9));
      const Plane end = made.operation("guest", "end in host").cut;
      CHECK(std::acos(std::abs(end.n.x)) == Approx(level ? lean : 0).margin(1e-9));
      CHECK(made.joint().mates.size() == 3);
    }
  }
}

TEST_CASE("housing: 200 skew and rolled ones") {
  test::Chance chance(41);
  for (int i = 0; i < 200; ++i) {
    INFO("case " << i);
    const Tee tee = random_shelf(chance, 30 * deg, 10 * deg);
    HousingKind kind;
    if (i % 2 != 0) kind.floor.value = joinery::HousingFloor::square_to_walls;
    give(kind.depth, chance.between(2, 5));
    const double host = tee.host_width * tee.host_thickness * tee.host_length;
    const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
    const double lost = host - made.part("host").body.volume();
    CHECK(lost > tee.guest_thickness * kind.depth->mm * tee.host_width);
    if (i % 2 == 0) {
      const double section = tee.guest_width * tee.guest_thickness;
      const double length = tee.guest_length + kind.depth->mm / tee.cosine();
      CHECK(made.part("guest").body.volume() == Approx(section * length).epsilon(1e-9));
    }
  }
}

TEST_CASE("housing: stopped, and one that fits all round") {
  Tee tee = shelf();
  const double host = tee.host_width * tee.host_thickness * tee.host_length;
  SECTION("stopped at one edge or both") {
    for (const auto at : {joinery::StoppedAt::low_edge, joinery::StoppedAt::high_edge,
                          joinery::StoppedAt::both_edges}) {
      for (const double lean : {0.0, 15 * deg}) {
        tee.lean = lean;
        HousingKind kind;
        give(kind.depth, 6);
        give(kind.stopped, 12);
        kind.stopped_at.value = at;
        const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
        const double stops = at == joinery::StoppedAt::both_edges ? 2 : 1;
        CHECK(host - made.part("host").body.volume() ==
              Approx(tee.guest_thickness / std::cos(lean) * 6 * (tee.host_width - 12 * stops)));
        CHECK(made.operation("guest", "corner in front of the stop in host").trench.deep ==
              Approx(12));
      }
    }
  }
  SECTION("a rail let in with its whole section, 100 times") {
    test::Chance chance(42);
    for (int i = 0; i < 100; ++i) {
      INFO("case " << i);
      const Tee rail = test::random_tee(chance, 20 * deg, 8 * deg, 180 * deg);
      HousingKind kind;
      give(kind.depth, 8);
      kind.ends.value = joinery::HousingEnds::fit;
      const test::Made made = test::make_sound(test::lay(rail), kind, 0, 1);
      const double section = rail.guest_width * rail.guest_thickness;
      const double whole = rail.host_width * rail.host_thickness * rail.host_length;
      CHECK(whole - made.part("host").body.volume() ==
            Approx(section * 8 / rail.cosine()).epsilon(1e-9));
      CHECK(made.joint().mates.size() == 5);
    }
  }
}

// A panel along the host: its edge goes into the middle of the host's narrow side.
TEST_CASE("groove: square, leaning, and 200 random ones") {
  test::Chance chance(43);
  for (int i = 0; i < 202; ++i) {
    INFO("case " << i);
    Tee tee;
    tee.host_width = 60;
    tee.host_thickness = 30;
    tee.guest_width = 200;
    tee.guest_thickness = 8;
    if (i == 1) tee.skew = 15 * deg;
    if (i > 1) {
      tee.skew = chance.between(-20, 20) * deg;
      tee.lean = chance.between(-20, 20) * deg;
      tee.world = any_frame(chance);
      tee.past = 150;
    }
    GrooveKind kind;
    const double host = tee.host_width * tee.host_thickness * tee.host_length;
    const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
    CHECK(made.joint().mates.size() == 2);
    const double section = tee.guest_width * tee.guest_thickness;
    const double into = (6.35 - 25.4 / 16) / tee.cosine();
    CHECK(made.part("guest").body.volume() == Approx(section * (tee.guest_length + into)));
    if (i < 2) {
      // The trench runs out of both ends of the host.
      CHECK(host - made.part("host").body.volume() ==
            Approx(6.35 * tee.guest_thickness / std::cos(tee.skew) * tee.host_length));
    }
  }
}

TEST_CASE("groove: the edge of a panel, along its width, stopped before the host's ends") {
  Bench bench;
  bench.bar("host", frame({0, -100, 0}, {1, 0, 0}, {0, 0, 1}), -300, 300, 40, 20);
  bench.bar("guest", frame({0, 30, 0}, {1, 0, 0}, {0, 0, 1}), -300, 300, 250, 6);
  GrooveKind kind;
  give(kind.depth, 8);
  kind.clearance.value = {0};
  give(kind.stopped, 20);
  kind.stopped_at.value = joinery::StoppedAt::both_edges;
  const test::Made made = test::make_sound(std::move(bench), kind, 0, 1);
  CHECK(made.part("host").body.volume() == Approx(600 * 40 * 20 - 8 * 6 * 560));
  CHECK(made.operation("guest", "edge in host").kind == parts::OperationKind::edge_cut);
  CHECK(made.joint().mates.size() == 4);
}

TEST_CASE("rabbet: square, leaning, and 200 random ones") {
  test::Chance chance(44);
  for (int i = 0; i < 202; ++i) {
    INFO("case " << i);
    Bench bench;
    const Rigid world = i > 1 ? any_frame(chance) : Rigid{};
    const double lean = i == 1 ? 15 * deg : i > 1 ? chance.between(-25, 25) * deg : 0.0;
    const double turn = i > 1 ? chance.between(-5, 5) * deg : 0.0;
    bench.bar("host", world, -300, 300, 100, 20);
    // A back that meets the host's face near its high edge.
    const Vec3 in =
        Vec3{0, std::sin(lean), -std::cos(lean)} * std::cos(turn) + Vec3{1, 0, 0} * std::sin(turn);
    const Vec3 faces = unit(cross(in, cross(Vec3{0, 1, 0}, in)));
    bench.bar("guest", world * frame({0, 38, 10}, in, faces), -200, 100, 400, 9);
    const test::Made made = test::make_sound(std::move(bench), RabbetKind{}, 0, 1);
    const parts::Operation& op = made.operation("host", "rabbet for guest");
    CHECK(op.trench.shallow == Approx(10));
    CHECK(op.trench.walls.size() == 1);
    if (i == 0) CHECK(made.part("host").body.volume() == Approx(600 * 100 * 20 - 10 * 16.5 * 600));
    if (i == 1) {
      // From the wall to the edge: at the face, less what the wall leans over half the depth.
      const double mouth = 12 + 4.5 / std::cos(lean);
      CHECK(made.part("host").body.volume() ==
            Approx(600 * 100 * 20 - 10 * (mouth - 5 * std::tan(lean)) * 600));
    }
  }
}

TEST_CASE("trenches: why they can't be made") {
  Tee tee = shelf();
  const auto refused = [&](const joinery::JointKind& kind, const char* part_of_it) {
    Bench bench = test::lay(tee);
    const std::string why = test::refusal(bench, kind, 0, 1);
    INFO(why);
    CHECK(why.find(part_of_it) != std::string::npos);
  };
  HousingKind housing;
  GrooveKind groove;
  RabbetKind rabbet;
  SECTION("too deep") {
    give(housing.depth, 18);
    give(groove.depth, 19);
    give(rabbet.depth, 20);
    rabbet.open_to.value = joinery::RabbetOpen::low_face;
    refused(housing, "would go right through host: 18 mm deep in 18 mm");
    refused(groove, "would go right through");
    refused(rabbet, "would go right through");
  }
  SECTION("square to leaning walls it is deeper") {
    tee.lean = 30 * deg;
    give(housing.depth, 12);
    housing.floor.value = joinery::HousingFloor::square_to_walls;
    refused(housing, "would go right through host: 20 mm deep in 18 mm");
  }
  SECTION("stops short") {
    tee.past = 3;
    refused(housing, "does not reach the floor in host");
    tee.past = -3;
    refused(groove, "stops short of host");
  }
  SECTION("nothing but clearance") {
    give(groove.depth, 1);
    give(rabbet.clearance, 9);
    rabbet.open_to.value = joinery::RabbetOpen::high_face;
    refused(groove, "all of it clearance");
    refused(rabbet, "all of it clearance");
  }
  SECTION("in the middle") { refused(rabbet, "say which face its rabbet is open to"); }
  SECTION("the stop leaves nothing") {
    give(housing.stopped, 250);
    refused(housing, ".");
  }
}
