#include "geometry/packing_search.h"

#include <algorithm>
#include <numeric>

#include "geometry/packing_goal.h"

namespace splay::packing {

namespace {

std::vector<std::vector<int>> stock_orders(const std::vector<Stock>& stocks) {
  std::vector<int> order(stocks.size());
  std::iota(order.begin(), order.end(), 0);
  const auto stock = [&](int s) -> const Stock& { return stocks[static_cast<std::size_t>(s)]; };
  const auto size = [&](int s) {
    return static_cast<double>(stock(s).width) * static_cast<double>(stock(s).height);
  };
  std::vector<std::vector<int>> orders;
  std::stable_sort(order.begin(), order.end(),
                   [&](int a, int b) { return stock(a).cost * size(b) < stock(b).cost * size(a); });
  orders.push_back(order);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return size(a) > size(b); });
  orders.push_back(order);
  std::stable_sort(order.begin(), order.end(),
                   [&](int a, int b) { return stock(a).cost < stock(b).cost; });
  orders.push_back(order);
  std::sort(orders.begin() + 1, orders.end());
  orders.erase(std::unique(orders.begin(), orders.end()), orders.end());
  return orders;
}

// A layout at once: the best of a few orders of pieces and of stocks.
PackingState first_layout(const PackingState& empty, const std::vector<std::vector<int>>& orders,
                          Random& random) {
  constexpr int tries = 3;
  std::optional<PackingState> best;
  for (const std::vector<int>& order : orders) {
    for (int i = 0; i < tries; ++i) {
      PackingState state = empty;
      state.prefer(order);
      state.recreate(random, no_budget, 0);
      const bool better =
          !best || state.unplaced_area() < best->unplaced_area() ||
          (state.unplaced_area() == best->unplaced_area() && state.cost() < best->cost());
      if (better) best = std::move(state);
    }
  }
  return *best;
}

}  // namespace

Packing pack_sheets(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces,
                    const Effort& effort, double enough) {
  Random random(search_start);
  Packing packing =
      first_layout(PackingState(stocks, pieces), stock_orders(stocks), random).result();
  if (effort.progress) effort.progress(0, packing.cost);
  improve_sheets(packing, stocks, pieces, effort, enough);
  return packing;
}

void improve_sheets(Packing& packing, const std::vector<Stock>& stocks,
                    const std::vector<Piece>& pieces, const Effort& effort, double enough) {
  Random random(search_start + static_cast<std::uint64_t>(packing.steps));
  Meter meter(effort);
  const std::vector<std::vector<int>> orders = stock_orders(stocks);
  PackingState state(stocks, pieces);
  if (!packing.unplaced.empty()) {  // short of sheets, or merely laid out badly
    state.load(packing);
    const double before = state.unplaced_area();
    reach(state, no_budget, packing.cost, effort.steps / 2, meter, random);
    if (state.unplaced_area() < before) {
      const std::int64_t steps = packing.steps;
      packing = state.result();
      packing.steps = steps;
    }
  }
  // Several kinds of sheet make several mixes to try.
  std::int64_t patience = effort.steps;
  if (orders.size() > 1) patience = std::max<std::int64_t>(1, effort.steps / 8);
  const std::int64_t before = packing.steps;
  std::size_t turn = 0;
  while (packing.unplaced.empty() && packing.cost > enough && !meter.spent()) {
    const double budget = packing.cost - 1e-9 * std::max(1.0, packing.cost);
    state.load(packing);
    state.prefer(orders[turn++ % orders.size()]);
    state.close_sheets(budget);
    state.recreate(random, budget, 0);
    if (!reach(state, budget, packing.cost, patience, meter, random)) continue;
    packing = state.result();
    meter.report(packing.cost);
  }
  packing.steps = before + meter.done();
}

}  // namespace splay::packing
