// Mass and centre of mass, of parts and of whole pieces with parts of unlike density.
#include <catch2/catch.hpp>

#include "oracle/occt.h"
#include "oracle/recipe.h"

namespace {

constexpr double kAway = 1e-6;  // mm between the two centres
constexpr double kRelative = 1e-9;

}  // namespace

TEST_CASE("centres of mass of cut parts agree") {
  for (std::uint64_t seed = 1; seed <= 80; ++seed) {
    for (const oracle::PartRecipe& recipe : oracle::random_parts(seed, oracle::Fence::exact)) {
      INFO("seed " << seed);
      const splay::Solid solid = oracle::make_solid(recipe);
      const TopoDS_Shape shape = oracle::occt::make_shape(recipe);
      CHECK(norm(solid.centroid() - oracle::occt::centroid(shape)) <= kAway);
    }
  }
}

TEST_CASE("mass and centre of mass of whole cases agree") {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    INFO("seed " << seed);
    oracle::Random random(seed);
    double mine = 0, theirs = 0;
    splay::Vec3 my_moment, their_moment;
    for (const oracle::PartRecipe& recipe : oracle::random_case(seed, 3)) {
      const double density = random.real(350, 800) * 1e-9;  // kg/mm3
      const splay::Solid solid = oracle::make_solid(recipe);
      const TopoDS_Shape shape = oracle::occt::make_shape(recipe);
      const double mass = density * solid.volume(),
                   their_mass = density * oracle::occt::volume(shape);
      mine += mass;
      theirs += their_mass;
      my_moment = my_moment + solid.centroid() * mass;
      their_moment = their_moment + oracle::occt::centroid(shape) * their_mass;
    }
    CHECK(mine == Approx(theirs).epsilon(kRelative));
    CHECK(norm(my_moment * (1 / mine) - their_moment * (1 / theirs)) <= kAway);
  }
}
