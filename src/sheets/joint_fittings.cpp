#include "sheets/joint_fittings.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace splay::sheets {

namespace {

// How far the wood's nearest lines are from a point along `across` and against it.
std::array<double, 2> clear_beside(const JointCut& cut, Vec2 at, Vec2 across) {
  std::array<double, 2> near{1e300, 1e300};
  for (const drafting::Loops& loops : cut.loops)
    for (const std::vector<Vec2>& loop : loops)
      for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vec2 a = loop[i] - at, b = loop[(i + 1) % loop.size()] - at;
        const double sa = cross(across, a), sb = cross(across, b);
        if ((sa < 0) == (sb < 0)) continue;
        const double far = dot(across, a + (b - a) * (sa / (sa - sb)));
        double& side = near[far > 0 ? 0 : 1];
        side = std::min(side, std::abs(far));
      }
  return near;
}

}  // namespace

void add_fittings(const parts::Assembly& assembly, const parts::Joint& joint, JointCut& cut) {
  constexpr double in_plane = 1e-3;
  for (const parts::Fitting& fitting : assembly.fittings) {
    if (fitting.joint != joint.name || fitting.length <= 0) continue;
    if (std::abs(dot(fitting.axis, cut.plane.n)) > in_plane) continue;
    if (std::abs(cut.plane.distance(fitting.at)) > in_plane * fitting.length + 1e-6) continue;
    cut.fittings.push_back({&fitting, cut.view.project(fitting.at),
                            cut.view.project(fitting.at + fitting.axis * fitting.length),
                            fitting.diameter / 2});
  }
}

void widen_fittings(JointCut& cut) {
  constexpr double broad = 1.5;  // diameters: less is room in a hole
  for (CutFitting& fitting : cut.fittings) {
    const Vec2 run = fitting.to - fitting.from;
    const auto [one, other] = clear_beside(cut, fitting.from + run * 0.25, left_of(unit(run)));
    if (std::abs(one - other) < 1e-3 && one > broad * fitting.half) fitting.half = one;
  }
}

}  // namespace splay::sheets
