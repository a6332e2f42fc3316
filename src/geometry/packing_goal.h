// Ruin and recreate towards one goal (part of packing_search.h).
#pragma once

#include <limits>

#include "geometry/packing_state.h"

namespace splay::packing {

inline constexpr double no_budget = std::numeric_limits<double>::infinity();
inline constexpr std::uint64_t search_start = 1;  // of the random numbers; any would do

// Counts steps against an effort and asks the caller whether to go on.
class Meter {
 public:
  explicit Meter(const Effort& effort) : effort_(effort) {}
  bool step(double value) {
    if (stopped_ || done_ >= effort_.steps) return false;
    ++done_;
    if (done_ % 1000 == 0) report(value);
    return !stopped_;
  }
  void report(double value) {
    if (effort_.progress && !effort_.progress(done_, value)) stopped_ = true;
  }
  bool spent() const { return stopped_ || done_ >= effort_.steps; }
  std::int64_t done() const { return done_; }

 private:
  const Effort& effort_;
  std::int64_t done_ = 0;
  bool stopped_ = false;
};

// Ruins and recreates until every piece is placed under the budget; false if the effort or the
// patience (in steps) runs out first. `value` is what progress reports.
bool reach(PackingState& state, double budget, double value, std::int64_t patience, Meter& meter,
           Random& random);

}  // namespace splay::packing
