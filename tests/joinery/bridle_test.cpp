#include "joinery/bridle.h"

#include <cmath>

#include "joinery/bench.h"

using namespace splay;
using joinery::BridleForm;
using joinery::BridleKind;
using test::Bench;
using test::deg;

TEST_CASE("bridle: square, at 75 degrees, and 200 random ones, tee and corner") {
  test::Chance chance(51);
  for (int i = 0; i < 204; ++i) {
    INFO("case " << i);
    double angle = i < 2 ? 90 * deg : 75 * deg, a = 40, b = 30, roll = 0, share = 1.0 / 3;
    Rigid world;
    if (i >= 4) {
      angle = chance.between(40, 140) * deg;
      a = chance.between(25, 50);
      b = chance.between(25, 50);
      share = chance.between(0.25, 0.5);
      world = any_frame(chance);
      if (i % 4 == 0) roll = chance.between(-20, 20) * deg;
    }
    Bench bench;
    const Vec3 x{std::cos(angle), std::sin(angle), 0}, y{-std::sin(angle), std::cos(angle), 0};
    bench.bar("host", world, -200, 400, a, 24);
    bench.bar("guest", world * frame({}, x, Vec3{0, 0, 1} * std::cos(roll) + y * std::sin(roll)),
              -200, 400, b, 24);
    BridleKind kind;
    kind.share.value = share;
    kind.form.value = i % 2 == 0 ? BridleForm::corner : BridleForm::tee;
    const test::Made made = test::make_sound(std::move(bench), kind, 0, 1);
    if (roll != 0) continue;
    const double common = a * b / std::sin(angle) * 24;
    const double guest = b * 24 * (400 + a / 2 / std::sin(angle));
    const double corner_host = a * 24 * (400 + b / 2 / std::sin(angle));
    if (kind.form.value == BridleForm::corner) {
      CHECK(made.part("host").body.volume() == Approx(corner_host - common * share));
      CHECK(made.part("guest").body.volume() == Approx(guest - common * (1 - share)));
    } else {
      CHECK(made.part("host").body.volume() == Approx(a * 24 * 600 - common * (1 - share)));
      CHECK(made.part("guest").body.volume() == Approx(guest - common * share));
    }
  }
}

// A leg that is tapered below the joint is straight in it, and there the guest ends: its length is
// that of the plain bar (by trigonometry, as above).
TEST_CASE("bridle and lap: an end is flush with the part of a tapered side that it meets") {
  const double angle = 75 * deg, a = 40, b = 30, thick = 24;
  for (const double slope : {-0.05, 0.05}) {
    Bench bench;
    const Vec3 x{std::cos(angle), std::sin(angle), 0};
    const int leg = bench.bar("host", {}, -300, 400, a, thick);
    bench.bar("guest", frame({}, x, {0, 0, 1}), -200, 400, b, thick);
    const double from = slope > 0 ? 60 : -60;  // where the taper begins along the leg
    for (const double side : {1.0, -1.0})
      bench.builder.cut_edge(leg, Plane::through({from, side * a / 2, 0}, unit({slope, side, 0})),
                             "taper", "");
    BridleKind kind;
    kind.form.value = BridleForm::tee;
    const test::Made made = test::make_sound(std::move(bench), kind, 0, 1);
    const double common = a * b / std::sin(angle) * thick;
    CHECK(made.part("guest").body.volume() ==
          Approx(b * thick * (400 + a / 2 / std::sin(angle)) - common / 3));
  }
}

TEST_CASE("bridle: why it can't be made") {
  Bench bench;
  bench.bar("host", {}, -200, 400, 40, 24);
  SECTION("side by side") {
    bench.bar("guest", frame({0, 0, 24}, {0, 1, 0}, {0, 0, 1}), -200, 400, 40, 24);
    CHECK(test::refusal(bench, BridleKind{}, 0, 1).find("do not cross") != std::string::npos);
  }
  SECTION("stops short") {
    bench.bar("guest", frame({}, {0, 1, 0}, {0, 0, 1}), 0, 400, 40, 24);
    CHECK(test::refusal(bench, BridleKind{}, 0, 1).find("stops short") != std::string::npos);
  }
}
