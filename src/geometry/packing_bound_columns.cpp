// The bound of packing_bound.h by column generation.
#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

#include "geometry/packing_bound.h"
#include "geometry/packing_cuts.h"
#include "geometry/packing_master.h"
#include "geometry/packing_table.h"
#include "geometry/packing_worth.h"

namespace splay::packing {

namespace {

// Kinds of pieces and stocks on a scale that the table can hold.
struct Scaled {
  std::vector<Offer> kinds;
  std::vector<double> demand;
  std::vector<Stock> stocks;
};

Units common_scale(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces) {
  constexpr Units finest = 1024;  // steps along the longest sheet when sizes must be rounded
  Units divisor = 0, longest = 1;
  for (const Piece& p : pieces) divisor = std::gcd(divisor, std::gcd(p.width, p.height));
  for (const Stock& s : stocks) longest = std::max({longest, s.width, s.height});
  divisor = std::max<Units>(1, divisor);
  return longest / divisor <= finest ? divisor : longest / finest + 1;
}

Scaled scaled(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces) {
  const Units scale = common_scale(stocks, pieces);
  Scaled result;
  std::map<std::tuple<Units, Units, bool>, double> kinds;
  for (const Piece& p : pieces) {
    Units w = p.width / scale, h = p.height / scale;
    if (w < 1 || h < 1) continue;  // too small for the scale: left out, which lowers the bound
    if (p.may_turn && w > h) std::swap(w, h);
    kinds[{w, h, p.may_turn}] += 1;
  }
  for (const auto& [kind, count] : kinds) {
    const auto& [w, h, may_turn] = kind;
    result.kinds.push_back({{w, h, may_turn}, 0, -1});
    result.demand.push_back(count);
  }
  result.stocks = stocks;
  for (Stock& s : result.stocks) {
    s.width /= scale;
    s.height /= scale;
  }
  return result;
}

CoveringMaster master_for(const Scaled& task) {
  double dear = 1;
  std::vector<double> limit;
  for (const Stock& s : task.stocks) {
    if (s.count >= 0) limit.push_back(static_cast<double>(s.count));
    dear += s.cost;
  }
  return {task.demand, std::vector<double>(task.demand.size(), dear), limit};
}

// The iteration: the master's prices, drawn towards the best weights so far so that they do not
// swing (P. Wentges, "Weighted Dantzig-Wolfe decomposition for linear mixed-integer programming",
// International Transactions in Operational Research 4 (1997)).
class Pricing {
 public:
  Pricing(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces)
      : task_(scaled(stocks, pieces)), master_(master_for(task_)), centre_(task_.kinds.size()) {
    double sheet = 1;
    for (const Stock& s : task_.stocks) sheet = std::max(sheet, area({s.width, s.height, false}));
    for (std::size_t i = 0; i < centre_.size(); ++i)
      centre_[i] = area(task_.kinds[i].piece) / sheet;
  }

  double run(const Effort& effort) {
    constexpr double pull = 0.8;
    double weight_of_centre = pull;
    for (std::int64_t step = 0; step < effort.steps; ++step) {
      weigh(weight_of_centre);
      bool lower = price_stocks();
      lower = master_.settle() || lower;
      const double bound = covering_cost(task_.stocks, worth_, weight_);
      const bool better = bound > best_;
      if (better) {
        best_ = bound;
        move_centre();
      }
      const double rounded = round_up_to_sheets(best_, task_.stocks);
      if (rounded >= round_up_to_sheets(master_.cost(), task_.stocks)) break;
      if (!lower && weight_of_centre <= 0) break;
      weight_of_centre = lower || better ? pull : std::max(0.0, weight_of_centre - 0.2);
      if (effort.progress && !effort.progress(step + 1, rounded)) break;
    }
    return round_up_to_sheets(best_, task_.stocks);
  }

 private:
  // Sets the weights to price with.
  void weigh(double weight_of_centre) {
    weight_ = 0;
    for (std::size_t i = 0; i < centre_.size(); ++i) {
      const double price = std::max(0.0, master_.prices()[i]);
      task_.kinds[i].value = weight_of_centre * centre_[i] + (1 - weight_of_centre) * price;
      weight_ += task_.kinds[i].value * task_.demand[i];
    }
  }

  // Only the direction of weights matters to the bound, but their size to the master.
  void move_centre() {
    double scale = 1;
    for (std::size_t s = 0; s < worth_.size(); ++s)
      if (task_.stocks[s].count < 0 && worth_[s] > 0)
        scale = std::min(scale, task_.stocks[s].cost / worth_[s]);
    for (std::size_t i = 0; i < centre_.size(); ++i) centre_[i] = task_.kinds[i].value * scale;
  }

  // Cuts every stock best at the weights; true if one of the patterns improves the master.
  bool price_stocks() {
    bool lower = false;
    std::size_t row = centre_.size();
    worth_.assign(task_.stocks.size(), 0);
    for (std::size_t s = 0; s < task_.stocks.size(); ++s) {
      const Stock& stock = task_.stocks[s];
      const GuillotineTable table(task_.kinds, stock.width, stock.height);
      worth_[s] = table.value(stock.width, stock.height);
      std::vector<double> column(master_.prices().size(), 0);
      if (stock.count >= 0) column[row++] = 1;
      const CutTree tree = table.cuts(stock.width, stock.height);
      for (const int region : regions_with(tree, Content::piece))
        column[static_cast<std::size_t>(tree[static_cast<std::size_t>(region)].piece)] += 1;
      lower = master_.enter(stock.cost, column) || lower;
    }
    return lower;
  }

  Scaled task_;
  CoveringMaster master_;
  std::vector<double> centre_;  // the best weights so far
  std::vector<double> worth_;   // of the stocks at the present weights
  double weight_ = 0;           // of all pieces
  double best_ = 0;
};

}  // namespace

double column_bound(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces,
                    const Effort& effort) {
  return Pricing(stocks, pieces).run(effort);
}

}  // namespace splay::packing
