#include <algorithm>
#include <array>
#include <cmath>

#include "base/figure.h"
#include "fabrication/plan.h"
#include "fabrication/soundness.h"

namespace splay::fabrication {

namespace {

// On end, on its side or on its back: the two sizes that face the way. The best is what leaves the
// most room on its tighter side.
Passage best_way(const model::Way& way, const std::array<double, 3>& size) {
  Passage best;
  best.name = way.name;
  double room = -1e300;
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      if (i == j) continue;
      const double left = std::min(way.width->mm - size[i], way.height->mm - size[j]);
      if (left <= room) continue;
      room = left;
      best.across = size[i];
      best.up = size[j];
    }
  }
  best.passes = room >= 0;
  return best;
}

}  // namespace

double out_of_square(double diagonal_1, double diagonal_2, double side_1, double side_2) {
  return std::asin((diagonal_2 * diagonal_2 - diagonal_1 * diagonal_1) / (4 * side_1 * side_2));
}

double turning_height(double height, double depth) { return std::hypot(height, depth); }

void judge_passage(Plan& plan) {
  if (plan.soundness.balances.empty()) return;
  const Balance& whole = plan.soundness.balances.front();
  const Vec3 size = whole.high - whole.low;
  const FigureStyle figures = plan.project->job.figures();
  const model::Room& room = plan.project->room;
  for (std::size_t i = 0; i < room.ways.size(); ++i) {
    const Passage passage = best_way(room.ways[i], {size.x, size.y, size.z});
    if (!passage.passes)
      plan.findings.push_back({Level::caution,
                               "too-large-for-way",
                               {},
                               "It does not pass " + passage.name + " straight, " +
                                   figures.with_unit(room.ways[i].width->mm) + " by " +
                                   figures.with_unit(room.ways[i].height->mm) +
                                   " clear: at best it takes " + figures.with_unit(passage.across) +
                                   " by " + figures.with_unit(passage.up) + ".",
                               "Build it to be taken apart, or find another way in."});
    plan.soundness.passages.push_back(passage);
  }
  plan.soundness.turned_up = turning_height(size.z, std::min(size.x, size.y));
  if (!room.ceiling.given || plan.soundness.turned_up <= room.ceiling->mm) return;
  plan.findings.push_back({Level::caution,
                           "too-high-to-turn-up",
                           {},
                           "To be turned up from lying it needs " +
                               figures.with_unit(plan.soundness.turned_up) +
                               " under a ceiling of " + figures.with_unit(room.ceiling->mm) + ".",
                           "Bring it in upright, or build it in two parts."});
}

}  // namespace splay::fabrication
