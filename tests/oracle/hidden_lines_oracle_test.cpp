#include <catch2/catch.hpp>

#include "base/tolerance.h"
#include "oracle/line_cover.h"
#include "oracle/occt.h"
#include "oracle/recipe.h"

namespace {

constexpr int kAssemblies = 200;
// An end may be off by one fragment that is too short to draw, on either side.
constexpr double kFragment = 2 * splay::tolerance::shortest_line;
// OpenCASCADE takes the further of two silhouette edges 0.02 mm apart as hidden.
constexpr double kAside = 0.03;

}  // namespace

TEST_CASE("visible lines, and all lines together, agree") {
  int views = 0;
  for (std::uint64_t seed = 1; seed <= kAssemblies; ++seed) {
    const auto recipes = oracle::random_case(seed, seed % 10 == 0 ? 4 : 1);
    const auto solids = oracle::make_solids(recipes);
    const auto shapes = oracle::occt::make_shapes(recipes);
    REQUIRE(find_clashes(solids).empty());
    oracle::Random random(seed);
    const double turn = random.real(-3, 3), rise = random.real(-1, 1);
    for (const splay::View& view :
         {splay::View::front(), splay::View::top(), splay::View::axonometric(turn, rise)}) {
      INFO("seed " << seed << ", view " << views % 3);
      const auto own = splay::hidden_lines(solids, view);
      const auto other = oracle::occt::hidden_lines(shapes, view);
      const auto own_visible = oracle::visible_ones(own);
      const auto other_visible = oracle::visible_ones(other);
      CHECK(oracle::longest_uncovered(own_visible, other_visible, kAside) <= kFragment);
      CHECK(oracle::longest_uncovered(other_visible, own_visible, kAside) <= kFragment);
      CHECK(oracle::longest_uncovered(own, other, kAside) <= kFragment);
      CHECK(oracle::longest_uncovered(other, own, kAside) <= kFragment);
      CHECK(oracle::longest_repeated(own, 1e-7) <= kFragment);
      ++views;
    }
  }
  WARN(kAssemblies << " assemblies of 5 or 8 parts, " << views << " views");
}
