// Random furniture-like parts, stated so that two kernels can build them without sharing a step.
#pragma once

#include <cstdint>
#include <random>
#include <vector>

#include "geometry/solid.h"

namespace oracle {

// An upright prism in a frame.
struct PrismRecipe {
  splay::Polygon outline;
  double low = 0, high = 0;
  splay::Rigid frame;
};

// A blank less its cutters, all stated in one frame; then moved by `place`.
struct PartRecipe {
  PrismRecipe blank;
  std::vector<PrismRecipe> cutters;
  splay::Rigid place;
  bool doubtful = false;  // a cutter's face lies beside another by less than is told apart for sure
  double slight_angle = 1;  // radians: the least angle at which a cutter crosses a face
};

// How far cutter faces lie beside the faces they are meant for, some of the time.
enum class Fence {
  exact,     // as `within`, with what is below the tolerance set to nothing
  within,    // up to 2e-7 mm, or 4e-6 to 5e-4 mm
  doubtful,  // 4e-7 to 4e-6 mm as well, about the tolerance
};

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  double real(double from, double to) {
    return from + (to - from) * static_cast<double>(engine_() >> 11U) * 0x1p-53;
  }
  int whole(int from, int to) {  // both included
    return from + static_cast<int>(engine_() % static_cast<std::uint64_t>(to - from + 1));
  }
  bool chance(double p) { return real(0, 1) < p; }

 private:
  std::mt19937_64 engine_;
};

PrismRecipe box_recipe(splay::Vec3 low, splay::Vec3 high);

// Parts each with two to six cutters: housings, rabbets, notches, skew ends, facetted holes,
// mortises.
std::vector<PartRecipe> random_parts(std::uint64_t seed, Fence fence);

// A case with leaning sides, housed shelves, a back and legs: parts that touch and do not overlap.
// `shelves` sets the size: 4 parts and one for each shelf.
std::vector<PartRecipe> random_case(std::uint64_t seed, int shelves);

// The case with some of its parts moved a little, so that some overlap.
std::vector<PartRecipe> random_clashing_case(std::uint64_t seed);

// `count` parts in touching bays, about three cutters each, for timing.
std::vector<PartRecipe> many_parts(int count);

splay::Solid make_solid(const PartRecipe& recipe);
std::vector<splay::Solid> make_solids(const std::vector<PartRecipe>& recipes);

}  // namespace oracle
