#include <catch2/catch.hpp>

#include "geometry/solid.h"

using splay::Solid;

TEST_CASE("touching parts do not clash, overlapping parts do") {
  std::vector<Solid> parts = {
      Solid::box({0, 0, 0}, {10, 10, 10}), Solid::box({10, 0, 0}, {20, 10, 10}),
      Solid::box({0, 0, 10}, {10, 10, 20}), Solid::box({19, 8, 8}, {30, 30, 30})};
  const auto clashes = splay::find_clashes(parts);
  REQUIRE(clashes.size() == 1);
  CHECK(clashes[0].a == 1);
  CHECK(clashes[0].b == 3);
  CHECK(clashes[0].volume == Approx(1 * 2 * 2));
  CHECK(clashes[0].at.x == Approx(19.5));
}

TEST_CASE("a tenon in its mortise does not clash until it is too long") {
  Solid post = Solid::box({0, 0, 0}, {40, 40, 400});
  post.subtract(Solid::box({10, -1, 100}, {20, 25, 160}));
  for (const double long_by : {-1.0, 0.0, 9e-7, 0.01}) {
    Solid rail = Solid::box({0, -300, 80}, {30, 0, 180});
    rail.add_disjoint(Solid::box({10, 0, 100}, {20, 25 + long_by, 160}));
    const splay::Rigid motion = splay::frame({5, 6, 7}, {1, 0.3, 0.1}, {0, 0.2, 1});
    const auto clashes =
        splay::find_clashes(std::vector<Solid>{post.transformed(motion), rail.transformed(motion)});
    if (long_by < 1e-6) {
      CHECK(clashes.empty());
    } else {
      REQUIRE(clashes.size() == 1);
      CHECK(clashes[0].volume == Approx(10 * 60 * long_by).epsilon(1e-6));
    }
  }
}

TEST_CASE("parts that cross edge to edge are told from parts that miss") {
  const Solid bar = Solid::box({-50, -1, -1}, {50, 1, 1});
  const double half = std::sqrt(2.0);
  for (const double gap : {1e-5, -1e-3}) {
    const splay::Rigid turned = splay::frame({0, 0, 0}, {1, 0, 0}, {0, 1, 1});
    const splay::Rigid over = splay::frame({0, 0, 2 * half + gap}, {0, 1, 0}, {1, 0, 1});
    const auto clashes =
        splay::find_clashes(std::vector<Solid>{bar.transformed(turned), bar.transformed(over)});
    CHECK(clashes.empty() == (gap > 0));
  }
}
