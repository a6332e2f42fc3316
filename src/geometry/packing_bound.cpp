#include "geometry/packing_bound.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <set>

#include "geometry/packing_dual.h"
#include "geometry/packing_worth.h"

namespace splay::packing {

double covering_cost(const std::vector<Stock>& stocks, const std::vector<double>& worth,
                     double weight) {
  double scale = std::numeric_limits<double>::infinity();
  for (std::size_t s = 0; s < stocks.size(); ++s)
    if (stocks[s].count < 0 && worth[s] > 0) scale = std::min(scale, stocks[s].cost / worth[s]);
  // Without an unlimited stock any scale is valid: try those at which a limited sheet breaks even.
  std::vector<double> scales = {scale};
  for (std::size_t s = 0; s < stocks.size(); ++s)
    if (stocks[s].count >= 0 && worth[s] > 0)
      scales.push_back(std::min(scale, stocks[s].cost / worth[s]));
  double best = 0;
  for (const double k : scales) {
    if (!std::isfinite(k)) continue;
    double cost = k * weight;
    for (std::size_t s = 0; s < stocks.size(); ++s)
      if (stocks[s].count >= 0)
        cost -= static_cast<double>(stocks[s].count) * std::max(0.0, k * worth[s] - stocks[s].cost);
    best = std::max(best, cost);
  }
  return best;
}

double round_up_to_sheets(double bound, const std::vector<Stock>& stocks) {
  double unit = 0;
  for (const Stock& stock : stocks) {
    const double cost = stock.cost;
    if (cost <= 0 || cost == unit) continue;
    if (unit == 0) {
      unit = cost;
    } else if (cost == std::floor(cost) && unit == std::floor(unit) && cost < 1e15) {
      unit = static_cast<double>(
          std::gcd(static_cast<std::int64_t>(cost), static_cast<std::int64_t>(unit)));
    } else {
      return bound;
    }
  }
  constexpr double noise = 1e-6;  // of a sheet; the arithmetic of the bounds is good to far less
  return unit == 0 ? 0 : std::max(0.0, std::ceil(bound / unit - noise) * unit);
}

double area_bound(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces) {
  std::vector<double> worth;
  worth.reserve(stocks.size());
  for (const Stock& s : stocks) worth.push_back(area({s.width, s.height, false}));
  double weight = 0;
  for (const Piece& p : pieces) weight += area(p);
  return round_up_to_sheets(covering_cost(stocks, worth, weight), stocks);
}

double dual_feasible_bound(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces) {
  Units width = 1, height = 1;
  for (const Stock& s : stocks) {
    width = std::max(width, s.width);
    height = std::max(height, s.height);
  }
  const auto over = [](Units a, Units b) {
    return static_cast<double>(a) / static_cast<double>(b);
  };
  std::set<double> across, up;
  for (const Piece& p : pieces) {
    across.insert(over(p.width, width));
    up.insert(over(p.height, height));
    if (!p.may_turn) continue;
    across.insert(over(p.height, width));
    up.insert(over(p.width, height));
  }
  constexpr int most_parts = 6;
  constexpr std::size_t most_small = 24;
  double best = 0;
  for (const DualFeasible& f : dual_feasible_functions(across, most_parts, most_small)) {
    for (const DualFeasible& g : dual_feasible_functions(up, most_parts, most_small)) {
      std::vector<double> worth;
      worth.reserve(stocks.size());
      for (const Stock& s : stocks)
        worth.push_back(f(over(s.width, width)) * g(over(s.height, height)));
      double weight = 0;
      for (const Piece& p : pieces) {
        const bool upright = p.width <= width && p.height <= height;
        const bool turned = p.may_turn && p.height <= width && p.width <= height;
        const double one = f(over(p.width, width)) * g(over(p.height, height));
        const double two = f(over(p.height, width)) * g(over(p.width, height));
        if (upright || turned)
          weight += upright && turned ? std::min(one, two) : upright ? one : two;
      }
      best = std::max(best, covering_cost(stocks, worth, weight));
    }
  }
  return round_up_to_sheets(best, stocks);
}

double cost_bound(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces,
                  const Effort& effort, double reached) {
  double bound = area_bound(stocks, pieces);
  if (bound < reached) bound = std::max(bound, dual_feasible_bound(stocks, pieces));
  if (bound < reached) bound = std::max(bound, column_bound(stocks, pieces, effort));
  return bound;
}

}  // namespace splay::packing
