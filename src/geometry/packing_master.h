// The restricted master problem of column generation: the least cost of a mix of cutting patterns
// that covers all demands, with limits on some stocks, as a linear program solved by the revised
// simplex method with an explicit inverse. P. Gilmore, R. Gomory, "A linear programming approach to
// the cutting-stock problem", Operations Research 9 (1961) 849-859 and 11 (1963) 863-888.
#pragma once

#include <vector>

namespace splay::packing {

class CoveringMaster {
 public:
  // One row "at least demand[i]" for each kind of piece, then one row "at most limit[s]" for each
  // limited stock. single_cost[i] is a cost at which one piece of kind i can always be had.
  CoveringMaster(const std::vector<double>& demand, const std::vector<double>& single_cost,
                 const std::vector<double>& limit);

  // Prices of the rows: at least 0 for demands and at most 0 for limits once settle() has run.
  const std::vector<double>& prices() const { return prices_; }
  double cost() const;

  // Takes a pattern into the mix if that lowers the cost; false if it does not. The column has an
  // entry for every row.
  bool enter(double cost, const std::vector<double>& column);

  // Gives up surplus and unused stock wherever that lowers the cost; false if nothing changed.
  bool settle();

 private:
  double& inverse(std::size_t row, std::size_t column) { return inverse_[row * rows_ + column]; }

  std::size_t demands_, rows_;
  std::vector<double> inverse_;  // of the basis, by row
  std::vector<double> level_;    // how much of each basic column is used
  std::vector<double> basic_cost_;
  std::vector<double> prices_;
};

}  // namespace splay::packing
