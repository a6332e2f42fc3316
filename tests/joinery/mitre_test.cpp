#include "joinery/mitre.h"

#include <cmath>

#include "joinery/bench.h"

using namespace splay;
using joinery::MitreKind;
using test::Bench;
using test::deg;

namespace {

struct Corner {
  double angle = 90 * deg;  // between the members
  double host_width = 40, guest_width = 40, thick = 20;
  double roll = 0;  // of both about their lengths, as mirror images
  double past = 150;
  Rigid world;
};

// Both run away from the corner, in the level plane of the world given.
Bench lay(const Corner& corner) {
  Bench bench;
  const auto member = [&](const char* name, double turn, double roll, double width) {
    const Vec3 x{std::cos(turn), std::sin(turn), 0}, y{-std::sin(turn), std::cos(turn), 0};
    const Vec3 z = Vec3{0, 0, 1} * std::cos(roll) + y * std::sin(roll);
    bench.bar(name, corner.world * frame({}, x, z), -corner.past, 400, width, corner.thick);
  };
  member("host", 0, corner.roll, corner.host_width);
  member("guest", corner.angle, -corner.roll, corner.guest_width);
  return bench;
}

}  // namespace

TEST_CASE(
    "mitre: equal members, square, at 75 degrees, and 200 random corners with mirrored rolls") {
  test::Chance chance(31);
  for (int i = 0; i < 202; ++i) {
    INFO("case " << i);
    Corner corner;
    if (i == 1) corner.angle = 75 * deg;
    if (i > 1) {
      corner.angle = chance.between(40, 150) * deg;
      corner.host_width = corner.guest_width = chance.between(20, 50);
      corner.thick = chance.between(10, 20);
      corner.roll = chance.between(-30, 30) * deg;
      corner.world = any_frame(chance);
    }
    const test::Made made = test::make_sound(lay(corner), MitreKind{}, 0, 1);
    // The plane halves the corner and goes through the point where the centre lines cross.
    const double volume = corner.host_width * corner.thick * 400;
    CHECK(made.part("host").body.volume() == Approx(volume).epsilon(1e-9));
    CHECK(made.part("guest").body.volume() == Approx(volume).epsilon(1e-9));
    const Plane cut = made.operation("host", "mitre to guest").cut;
    CHECK(std::acos(std::abs(cut.n.x)) == Approx(std::numbers::pi / 2 - corner.angle / 2));
    if (corner.roll == 0) CHECK(made.joint().dihedral == Approx(corner.angle));
  }
}

TEST_CASE("mitre: 100 members of unlike width and roll close on one plane") {
  test::Chance chance(32);
  for (int i = 0; i < 100; ++i) {
    INFO("case " << i);
    Bench bench;
    const Rigid world = any_frame(chance);
    const double angle = chance.between(60, 120) * deg;
    bench.bar("host", world, -300, 400, chance.between(25, 45), chance.between(20, 25));
    const Vec3 x{std::cos(angle), std::sin(angle), 0}, y{-std::sin(angle), std::cos(angle), 0};
    const double roll = chance.between(-20, 20) * deg;
    const Vec3 z = Vec3{0, 0, 1} * std::cos(roll) + y * std::sin(roll);
    bench.bar("guest", world * frame({}, x, z), -300, 400, chance.between(25, 45),
              chance.between(20, 25));
    test::make_sound(std::move(bench), MitreKind{}, 0, 1);
  }
}

// https://www.beehappygraphics.com/blog/2019/using-multiple-moulding-widths-in-one-frame : members
// 1 1/4 and 2 in wide at a right corner are cut at 57.99 and 32.01 degrees.
TEST_CASE("mitre: unequal widths, each end its own angle") {
  Corner corner;
  corner.host_width = 1.25 * 25.4;
  corner.guest_width = 2 * 25.4;
  const test::Made made = test::make_sound(lay(corner), MitreKind{}, 0, 1);
  const auto angle = [&](const char* part, const char* name) {
    const Plane cut = made.operation(part, name).cut;
    return std::atan2(std::abs(cut.n.y), std::abs(cut.n.x)) / deg;
  };
  CHECK(angle("host", "mitre to guest") == Approx(57.99).margin(0.005));
  CHECK(angle("guest", "mitre to host") == Approx(32.01).margin(0.005));
}

TEST_CASE("mitre: why it can't be made") {
  Corner corner;
  const auto refused = [&](const char* part_of_it) {
    Bench bench = lay(corner);
    const std::string why = test::refusal(bench, MitreKind{}, 0, 1);
    INFO(why);
    CHECK(why.find(part_of_it) != std::string::npos);
  };
  SECTION("along each other") {
    corner.angle = 3 * deg;
    refused("a mitre needs a corner");
  }
  SECTION("too short") {
    corner.past = 10;
    refused("does not reach the corner");
  }
  SECTION("one on top of the other") {
    Bench bench = lay(corner);
    const int third =
        bench.bar("third", frame({0, 0, 50}, {0, 1, 0}, {0, 0, 1}), -150, 400, 40, 20);
    CHECK(test::refusal(bench, MitreKind{}, 0, third).find("would not touch") != std::string::npos);
  }
}
