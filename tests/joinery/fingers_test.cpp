// Box joints and dovetails: volumes by plain arithmetic, every surface closed by the audit.
#include <cmath>

#include "joinery/bench.h"
#include "joinery/box_joint.h"
#include "joinery/dovetail.h"

using namespace splay;
using joinery::BoxJointKind;
using joinery::DovetailKind;
using test::Bench;
using test::deg;

namespace {

// Two boards on edge with their middles on one corner, `width` high.
Bench corner(double angle, double width, double host_thick, double guest_thick,
             const Rigid& world = {}, double rolled = 0) {
  Bench bench;
  const Vec3 x{std::cos(angle), std::sin(angle), 0};
  const auto stand = [&](Vec3 along, double roll) {
    const Vec3 out = unit(cross(along, {0, 0, 1}));
    return world * frame({}, along, out * std::cos(roll) + Vec3{0, 0, 1} * std::sin(roll));
  };
  bench.bar("host", stand({1, 0, 0}, 0), -100, 400, width, host_thick);
  bench.bar("guest", stand(x, rolled), -100, 300, width, guest_thick);
  return bench;
}

// What either board measures with both ends square to its length and flush with the other's far
// side: the middle of the cut lies that far out from the crossing of the middles.
double whole(double length, double angle, double width, double thick, double other) {
  return (length + other / 2 / std::sin(angle)) * width * thick;
}

}  // namespace

TEST_CASE("box joint: square, leaning, and 100 random corners") {
  test::Chance chance(71);
  for (int i = 0; i < 102; ++i) {
    INFO("case " << i);
    double angle = i == 1 ? 60 * deg : 90 * deg, width = 100, a = 12, b = 18;
    Rigid world;
    BoxJointKind kind;
    if (i > 1) {
      angle = chance.between(50, 130) * deg;
      width = chance.between(60, 200);
      a = chance.between(8, 20);
      b = chance.between(8, 20);
      world = any_frame(chance);
      if (chance.coin()) kind.finger = {Length{chance.between(6, 25)}};
      kind.finger.given = kind.finger->mm > 0;
    }
    const test::Made made = test::make_sound(corner(angle, width, a, b, world), kind, 0, 1);
    // An odd number of equal fingers, the guest's one more than the host's.
    const double wanted = kind.finger.given ? kind.finger->mm : std::min(a, b);
    double count = 3;
    while (std::abs(width / (count + 2) - wanted) < std::abs(width / count - wanted)) count += 2;
    const double common = a * b / std::sin(angle) * width;
    const double host = made.part("host").body.volume(), guest = made.part("guest").body.volume();
    CHECK(host + guest ==
          Approx(whole(400, angle, width, a, b) + whole(300, angle, width, b, a) - common));
    const double share = (whole(400, angle, width, a, b) - host) / common;  // the guest's
    const double n = std::round(1 / (2 * share - 1));
    CHECK(share == Approx((n + 1) / (2 * n)));
    CHECK(std::abs(n - count) <= 2.0);  // whole fingers nearest to the width asked for
    CHECK(std::fmod(n, 2) == 1);
  }
}

TEST_CASE("dovetail: through and lapped, square, leaning, and 100 random corners") {
  test::Chance chance(72);
  for (int i = 0; i < 104; ++i) {
    INFO("case " << i);
    double angle = i % 4 == 1 ? 75 * deg : 90 * deg, width = 120, a = 12, b = 18;
    Rigid world;
    DovetailKind kind;
    kind.tails = {3};
    kind.tails.given = true;
    kind.slope = {Angle{std::atan(1.0 / 8)}};
    kind.slope.given = true;
    kind.lap.value = i % 2 == 0 ? Length{0} : Length{6};
    if (i > 3) {
      angle = chance.between(60, 120) * deg;
      width = chance.between(90, 200);
      a = chance.between(8, 18);
      b = chance.between(10, 20);
      world = any_frame(chance);
      kind.tails.value = static_cast<int>(chance.between(1, 5));
      kind.share.value = chance.between(1, 3);
      if (i % 2 == 1) kind.lap.value = Length{b / 4};
    }
    const test::Made made = test::make_sound(corner(angle, width, a, b, world), kind, 0, 1);
    const double tails = kind.tails.value;
    const double pin = width / (tails * kind.share.value + tails + 1);
    const double lap = kind.lap->mm;
    // A tail is a trapezium as long as the guest is thick less the lap, as broad in its middle as
    // `share` pins.
    const double wood = tails * pin * kind.share.value * (b - lap) / std::sin(angle) * a;
    const double common = a * b / std::sin(angle) * width;
    const double host = made.part("host").body.volume(), guest = made.part("guest").body.volume();
    CHECK(guest == Approx(whole(300, angle, width, b, a) - wood));
    CHECK(host + guest ==
          Approx(whole(400, angle, width, a, b) + whole(300, angle, width, b, a) - common));
    // The broad end of a tail: half the slope's rise over its length to either side.
    if (i != 0) continue;
    double broad = 0;
    for (const parts::Operation& each : made.part("guest").operations)
      for (const Plane& plane : each.removed)
        if (std::abs(plane.n.y) > 0.9)
          broad =
              std::max(broad, std::abs(plane.n.x / plane.n.y) + std::abs(plane.n.z / plane.n.y));
    CHECK(broad == Approx(1.0 / 8));
  }
}

TEST_CASE("fingers: why a corner can't be cut so") {
  const auto why = [](Bench bench) { return test::refusal(bench, BoxJointKind{}, 0, 1); };
  const auto says = [](const std::string& text, const char* word) {
    INFO(text);
    return text.find(word) != std::string::npos;
  };
  CHECK(says(why(corner(90 * deg, 100, 12, 12, {}, 5 * deg)), "lean against their corner"));
  {
    Bench bench = corner(90 * deg, 100, 12, 12);
    bench.bar("low", frame({}, {0, 1, 0}, {1, 0, 0}), -100, 300, 80, 12);
    CHECK(says(test::refusal(bench, BoxJointKind{}, 0, 2), "flush"));
  }
  {
    Bench bench = corner(90 * deg, 100, 12, 12);
    DovetailKind kind;
    kind.tails = {30};
    kind.tails.given = true;
    CHECK(says(test::refusal(bench, kind, 0, 1), "at their narrow end"));
    kind.tails.value = 2;
    kind.lap.value = Length{11};
    CHECK(says(test::refusal(bench, kind, 0, 1), "no room"));
  }
  {
    Bench bench = corner(90 * deg, 100, 12, 12);
    BoxJointKind kind;
    kind.finger = {Length{1}};
    kind.finger.given = true;
    CHECK(says(test::refusal(bench, kind, 0, 1), "too thin"));
  }
}
