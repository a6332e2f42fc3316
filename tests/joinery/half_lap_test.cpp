#include "joinery/half_lap.h"

#include <cmath>

#include "joinery/bench.h"

using namespace splay;
using joinery::HalfLapKind;
using joinery::LapForm;
using joinery::LapFrom;
using joinery::LapWalls;
using test::Bench;
using test::deg;

namespace {

struct Cross {
  double a = 40, b = 30;  // widths
  double thick_a = 20, thick_b = 20;
  double off = 0;  // of the guest's middle along z
  double angle = 90 * deg;
  double roll_a = 0, roll_b = 0;
  double past = 200;  // beyond the crossing, at the short ends
  Rigid world;
};

// Host along x of the cross, guest at the angle; the short end of both is at low x.
Bench lay(const Cross& cross) {
  Bench bench;
  const auto stick = [&](const char* name, double angle, double roll, double width, double thick,
                         double z) {
    const Vec3 x{std::cos(angle), std::sin(angle), 0}, y{-std::sin(angle), std::cos(angle), 0};
    const Vec3 ez = Vec3{0, 0, 1} * std::cos(roll) + y * std::sin(roll);
    bench.bar(name, cross.world * frame({0, 0, z}, x, ez), -cross.past, 500, width, thick);
  };
  stick("host", 0, cross.roll_a, cross.a, cross.thick_a, 0);
  stick("guest", cross.angle, cross.roll_b, cross.b, cross.thick_b, cross.off);
  return bench;
}

double bar_volume(double width, double thick, double length) { return width * thick * length; }

void check_cross(const Cross& cross, double share) {
  HalfLapKind kind;
  kind.share.value = share;
  const test::Made made = test::make_sound(lay(cross), kind, 0, 1);
  const double area = cross.a * cross.b / std::sin(cross.angle);
  const double low = std::max(-cross.thick_a / 2, cross.off - cross.thick_b / 2);
  const double high = std::min(cross.thick_a / 2, cross.off + cross.thick_b / 2);
  const double way = cross.off >= 0 ? 1 : -1;
  // Down from the host's open side to the lap's floor, which shares the common height.
  const double floor = way > 0 ? high - share * (high - low) : low + share * (high - low);
  const double host_loss = area * (cross.thick_a / 2 - way * floor);
  const double guest_loss = area * (way * (floor - cross.off) + cross.thick_b / 2);
  const double length = cross.past + 500;
  CHECK(made.part("host").body.volume() ==
        Approx(bar_volume(cross.a, cross.thick_a, length) - host_loss).epsilon(1e-9));
  CHECK(made.part("guest").body.volume() ==
        Approx(bar_volume(cross.b, cross.thick_b, length) - guest_loss).epsilon(1e-9));
  CHECK(made.joint().mates.size() == 5);
  const double acute = std::min(cross.angle, std::numbers::pi - cross.angle);
  CHECK(made.joint().dihedral == Approx(acute));
  const parts::Trench& trench = made.operation("host", "lap for guest").trench;
  CHECK(trench.deep == Approx(cross.thick_a / 2 - way * floor));
  CHECK(trench.shallow == Approx(trench.deep));
}

}  // namespace

TEST_CASE("half lap: crossed square, at 60 degrees, and at 200 random true angles") {
  check_cross({}, 0.5);
  Cross cross;
  cross.angle = 60 * deg;
  check_cross(cross, 0.5);
  test::Chance chance(21);
  for (int i = 0; i < 200; ++i) {
    INFO("case " << i);
    Cross random;
    random.a = chance.between(20, 60);
    random.b = chance.between(20, 60);
    random.thick_a = chance.between(15, 40);
    random.thick_b = chance.between(15, 40);
    random.off = chance.between(-8, 8);
    random.angle = chance.between(25, 155) * deg;
    random.world = any_frame(chance);
    check_cross(random, chance.between(0.3, 0.7));
  }
}

TEST_CASE("half lap: 200 rolled and tapered pairs close without a clash") {
  test::Chance chance(22);
  for (int i = 0; i < 200; ++i) {
    INFO("case " << i);
    Cross cross;
    cross.a = chance.between(30, 50);
    cross.b = chance.between(30, 50);
    cross.thick_a = chance.between(25, 40);
    cross.thick_b = chance.between(25, 40);
    cross.angle = chance.between(35, 145) * deg;
    cross.roll_a = chance.between(-180, 180) * deg;
    cross.roll_b = chance.between(-180, 180) * deg;
    cross.off = chance.between(-6, 6);
    cross.world = any_frame(chance);
    Bench bench = lay(cross);
    if (chance.coin()) {
      // A taper of both sides of the host's width.
      const Rigid& place = bench.builder.part(0).place;
      for (const double side : {1.0, -1.0}) {
        const Plane taper = Plane::through({500, side * cross.a / 4, 0}, {0.02, side, 0});
        bench.builder.cut_edge(0, place.plane(taper), "taper", "");
      }
    }
    const double host = bench.volume(0), guest = bench.volume(1);
    const test::Made made = test::make_sound(std::move(bench), HalfLapKind{}, 0, 1);
    CHECK(made.part("host").body.volume() < host);
    CHECK(made.part("guest").body.volume() < guest);
  }
}

