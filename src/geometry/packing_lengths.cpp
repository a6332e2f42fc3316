#include "geometry/packing_lengths.h"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <optional>
#include <set>

#include "geometry/packing_bound.h"
#include "geometry/packing_dual.h"
#include "geometry/packing_fill.h"
#include "geometry/packing_random.h"
#include "geometry/packing_worth.h"

namespace splay::packing {

namespace {

Units longest_stretch(const Bar& bar) {
  return bar.stretches.empty() ? 0 : *std::max_element(bar.stretches.begin(), bar.stretches.end());
}

// Bars as stocks, for the arithmetic of costs.
std::vector<Stock> as_stocks(const std::vector<Bar>& bars) {
  std::vector<Stock> stocks;
  stocks.reserve(bars.size());
  for (const Bar& b : bars) stocks.push_back({longest_stretch(b), 1, b.count, b.cost});
  return stocks;
}

struct Filled {
  int bar = -1;
  std::vector<std::vector<int>> taken;  // of each length, by stretch
  Units left = 0;
};

// Filled bars and what is left of the supply.
struct Plan {
  std::vector<Filled> filled;
  Supply supply;
  Units unplaced = 0;
  std::vector<std::int64_t> used;  // bars of each kind
  double cost = 0;
};

class Cutter {
 public:
  Cutter(const std::vector<Bar>& bars, const Supply& supply, Random& random)
      : bars_(bars), random_(random) {
    plan_.supply = supply;
    plan_.used.assign(bars.size(), 0);
    for (std::size_t i = 0; i < supply.length.size(); ++i)
      plan_.unplaced += supply.length[i] * supply.count[i];
  }

  Plan& plan() { return plan_; }

  // Takes bars while any helps, each time the one that costs least for the length it serves.
  void fill_new_bars(double budget, double blink) {
    while (plan_.unplaced > 0) {
      std::optional<Filled> best;
      double best_rate = 0;
      for (std::size_t b = 0; b < bars_.size(); ++b) {
        if (bars_[b].count >= 0 && plan_.used[b] >= bars_[b].count) continue;
        if (plan_.cost + bars_[b].cost >= budget) continue;
        Filled filled = fill(static_cast<int>(b), blink);
        const Units whole =
            std::accumulate(bars_[b].stretches.begin(), bars_[b].stretches.end(), Units{0});
        if (filled.left == whole) continue;
        const double rate = bars_[b].cost / static_cast<double>(whole - filled.left);
        const bool better =
            !best || rate < best_rate || (rate == best_rate && filled.left < best->left);
        if (!better) continue;
        best = std::move(filled);
        best_rate = rate;
      }
      if (!best) return;
      take(std::move(*best));
    }
  }

  void refill(int bar, double blink) { take(fill(bar, blink)); }

  // Puts the pieces of a bar back into the supply and returns its kind.
  int empty(std::size_t index) {
    const Filled filled = std::move(plan_.filled[index]);
    plan_.filled.erase(plan_.filled.begin() + static_cast<std::ptrdiff_t>(index));
    for (const std::vector<int>& taken : filled.taken) put_back(taken, 1);
    --plan_.used[static_cast<std::size_t>(filled.bar)];
    plan_.cost -= bars_[static_cast<std::size_t>(filled.bar)].cost;
    return filled.bar;
  }

 private:
  void put_back(const std::vector<int>& taken, int sign) {
    for (std::size_t i = 0; i < taken.size(); ++i) {
      plan_.supply.count[i] += sign * taken[i];
      plan_.unplaced += sign * (taken[i] * plan_.supply.length[i]);
    }
  }

  // The best filling of a bar, longest stretch first; the supply is left as it is.
  Filled fill(int bar, double blink) {
    const std::vector<Units>& stretches = bars_[static_cast<std::size_t>(bar)].stretches;
    Filled filled{bar, std::vector<std::vector<int>>(stretches.size()), 0};
    std::vector<std::size_t> order(stretches.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return stretches[a] < stretches[b]; });
    for (const std::size_t s : order) {
      filled.taken[s] = fill_stretch(stretches[s], blink);
      put_back(filled.taken[s], -1);
      filled.left += stretches[s];
      for (std::size_t i = 0; i < filled.taken[s].size(); ++i)
        filled.left -= filled.taken[s][i] * plan_.supply.length[i];
    }
    for (const std::vector<int>& taken : filled.taken) put_back(taken, 1);
    return filled;
  }

  std::vector<int> fill_stretch(Units room, double blink) {
    const Supply& supply = plan_.supply;
    int must = -1;  // the longest that fits, for it will not get easier to place
    for (std::size_t i = 0; i < supply.length.size() && must < 0; ++i)
      if (supply.count[i] > 0 && supply.length[i] <= room &&
          (blink == 0 || random_.fraction() >= blink))
        must = static_cast<int>(i);
    std::vector<char> skip;
    if (blink > 0) {
      skip.resize(supply.length.size());
      for (char& s : skip) s = random_.fraction() < blink ? 1 : 0;
    }
    return fullest(supply, room, must, skip);
  }

  void take(Filled filled) {
    for (const std::vector<int>& taken : filled.taken) put_back(taken, -1);
    ++plan_.used[static_cast<std::size_t>(filled.bar)];
    plan_.cost += bars_[static_cast<std::size_t>(filled.bar)].cost;
    plan_.filled.push_back(std::move(filled));
  }

