#include "geometry/packing_search.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <stdexcept>

#include "geometry/packing_state.h"

namespace splay::packing {

namespace {

constexpr int most_ruined = 12;
constexpr std::size_t late_length = 100;
constexpr double blink = 0.02;
constexpr double unlimited = std::numeric_limits<double>::infinity();
constexpr std::uint64_t first_number = 1;  // any fixed number would do

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

// Ruins and recreates until every piece is placed under the budget; `value` is what progress
// reports.
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
      state.recreate(random, unlimited, 0);
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
  Random random(first_number);
  Packing packing =
      first_layout(PackingState(stocks, pieces), stock_orders(stocks), random).result();
  if (effort.progress) effort.progress(0, packing.cost);
  improve_sheets(packing, stocks, pieces, effort, enough);
  return packing;
}

void improve_sheets(Packing& packing, const std::vector<Stock>& stocks,
                    const std::vector<Piece>& pieces, const Effort& effort, double enough) {
  Random random(first_number + static_cast<std::uint64_t>(packing.steps));
  Meter meter(effort);
  const std::vector<std::vector<int>> orders = stock_orders(stocks);
  PackingState state(stocks, pieces);
  if (!packing.unplaced.empty()) {  // short of sheets, or merely laid out badly
    state.load(packing);
    const double before = state.unplaced_area();
    reach(state, unlimited, packing.cost, effort.steps / 2, meter, random);
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

Packing pack_strip(Units width, const std::vector<Piece>& pieces, const Effort& effort) {
  double total = 0;
  Units tallest = 0;
  Units stacked = 0;
  for (const Piece& p : pieces) {
    const Units side = std::min(p.width, p.height);
    if ((p.may_turn ? side : p.width) > width)
      throw std::invalid_argument("a piece is wider than the strip");
    const bool must_turn = p.width > width;
    const Units least = p.may_turn && !must_turn && p.height <= width ? side
                        : must_turn                                   ? p.width
                                                                      : p.height;
    tallest = std::max(tallest, least);
    stacked += std::max(p.width, p.height);
    total += area(p);
  }
  const auto rows = static_cast<Units>((total - 0.5) / static_cast<double>(width)) + 1;
  const Units floor = std::max(tallest, rows);
  Random random(first_number);
  Meter meter(effort);
  const std::vector<Stock> stock = {{width, stacked, 1, 0}};
  PackingState state(stock, pieces);
  for (Units height = floor;; height += std::max<Units>(1, height / 20)) {
    state = PackingState(stock, pieces);
    state.add_fixed_sheet(0, width, std::min(height, stacked));
    state.recreate(random, unlimited, 0);
    if (state.unplaced().empty()) break;
  }
  Packing best = state.result();
  while (true) {
    const Units height = best.sheets[0].tree.used_height();
    best.sheets[0].tree.resize(width, height);
    meter.report(static_cast<double>(height));
    if (height <= floor || meter.spent()) break;
    const Units goal = height - std::max<Units>(1, (height - floor) / 16);
    state.load(best);
    state.shrink(0, width, goal, random);
    state.recreate(random, unlimited, 0);
    if (!reach(state, unlimited, static_cast<double>(height), effort.steps, meter, random)) break;
    best = state.result();
  }
  best.steps = meter.done();
  return best;
}

void gather_off_cut(Packing& packing, const std::vector<Piece>& pieces, const Effort& effort) {
  if (packing.sheets.empty() || !packing.unplaced.empty()) return;
  std::size_t emptiest = 0;
  std::vector<Stock> stocks;
  for (std::size_t s = 0; s < packing.sheets.size(); ++s) {
    const SlicingTree& tree = packing.sheets[s].tree;
    if (tree.free_area() > packing.sheets[emptiest].tree.free_area()) emptiest = s;
    stocks.push_back({tree.width(), tree.height(), 1, 0});
  }
  const Units full[2] = {packing.sheets[emptiest].tree.width(),
                         packing.sheets[emptiest].tree.height()};
  Packing best = packing;
  double most = 0;
  Random random(first_number);
  for (int axis = 0; axis < 2; ++axis) {
    const Effort half{effort.steps / 2, effort.progress};
    Meter meter(half);
    Packing current = packing;
    for (std::size_t s = 0; s < current.sheets.size(); ++s)
      current.sheets[s].stock = static_cast<int>(s);
    while (true) {
      SlicingTree& tree = current.sheets[emptiest].tree;
      const Units used = axis == 0 ? tree.used_width() : tree.used_height();
      const double left =
          static_cast<double>(full[axis] - used) * static_cast<double>(full[1 - axis]);
      if (left > most) {
        most = left;
        best = current;
        meter.report(left);
      }
      if (used == 0 || meter.spent()) break;
      const Units goal = used - std::max<Units>(1, used / 32);
      PackingState state(stocks, pieces);
      state.load(current);
      state.fix_sheets();
      state.shrink(static_cast<int>(emptiest), axis == 0 ? goal : full[0],
                   axis == 1 ? goal : full[1], random);
      state.recreate(random, unlimited, 0);
      if (!reach(state, unlimited, most, half.steps, meter, random)) break;
      current = state.result();
    }
    packing.steps += meter.done();
  }
  best.sheets[emptiest].tree.resize(full[0], full[1]);
  for (std::size_t s = 0; s < best.sheets.size(); ++s)
    best.sheets[s].stock = packing.sheets[s].stock;
  best.cost = packing.cost;
  best.steps = packing.steps;
  packing = std::move(best);
}

}  // namespace splay::packing
