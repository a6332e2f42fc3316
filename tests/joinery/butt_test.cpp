#include "joinery/butt.h"

#include <cmath>

#include "joinery/bench.h"

using namespace splay;
using test::Bench;
using test::deg;
using test::Tee;

namespace {

void check_butt(const Tee& tee) {
  const test::Made made = test::make_sound(test::lay(tee), joinery::ButtKind{}, 0, 1);
  // A slanted end keeps the mean length: that of the centre line.
  const double section = tee.guest_width * tee.guest_thickness;
  CHECK(made.part("guest").body.volume() == Approx(section * tee.guest_length).epsilon(1e-9));
  CHECK(made.part("host").operations.size() == (tee.taper == 0 ? 0 : 1));
}

}  // namespace

TEST_CASE("butt: square, leaning, and 200 skew and rolled ends") {
  check_butt({});
  Tee leaning;
  leaning.lean = 15 * deg;
  const test::Made made = test::make_sound(test::lay(leaning), joinery::ButtKind{}, 0, 1);
  CHECK(made.joint().dihedral / deg == Approx(75));
  const Plane cut = made.operation("guest", "end against host").cut;
  CHECK(std::asin(std::abs(cut.n.y)) / deg == Approx(15));
  check_butt(leaning);
  test::Chance chance(11);
  for (int i = 0; i < 200; ++i) {
    INFO("case " << i);
    Tee tee = test::random_tee(chance, 40 * deg, 30 * deg, 180 * deg);
    if (i % 3 == 0) tee.taper = chance.between(-5, 5) * deg;
    check_butt(tee);
  }
}

TEST_CASE("butt: why two parts can't be joined so") {
  const joinery::ButtKind butt;
  Tee tee;
  SECTION("the guest stops short") {
    tee.past = -1;
    Bench bench = test::lay(tee);
    CHECK(test::refusal(bench, butt, 0, 1) == "guest stops short of host.");
  }
  SECTION("the guest passes by") {
    Bench bench;
    bench.bar("host", {}, 0, 500, 40, 40);
    bench.bar("guest", frame({600, 0, 0}, {0, 1, 0}, {0, 0, 1}), -200, 200, 40, 40);
    CHECK(test::refusal(bench, butt, 0, 1) == "The centre line of guest does not meet host.");
  }
  SECTION("the guest lies along the host") {
    Bench bench;
    bench.bar("host", {}, 0, 500, 40, 40);
    bench.bar("guest", frame({0, 0, 60}, {1, 0, 0}, {0, 0, 1}), 0, 500, 40, 40);
    CHECK(test::refusal(bench, butt, 0, 1) == "The centre line of guest does not meet host.");
  }
  SECTION("the guest runs almost along the face") {
    Bench bench;
    bench.bar("host", {}, 0, 4000, 40, 40);
    bench.bar("guest", frame({2000, 0, 20}, {std::cos(3 * deg), 0, -std::sin(3 * deg)}, {0, 0, 1}),
              -1500, 1500, 40, 20);
    CHECK(test::refusal(bench, butt, 0, 1).find("under 5 degrees") != std::string::npos);
  }
  SECTION("the guest is wholly inside") {
    Bench bench;
    bench.bar("host", {}, 0, 500, 200, 200);
    bench.bar("guest", frame({250, 0, 0}, {0, 1, 0}, {0, 0, 1}), -50, 50, 40, 40);
    CHECK(test::refusal(bench, butt, 0, 1) == "guest lies wholly inside host.");
  }
}