  const std::vector<Bar>& bars_;
  Random& random_;
  Plan plan_;
};

Supply supply_of(const std::vector<Units>& lengths) {
  std::map<Units, int, std::greater<>> kinds;
  for (const Units length : lengths) ++kinds[length];
  Supply supply;
  for (const auto& [length, count] : kinds) {
    supply.length.push_back(length);
    supply.count.push_back(count);
  }
  return supply;
}

// Empties and refills a few bars at a time until all pieces are placed under the budget.
bool reach(Cutter& cutter, double budget, const Effort& effort, std::int64_t& steps, double value,
           Random& random) {
  constexpr int most_emptied = 4;
  constexpr double blink = 0.15;
  while (cutter.plan().unplaced > 0) {
    if (steps >= effort.steps || cutter.plan().filled.empty()) return false;
    if (++steps % 1000 == 0 && effort.progress && !effort.progress(steps, value)) return false;
    const Plan before = cutter.plan();
    std::vector<int> emptied;
    const int wanted = 1 + random.below(most_emptied);
    for (int i = 0; i < wanted && !cutter.plan().filled.empty(); ++i)
      emptied.push_back(cutter.empty(
          static_cast<std::size_t>(random.below(static_cast<int>(cutter.plan().filled.size())))));
    const bool same_kinds = random.below(2) == 0;
    if (same_kinds)
      for (const int bar : emptied) cutter.refill(bar, blink);
    cutter.fill_new_bars(budget, blink);
    if (cutter.plan().unplaced > before.unplaced) cutter.plan() = before;
  }
  return true;
}

LengthPlan written(const Plan& plan, const std::vector<Units>& lengths) {
  std::map<Units, std::vector<int>> indices;
  for (std::size_t i = lengths.size(); i-- > 0;) indices[lengths[i]].push_back(static_cast<int>(i));
  LengthPlan result;
  result.cost = plan.cost;
  for (const Filled& filled : plan.filled) {
    FilledBar bar{filled.bar, {}};
    for (const std::vector<int>& taken : filled.taken) {
      std::vector<int>& pieces = bar.pieces.emplace_back();
      for (std::size_t i = 0; i < taken.size(); ++i) {
        std::vector<int>& stack = indices[plan.supply.length[i]];
        pieces.insert(pieces.end(), stack.rbegin(), stack.rbegin() + taken[i]);
        stack.resize(stack.size() - static_cast<std::size_t>(taken[i]));
      }
    }
    result.bars.push_back(std::move(bar));
  }
  for (const auto& [length, left] : indices)
    result.unplaced.insert(result.unplaced.end(), left.begin(), left.end());
  return result;
}

}  // namespace

double length_bound(const std::vector<Bar>& bars, const std::vector<Units>& lengths) {
  const std::vector<Stock> stocks = as_stocks(bars);
  Units whole = 1;
  for (const Stock& s : stocks) whole = std::max(whole, s.width);
  const auto share = [&](Units length) {
    return static_cast<double>(length) / static_cast<double>(whole);
  };
  std::set<double> shares;
  std::vector<Units> possible;
  for (const Units length : lengths)
    if (length <= whole) possible.push_back(length);
  for (const Units length : possible) shares.insert(share(length));
  constexpr int most_parts = 20;
  double best = 0;
  for (const DualFeasible& f : dual_feasible_functions(shares, most_parts, possible.size() + 1)) {
    std::vector<double> worth(bars.size(), 0);
    for (std::size_t b = 0; b < bars.size(); ++b)
      for (const Units stretch : bars[b].stretches) worth[b] += f(share(stretch));
    double weight = 0;
    for (const Units length : possible) weight += f(share(length));
    best = std::max(best, covering_cost(stocks, worth, weight));
  }
  return round_up_to_sheets(best, stocks);
}

LengthPlan cut_lengths(const std::vector<Bar>& bars, const std::vector<Units>& lengths,
                       const Effort& effort) {
  constexpr double unlimited = std::numeric_limits<double>::infinity();
  Random random(1);
  const double bound = length_bound(bars, lengths);
  const Supply supply = supply_of(lengths);
  Cutter first(bars, supply, random);
  first.fill_new_bars(unlimited, 0);
  std::int64_t steps = 0;
  if (first.plan().unplaced > 0) {
    const Effort half{effort.steps / 2, effort.progress};
    reach(first, unlimited, half, steps, first.plan().cost, random);
  }
  Plan best = first.plan();
  bool going = best.unplaced == 0;
  while (going && best.cost > bound) {
    const double budget = best.cost - 1e-9 * std::max(1.0, best.cost);
    Cutter cutter(bars, supply, random);
    cutter.plan() = best;
    while (cutter.plan().cost >= budget) {
      std::size_t least = cutter.plan().filled.size();
      for (std::size_t i = 0; i < cutter.plan().filled.size(); ++i) {
        const Filled& filled = cutter.plan().filled[i];
        if (bars[static_cast<std::size_t>(filled.bar)].cost <= 0) continue;
        if (least == cutter.plan().filled.size() || filled.left > cutter.plan().filled[least].left)
          least = i;
      }
      cutter.empty(least);
    }
    cutter.fill_new_bars(budget, 0);
    going = reach(cutter, budget, effort, steps, best.cost, random);
    if (going) best = cutter.plan();
  }
  LengthPlan result = written(best, lengths);
  result.bound = bound;
  result.steps = steps;
  return result;
}

}  // namespace splay::packing
