#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "oracle/occt.h"
#include "oracle/recipe.h"

namespace {

constexpr int kAssemblies = 200;

bool boxes_meet(const splay::Box& a, const splay::Box& b) {
  return a.low.x <= b.high.x && b.low.x <= a.high.x && a.low.y <= b.high.y && b.low.y <= a.high.y &&
         a.low.z <= b.high.z && b.low.z <= a.high.z;
}

}  // namespace

TEST_CASE("clashes agree pair by pair") {
  int pairs = 0, clashing = 0;
  for (std::uint64_t seed = 1; seed <= kAssemblies; ++seed) {
    const auto recipes = oracle::random_clashing_case(seed);
    const auto solids = oracle::make_solids(recipes);
    const auto shapes = oracle::occt::make_shapes(recipes);
    const auto clashes = splay::find_clashes(solids);
    for (std::size_t a = 0; a < solids.size(); ++a) {
      for (std::size_t b = a + 1; b < solids.size(); ++b) {
        INFO("seed " << seed << ", parts " << a << " and " << b);
        const auto found = std::find_if(clashes.begin(), clashes.end(), [&](const auto& clash) {
          return clash.a == static_cast<int>(a) && clash.b == static_cast<int>(b);
        });
        const double own = found == clashes.end() ? 0 : found->volume;
        if (!boxes_meet(solids[a].bounds(), solids[b].bounds())) {
          CHECK(own == 0);
          continue;
        }
        const double other = oracle::occt::common_volume(shapes[a], shapes[b]);
        // A layer of the tolerance over the smaller part's faces is contact, not clash.
        const double slack = 1e-6 * std::min(solids[a].area(), solids[b].area()) / 2;
        CHECK(std::abs(own - other) <= slack);
        CHECK(overlap_volume(solids[a], solids[b]) == Approx(own).margin(slack));
        ++pairs;
        clashing += own > 0;
      }
    }
  }
  CHECK(clashing > kAssemblies);
  WARN(kAssemblies << " assemblies of 6 parts, " << pairs << " pairs, " << clashing << " clashes");
}
