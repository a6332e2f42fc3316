#include "geometry/packing_goal.h"

#include <algorithm>

namespace splay::packing {

namespace {

constexpr int most_ruined = 12;
constexpr std::size_t late_length = 100;
constexpr double blink = 0.02;

}  // namespace

bool reach(PackingState& state, double budget, double value, std::int64_t patience, Meter& meter,
           Random& random) {
  double lost = state.unplaced_area();
  std::vector<double> late(late_length, lost);
  for (std::int64_t i = 0; !state.unplaced().empty(); ++i) {
    if (i >= patience || !meter.step(value)) return false;
    PackingState next = state;
    next.ruin(1 + random.below(most_ruined), random);
    next.recreate(random, budget, blink);
    const double now = next.unplaced_area();
    double& then = late[static_cast<std::size_t>(i) % late_length];
    if (now <= lost || now <= then) {
      state = std::move(next);
      lost = now;
    }
    then = std::min(then, lost);
  }
  return true;
}

}  // namespace splay::packing
