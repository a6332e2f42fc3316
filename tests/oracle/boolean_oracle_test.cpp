#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "oracle/occt.h"
#include "oracle/recipe.h"

namespace {

constexpr int kAssemblies = 240;
constexpr double kRelative = 1e-9;
constexpr double kTolerance = 1e-6;      // mm, of a plane
constexpr double kOcctTolerance = 1e-7;  // mm, Precision::Confusion()

double edge_length(const splay::Boundary& boundary) {
  double sum = 0;
  for (const splay::Edge& edge : boundary.edges) sum += norm(edge.b - edge.a);
  return sum;
}

}  // namespace

// Where a cutter lies within the tolerance of a face it must cut as if it lay on it: such parts are
// held against OpenCASCADE's for the cutter on the face.
TEST_CASE("volumes and areas of cut parts agree") {
  int parts = 0, beside = 0;
  for (std::uint64_t seed = 1; seed <= kAssemblies; ++seed) {
    const auto recipes = oracle::random_parts(seed, oracle::Fence::within);
    const auto exact = oracle::random_parts(seed, oracle::Fence::exact);
    for (std::size_t i = 0; i < recipes.size(); ++i) {
      INFO("seed " << seed << ", part " << i);
      const splay::Solid solid = oracle::make_solid(recipes[i]);
      const TopoDS_Shape shape = oracle::occt::make_shape(exact[i]);
      const splay::Boundary boundary = solid.boundary();
      double area = 0;
      for (const splay::Face& face : boundary.faces) area += face.area;
      double volume_slack = kRelative * solid.volume(), area_slack = kRelative * area;
      if (recipes[i].doubtful) {
        volume_slack += area * kTolerance;
        area_slack += edge_length(boundary) * kTolerance;
      }
      // A crossing at a slight angle is only as sure along the face as the other kernel's tolerance
      // allows: that much of every edge it ends.
      if (recipes[i].slight_angle < 1e-3) {
        area_slack += kOcctTolerance / recipes[i].slight_angle * 20 *
                      (recipes[i].blank.high - recipes[i].blank.low);
      }
      CHECK(std::abs(solid.volume() - oracle::occt::volume(shape)) <= volume_slack);
      CHECK(std::abs(area - oracle::occt::area(shape)) <= area_slack);
      ++parts;
      beside += recipes[i].doubtful;
    }
  }
  WARN(kAssemblies << " assemblies, " << parts << " parts, " << beside
                   << " of them with a cutter within the tolerance of a face");
}

// About the tolerance a cutter may or may not count as on a face, and OpenCASCADE is no guide
// there; but the surface must be closed (boundary() throws otherwise), and the order of the cuts
// must not matter by more than two layers of the tolerance.
TEST_CASE("cutters about the tolerance beside a face leave a closed surface in either order") {
  for (std::uint64_t seed = 1; seed <= 5 * kAssemblies; ++seed) {
    for (oracle::PartRecipe& recipe : oracle::random_parts(seed, oracle::Fence::doubtful)) {
      INFO("seed " << seed);
      const splay::Solid solid = oracle::make_solid(recipe);
      std::reverse(recipe.cutters.begin(), recipe.cutters.end());
      const splay::Solid other = oracle::make_solid(recipe);
      double area = 0;
      CHECK_NOTHROW(area = std::max(solid.area(), other.area()));
      CHECK(std::abs(solid.volume() - other.volume()) <= 2 * kTolerance * area);
      CHECK(difference_volume(solid, other) <= 4 * kTolerance * area);
    }
  }
}
