#include "geometry/packing_dual.h"

#include <cmath>

namespace splay::packing {

namespace {

constexpr double noise = 1e-10;  // far over the rounding of a fraction, under a unit of any board

}  // namespace

double DualFeasible::operator()(double x) const {
  if (parts > 0) {
    const double scaled = (parts + 1) * x, whole = std::round(scaled);
    return std::abs(scaled - whole) < noise ? x : std::floor(scaled) / parts;
  }
  if (x > 1 - small + noise) return 1;
  return x < small - noise ? 0 : x;
}

std::vector<DualFeasible> dual_feasible_functions(const std::set<double>& lengths, int most_parts,
                                                  std::size_t most_small) {
  std::vector<DualFeasible> functions = {{0, 0}};
  for (int parts = 1; parts <= most_parts; ++parts) functions.push_back({parts, 0});
  std::vector<double> small;
  for (const double x : lengths)
    if (x <= 0.5) small.push_back(x);
  const std::size_t stride = small.size() / most_small + 1;
  for (std::size_t i = 0; i < small.size(); i += stride) functions.push_back({0, small[i]});
  return functions;
}

}  // namespace splay::packing
