// No other kernel here, but a second way: rays through points of the image.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "geometry/hidden_lines.h"
#include "oracle/recipe.h"

namespace {

// What a ray at a point of the image meets first.
struct Met {
  int solid = -1;
  splay::Vec3 normal;
};

Met nearest_face(const std::vector<splay::Solid>& solids, const splay::View& view, splay::Vec2 at) {
  const splay::Vec3 base = view.right * at.x + view.up * at.y;
  Met nearest;
  double greatest = -1e300;
  for (std::size_t s = 0; s < solids.size(); ++s) {
    for (std::size_t c = 0; c < solids[s].cells().size(); ++c) {
      double enter = -1e300, leave = 1e300;
      splay::Vec3 normal;
      for (const splay::Plane& plane : solids[s].cell_region(c)) {
        const double rate = dot(plane.n, view.toward), room = -plane.distance(base);
        if (rate > 1e-12 && room / rate < leave) {
          leave = room / rate;
          normal = plane.n;
        }
        if (rate < -1e-12) enter = std::max(enter, room / rate);
        if (std::abs(rate) <= 1e-12 && room < 0) leave = -1e300;
      }
      if (enter < leave && leave > greatest) {
        greatest = leave;
        nearest = {static_cast<int>(s), normal};
      }
    }
  }
  return nearest;
}

}  // namespace

TEST_CASE("visible faces show at every point what a ray meets first, once, and painted ones last") {
  int points = 0, hits = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const auto solids = oracle::make_solids(oracle::random_case(seed, 3));
    oracle::Random random(seed);
    const double turn = random.real(-3, 3), rise = random.real(-1, 1);
    const splay::View view = splay::View::axonometric(turn, rise);
    const auto faces = splay::visible_faces(solids, view);
    const auto layers = splay::painted_faces(solids, view);
    for (int i = 0; i < 500; ++i) {
      const double x = random.real(-900, 1500), y = random.real(-500, 1000);
      const splay::Vec2 at{x, y};
      INFO("seed " << seed << ", point " << at.x << " " << at.y);
      int shown = -1, times = 0;
      for (const splay::ToneFace& face : faces) {
        int inside = 0;
        for (const auto& loop : face.loops) inside += splay::contains(loop, at);
        if (inside % 2 == 0) continue;
        shown = face.solid;
        ++times;
      }
      Met painted;
      for (const splay::ToneFace& face : layers) {
        int inside = 0;
        for (const auto& loop : face.loops) inside += splay::contains(loop, at);
        if (inside % 2 != 0) painted = {face.solid, face.normal};
      }
      const Met nearest = nearest_face(solids, view, at);
      CHECK(painted.solid == nearest.solid);
      CHECK(norm(painted.normal - nearest.normal) < 1e-9);
      CHECK(shown == nearest.solid);
      CHECK(times == (nearest.solid < 0 ? 0 : 1));
      ++points;
      hits += nearest.solid >= 0;
    }
  }
  CHECK(hits > points / 10);
}
