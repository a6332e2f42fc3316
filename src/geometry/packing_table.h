// The unconstrained guillotine knapsack, solved exactly: the greatest value that can be cut from a
// rectangle with any number of copies of every piece, for a sheet and every rectangle inside it.
//
// Dynamic programming over normal patterns (positions that are sums of piece sizes): J. Herz,
// "Recursive computational procedure for two-dimensional stock cutting", IBM J. Res. Dev. 16
// (1972); J. Beasley, "Algorithms for unconstrained two-dimensional guillotine cutting", JORS 36
// (1985) 297-306. Our own reduction: a row of blocks needs to be tried only with blocks that are
// not rows of the same direction themselves, and, since one of two or more blocks has at most half
// of the loss of the whole, only with those of less than half of the loss still allowed. The loss
// is what the area would be worth at the value density of the best piece, less the value.
#pragma once

#include "geometry/packing_types.h"

namespace splay::packing {

// A piece that may be cut or left out. `copies` is how many at most (-1: no limit); the
// unconstrained table pays no heed to it.
struct Offer {
  Piece piece;
  double value = 0;
  std::int64_t copies = -1;
};

// All sums of the sizes that are at most `limit`, 0 first, growing. Sizes are positive.
std::vector<Units> normal_patterns(const std::vector<Units>& sizes, Units limit);

class GuillotineTable {
 public:
  // Offers of no value are ignored. Sheet sizes are 0 to longest_side units: the table holds one
  // entry for every pair of normal patterns. Throws std::invalid_argument outside this.
  static constexpr Units longest_side = 1 << 16;
  GuillotineTable(const std::vector<Offer>& offers, Units width, Units height);

  // A table that is exact for the whole sheet, but may undervalue rectangles inside it: faster
  // for large sheets that can be filled nearly without loss. No part of the best layout has more
  // loss than the whole of it, so that blocks of more loss than a layout already found are left
  // out.
  static GuillotineTable for_sheet(const std::vector<Offer>& offers, Units width, Units height);

  // The greatest value of a rectangle inside the sheet; 0 if nothing fits.
  double value(Units width, Units height) const;

  // The cuts that give it. Pieces are indices of offers.
  CutTree cuts(Units width, Units height) const;

  const std::vector<Units>& widths() const { return x_; }
  const std::vector<Units>& heights() const { return y_; }

 private:
  // How an entry comes about: nothing better than the next smaller one, a piece, or a cut.
  enum class How : std::uint8_t { nothing, narrower, lower, piece, cut_x, cut_y };
  struct Block {
    double loss;
    int index;
    int length;  // along the row
  };
  struct Fitting {
    int x, y, offer;
    bool turned;
  };

  GuillotineTable(const std::vector<Offer>& offers, Units width, Units height, double most_loss);

  std::size_t entry(int ix, int iy) const {
    return static_cast<std::size_t>(iy) * x_.size() + static_cast<std::size_t>(ix);
  }
  void place_offers(const std::vector<Offer>& offers);
  void solve(const std::vector<Offer>& offers);
  void solve_entry(int ix, int iy, std::vector<Block>& row, std::vector<Block>& column);
  void mirror_entry(int ix, int iy, std::vector<Block>& row, std::vector<Block>& column);
  void record(int ix, int iy, std::vector<Block>& row, std::vector<Block>& column);
  void cut_region(CutTree& tree, int node) const;

  Units width_, height_;
  std::vector<Units> x_, y_;            // normal patterns
  std::vector<int> x_below_, y_below_;  // index of the greatest pattern not above a length
  std::vector<Fitting> fittings_;       // by entry
  double most_loss_;                    // of blocks that are used
  double density_ = 0;                  // greatest value of a piece per area
  std::vector<double> value_, value_by_x_;
  std::vector<How> how_;
  std::vector<How> made_;  // how the rectangle that gives the value was made: a piece or a cut
  std::vector<int> at_;    // index of the cut, or of the fitting
};

}  // namespace splay::packing
