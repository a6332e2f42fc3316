// The layout a search works on: sheets in use, pieces not yet placed, and the two moves of ruin and
// recreate (see packing_search.h).
#pragma once

#include <memory>

#include "geometry/packing_random.h"
#include "geometry/packing_search.h"

namespace splay::packing {

class PackingState {
 public:
  // The stocks and pieces must outlive the state. All pieces start unplaced.
  PackingState(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces);

  // Takes about `count` neighbouring pieces out of sheets drawn at random.
  void ruin(int count, Random& random);

  // Places what it can, larger pieces roughly first, opening sheets while the cost stays under
  // `budget`. `blink` is the chance that a piece overlooks a sheet; at 0 nothing is overlooked.
  void recreate(Random& random, double budget, double blink);

  // Adds a sheet that stays in use even when empty; no other sheets will be opened or closed.
  void add_fixed_sheet(int stock, Units width, Units height);
  // Keeps the sheets as they are from now on.
  void fix_sheets() { fixed_ = true; }
  // Closes emptiest sheets until the cost is under `budget`.
  void close_sheets(double budget);
  // Shrinks a sheet, taking pieces out of it until it fits. The sheet must be fixed.
  void shrink(int sheet, Units width, Units height, Random& random);

  double cost() const { return cost_; }
  double unplaced_area() const;
  const std::vector<int>& unplaced() const { return unplaced_; }
  int sheet_count() const { return static_cast<int>(sheets_.size()); }
  const SlicingTree& tree(int sheet) const { return *at(sheet).tree; }
  // The order in which stocks are tried when a sheet is opened.
  void prefer(std::vector<int> order) { preference_ = std::move(order); }

  Packing result() const;
  void load(const Packing& packing);

 private:
  // Trees are shared between a state and its copies until one of them changes.
  struct Sheet {
    int stock = -1;
    std::shared_ptr<SlicingTree> tree;
  };
  const Sheet& at(int sheet) const { return sheets_[static_cast<std::size_t>(sheet)]; }
  SlicingTree& own_tree(int sheet);
  const Piece& piece(int index) const { return (*pieces_)[static_cast<std::size_t>(index)]; }
  void close(int sheet);
  bool open_for(const Piece& piece, double budget);
  bool place(int index, Random& random, double budget, double blink);
  std::vector<int> order_of_placing(Random& random) const;

  const std::vector<Stock>* stocks_;
  const std::vector<Piece>* pieces_;
  std::vector<Sheet> sheets_;
  std::vector<int> unplaced_;
  std::vector<std::int64_t> taken_;  // sheets in use, by stock
  std::vector<int> preference_;
  double cost_ = 0;
  bool fixed_ = false;
};

}  // namespace splay::packing