TEST_CASE("half lap: tee and corner end flush") {
  test::Chance chance(23);
  for (int i = 0; i < 60; ++i) {
    INFO("case " << i);
    Cross cross;
    cross.angle = i == 0 ? 90 * deg : chance.between(40, 140) * deg;
    cross.world = any_frame(chance);
    HalfLapKind kind;
    kind.form.value = i % 2 == 0 ? LapForm::corner : LapForm::tee;
    const test::Made made = test::make_sound(lay(cross), kind, 0, 1);
    const double area = cross.a * cross.b / std::sin(cross.angle);
    // Past the middle the guest keeps the mean of the host's slanted width.
    const double guest = cross.b * cross.thick_b * (500 + cross.a / 2 / std::sin(cross.angle));
    CHECK(made.part("guest").body.volume() == Approx(guest - area * cross.thick_b / 2));
    if (kind.form.value == LapForm::corner) {
      CHECK(made.joint().dihedral == Approx(cross.angle));
      const double host = cross.a * cross.thick_a * (500 + cross.b / 2 / std::sin(cross.angle));
      CHECK(made.part("host").body.volume() == Approx(host - area * cross.thick_a / 2));
    }
  }
}

// Common practice, no source: a lap parallel to the floor on a leg that leans 15 degrees is 15
// degrees off square on the leg.
TEST_CASE("half lap: on a leaning leg, along the rail, parallel to the floor, or square") {
  const double lean = 15 * deg;
  const auto leg_and_rail = [&](double rail_slope) {
    Bench bench;
    const Vec3 up{std::sin(lean), 0, std::cos(lean)};
    bench.bar("leg", frame({}, up, {0, 1, 0}), -400, 400, 50, 30);
    const Vec3 along{std::cos(rail_slope), 0, std::sin(rail_slope)};
    bench.bar("rail", frame({}, along, {0, 1, 0}), -400, 400, 60, 30);
    return bench;
  };
  const auto off_square = [](const test::Made& made) {
    std::vector<double> angles;
    for (const Plane& wall : made.operation("leg", "lap for rail").trench.walls)
      angles.push_back(std::acos(std::min(1.0, std::abs(wall.n.x))) / deg);
    return angles;
  };
  HalfLapKind kind;
  SECTION("along a level rail") {
    const test::Made made = test::make_sound(leg_and_rail(0), kind, 0, 1);
    for (const double angle : off_square(made)) CHECK(angle == Approx(15));
    CHECK(made.joint().dihedral / deg == Approx(75));
  }
  SECTION("parallel to the floor") {
    kind.walls.value = LapWalls::floor;
    for (const double slope : {0.0, 5 * deg}) {
      const test::Made made = test::make_sound(leg_and_rail(slope), kind, 0, 1);
      REQUIRE(off_square(made).size() == 2);
      for (const double angle : off_square(made)) CHECK(angle == Approx(15));
    }
  }
  SECTION("square to the leg") {
    kind.walls.value = LapWalls::square;
    const test::Made made = test::make_sound(leg_and_rail(0), kind, 0, 1);
    for (const double angle : off_square(made)) CHECK(angle == Approx(0).margin(1e-6));
    // The rail's sides are eased on either side by the slant of the leg's breadth across it.
    CHECK(made.operation("rail", "side of the lap in leg").kind == parts::OperationKind::notch);
  }
}

TEST_CASE("half lap: which side the host loses") {
  HalfLapKind kind;
  for (const auto from : {LapFrom::high_side, LapFrom::low_side}) {
    kind.from.value = from;
    const test::Made made = test::make_sound(lay({}), kind, 0, 1);
    const bool high = from == LapFrom::high_side;
    CHECK(made.operation("host", "lap for guest").trench.floor.n.z == Approx(high ? 1 : -1));
    CHECK(made.operation("host", "lap for guest").trench.open ==
          (high ? parts::Side::z_high : parts::Side::z_low));
    CHECK(made.operation("guest", "lap for host").trench.open ==
          (high ? parts::Side::z_low : parts::Side::z_high));
  }
}

TEST_CASE("half lap: why it can't be made") {
  HalfLapKind kind;
  Cross cross;
  const auto refused = [&](const char* part_of_it) {
    Bench bench = lay(cross);
    const std::string why = test::refusal(bench, kind, 0, 1);
    INFO(why);
    CHECK(why.find(part_of_it) != std::string::npos);
  };
  SECTION("side by side") {
    cross.off = 20;
    refused("they share no space");
  }
  SECTION("along each other") {
    cross.angle = 2 * deg;
    refused("must cross at 5 degrees");
  }
  SECTION("stops short") {
    cross.past = 5;
    refused("no whole wood");
  }
  SECTION("walls that can't be level") {
    kind.walls.value = LapWalls::floor;
    refused("can't have level walls");
  }
  SECTION("walls that leave nothing") {
    kind.walls.value = LapWalls::square;
    cross.angle = 30 * deg;
    refused("Nothing would be left of guest");
  }
  SECTION("another lap is there") {
    Bench bench = lay(cross);
    bench.bar("other", frame({}, {1, 1, 0}, {0, 0, 1}), -200, 200, 30, 20);
    REQUIRE(kind.make(bench.builder, 0, 2) == "");
    CHECK(kind.make(bench.builder, 0, 1).find("another cut is there") != std::string::npos);
  }
}
