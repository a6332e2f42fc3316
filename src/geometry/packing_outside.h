// Bounds for the constrained guillotine knapsack (packing_knapsack.h).
#pragma once

#include "geometry/packing_table.h"

namespace splay::packing {

// The sizes that rectangles built from the offered pieces can have.
struct PatternGrid {
  PatternGrid(const std::vector<Offer>& offers, Units width, Units height);
  std::vector<Units> x, y;            // normal patterns
  std::vector<int> x_index, y_index;  // of a length; that of the next greater one if it is none
};

// What can still be gained outside a rectangle at the corner of the sheet, at prices on the pieces.
class OutsideBound {
 public:
  // `price` of offer i is charged for each copy taken, and copies[i] of them are refunded: any
  // prices of at least 0 give a valid bound.
  OutsideBound(const std::vector<Offer>& offers, const std::vector<std::int64_t>& copies,
               std::vector<double> price, Units width, Units height);

  // Bound on the value of the whole sheet.
  double whole() const { return whole_; }
  const std::vector<double>& price() const { return price_; }
  // Copies of each offer in the layout that gives the bound.
  const std::vector<std::int64_t>& taken() const { return taken_; }

  // Must be called before `outside`.
  void prepare(const PatternGrid& grid);

  // Bound on the value outside a rectangle of the grid, whose pieces have the prices `spent` in
  // sum.
  double outside(int ix, int iy, double spent) const {
    return outside_[static_cast<std::size_t>(iy) * columns_ + static_cast<std::size_t>(ix)] +
           refund_ - spent;
  }

 private:
  std::vector<double> price_;
  GuillotineTable table_;
  std::vector<std::int64_t> taken_;
  std::vector<double> outside_;
  std::size_t columns_ = 0;
  double refund_ = 0;
  double whole_ = 0;
};

// Bounds at prices improved step by step (subgradient method), the best for the whole sheet first;
// at most `count` of them, prepared for the grid.
std::vector<OutsideBound> priced_bounds(const std::vector<Offer>& offers,
                                        const std::vector<std::int64_t>& copies, Units width,
                                        Units height, const PatternGrid& grid, std::size_t count);

}  // namespace splay::packing
