// Cuts as no shop would make them: cutters on round figures, on one another's faces, 1e-8 to 1e-2
// mm beside them and at angles down to 1e-9. Every surface must close (boundary() throws otherwise)
// and what is drawn from it must come out.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

#include "geometry/hidden_lines.h"

using splay::Plane;
using splay::Polygon;
using splay::Solid;
using splay::Vec2;
using splay::Vec3;

namespace {

class Rough {
 public:
  explicit Rough(std::uint64_t seed) : engine_(seed) {}

  double real(double from, double to) {
    return from + (to - from) * static_cast<double>(engine_() >> 11U) * 0x1p-53;
  }
  int whole(int from, int to) {
    return from + static_cast<int>(engine_() % static_cast<std::uint64_t>(to - from + 1));
  }
  double place(double high) {
    static constexpr double kRound[] = {0, 5, 10, 20, 30, 60, 100};
    double x = whole(0, 3) > 0 ? kRound[whole(0, 6)] : real(-5, high + 5);
    const int pick = whole(0, 5);
    if (pick == 0) x += real(-3e-6, 3e-6);
    if (pick == 1) x += real(-1, 1) * std::pow(10, real(-8, -2));
    return x;
  }
  Vec3 corner() {
    const double x = place(100), y = place(60);
    return {x, y, place(20)};
  }

  Solid box() {
    const Vec3 a = corner(), b = corner();
    return Solid::box({std::min(a.x, b.x), std::min(a.y, b.y), std::min(a.z, b.z)},
                      {std::max(a.x, b.x), std::max(a.y, b.y), std::max(a.z, b.z)});
  }
  splay::Region wedge() {
    Vec3 normal{real(-1, 1), real(-1, 1), real(-1, 1)};
    if (whole(0, 2) == 0) {
      const double tilt = std::pow(10, real(-9, -3));
      normal = {tilt * real(-1, 1), tilt * real(-1, 1), 1};
    }
    const Vec3 at = corner();
    return {Plane::through(at, normal),
            Plane::through(at, cross(normal, Vec3{0.3, real(-1, 1), 1}))};
  }
  Solid round_bar() {
    const int facets = whole(3, 24);
    const double radius = real(1, 20), tilt = whole(0, 1) == 0 ? real(-1, 1) : 0;
    const Vec2 centre{place(100), place(60)};
    Polygon outline;
    for (int i = 0; i < facets; ++i) {
      const double t = 2 * std::numbers::pi * i / facets;
      outline.push_back(centre + Vec2{std::cos(t), std::sin(t)} * radius);
    }
    const double low = place(20) - 20;
    return Solid::prism(outline, low, low + real(1, 40))
        .transformed(splay::frame({}, {1, 0, tilt}, {-tilt, 0, 1}));
  }
  Solid angle_bar() {
    const Polygon outline = {{0, 0}, {30, 0}, {30, 10}, {12, 10}, {10, 30}, {0, 30}};
    const double top = place(20);
    const Vec3 at{place(100), place(60), 0};
    return Solid::prism(outline, -30, top)
        .transformed(splay::frame(at, {1, real(-1, 1), 0}, {0, 0, 1}));
  }

  void cut(Solid& solid) {
    switch (whole(0, 3)) {
      case 0:
        return solid.subtract(box());
      case 1:
        return solid.subtract(wedge());
      case 2:
        return solid.subtract(round_bar());
      default:
        return solid.subtract(angle_bar());
    }
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace

TEST_CASE("rough cuts leave closed surfaces that can be sectioned and drawn") {
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    INFO("seed " << seed);
    Rough rough(seed);
    Solid solid = Solid::box({0, 0, 0}, {100, 60, 20});
    double volume = solid.volume();
    for (int cuts = rough.whole(3, 14); cuts > 0 && !solid.empty(); --cuts) {
      rough.cut(solid);
      REQUIRE(solid.volume() <= volume + 1e-6 * 20000);  // a layer of the tolerance
      volume = solid.volume();
      REQUIRE_NOTHROW(solid.boundary());
    }
    if (solid.empty()) continue;
    REQUIRE_NOTHROW(solid.section(Plane::through({50, 30, rough.place(20)}, {0, 0, 1})));
    REQUIRE_NOTHROW(solid.section(Plane::through({50, 30, 10}, {1, 1e-6, 0.2})));
    const std::vector<Solid> stacked = {
        solid, solid.transformed(splay::frame({0, 0, 20}, {1, 0, 0}, {0, 0, 1}))};
    const splay::View view = splay::View::axonometric(0.5, 0.5);
    REQUIRE_NOTHROW(splay::hidden_lines(stacked, view));
    // No tone may lie over another: together they are no larger than the two boxes' image.
    double tones = 0;
    for (const splay::ToneFace& face : splay::visible_faces(stacked, view)) {
      for (const auto& loop : face.loops) tones += splay::signed_area(loop);
    }
    const double boxes = 100 * 60 * view.toward.z + 40 * 100 * std::abs(view.toward.y) +
                         40 * 60 * std::abs(view.toward.x);
    CHECK(tones <= boxes * (1 + 1e-6));
  }
}
