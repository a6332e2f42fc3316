#include "geometry/packing_master.h"

#include <algorithm>
#include <numeric>

namespace splay::packing {

namespace {

constexpr double least_gain = 1e-9;  // relative to a cost
constexpr double least_pivot = 1e-9;

}  // namespace

CoveringMaster::CoveringMaster(const std::vector<double>& demand,
                               const std::vector<double>& single_cost,
                               const std::vector<double>& limit)
    : demands_(demand.size()),
      rows_(demand.size() + limit.size()),
      inverse_(rows_ * rows_, 0),
      level_(demand),
      basic_cost_(single_cost),
      prices_(single_cost) {
  level_.insert(level_.end(), limit.begin(), limit.end());
  basic_cost_.resize(rows_, 0);
  prices_.resize(rows_, 0);
  for (std::size_t i = 0; i < rows_; ++i) inverse(i, i) = 1;
}

double CoveringMaster::cost() const {
  return std::inner_product(level_.begin(), level_.end(), basic_cost_.begin(), 0.0);
}

bool CoveringMaster::enter(double cost, const std::vector<double>& column) {
  const double reduced =
      cost - std::inner_product(column.begin(), column.end(), prices_.begin(), 0.0);
  if (reduced > -least_gain * (1 + cost)) return false;
  std::vector<double> change(rows_, 0);
  for (std::size_t i = 0; i < rows_; ++i)
    for (std::size_t j = 0; j < rows_; ++j)
      if (column[j] != 0) change[i] += inverse(i, j) * column[j];
  std::size_t leaving = rows_;
  for (std::size_t i = 0; i < rows_; ++i) {
    if (change[i] <= least_pivot) continue;
    if (leaving == rows_ || level_[i] * change[leaving] < level_[leaving] * change[i]) leaving = i;
  }
  if (leaving == rows_) return false;
  const double pivot = change[leaving];
  for (std::size_t j = 0; j < rows_; ++j) inverse(leaving, j) /= pivot;
  level_[leaving] /= pivot;
  for (std::size_t i = 0; i < rows_; ++i) {
    if (i == leaving || change[i] == 0) continue;
    for (std::size_t j = 0; j < rows_; ++j) inverse(i, j) -= change[i] * inverse(leaving, j);
    level_[i] = std::max(0.0, level_[i] - change[i] * level_[leaving]);
  }
  basic_cost_[leaving] = cost;
  for (std::size_t j = 0; j < rows_; ++j) prices_[j] += reduced * inverse(leaving, j);
  return true;
}

bool CoveringMaster::settle() {
  bool changed = false;
  std::vector<double> column(rows_, 0);
  const std::size_t most = 4 * rows_;  // against cycling; prices stay usable when it is reached
  for (std::size_t round = 0, quiet = 0; round < most && quiet < rows_; ++round) {
    const std::size_t row = round % rows_;
    column[row] = row < demands_ ? -1 : 1;
    quiet = enter(0, column) ? 0 : quiet + 1;
    changed = changed || quiet == 0;
    column[row] = 0;
  }
  return changed;
}

}  // namespace splay::packing
