#include "geometry/packing_state.h"

#include <algorithm>
#include <numeric>

namespace splay::packing {

PackingState::PackingState(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces)
    : stocks_(&stocks),
      pieces_(&pieces),
      unplaced_(pieces.size()),
      taken_(stocks.size(), 0),
      preference_(stocks.size()) {
  std::iota(unplaced_.begin(), unplaced_.end(), 0);
  std::iota(preference_.begin(), preference_.end(), 0);
}

SlicingTree& PackingState::own_tree(int sheet) {
  auto& tree = sheets_[static_cast<std::size_t>(sheet)].tree;
  if (tree.use_count() > 1) tree = std::make_shared<SlicingTree>(*tree);
  return *tree;
}

double PackingState::unplaced_area() const {
  double sum = 0;
  for (const int index : unplaced_) sum += area(piece(index));
  return sum;
}

void PackingState::close(int sheet) {
  const int stock = at(sheet).stock;
  --taken_[static_cast<std::size_t>(stock)];
  cost_ -= (*stocks_)[static_cast<std::size_t>(stock)].cost;
  sheets_.erase(sheets_.begin() + sheet);
  if (sheets_.empty()) cost_ = 0;
}

void PackingState::ruin(int count, Random& random) {
  std::size_t goal = unplaced_.size() + static_cast<std::size_t>(count);
  goal = std::min(goal, pieces_->size());
  while (unplaced_.size() < goal) {
    const int sheet = random.below(sheet_count());
    if (tree(sheet).empty()) {
      if (fixed_) continue;
      close(sheet);
      continue;
    }
    SlicingTree& tree = own_tree(sheet);
    const int most = static_cast<int>(goal - unplaced_.size());
    int node = 0;
    int held = 0;
    do {
      node = random.below(tree.node_count());
      held = tree.is_block(node) ? tree.pieces_below(node) : 0;
    } while (held == 0 || (held > most && held > 1));
    const std::vector<int> taken_out = tree.remove(node);
    unplaced_.insert(unplaced_.end(), taken_out.begin(), taken_out.end());
  }
}

std::vector<int> PackingState::order_of_placing(Random& random) const {
  enum { by_area = 5, by_long_side, by_short_side, any };
  const int rule = random.below(any + 1);
  std::vector<std::pair<double, int>> keyed;
  keyed.reserve(unplaced_.size());
  for (const int index : unplaced_) {
    const Piece& p = piece(index);
    double key = random.fraction();
    if (rule == by_long_side) key = static_cast<double>(std::max(p.width, p.height));
    if (rule == by_short_side) key = static_cast<double>(std::min(p.width, p.height));
    if (rule <= by_area - 1) key = area(p) * (1 + 0.2 * key);
    keyed.emplace_back(-key, index);
  }
  std::sort(keyed.begin(), keyed.end());
  std::vector<int> order;
  order.reserve(keyed.size());
  for (const auto& [key, index] : keyed) order.push_back(index);
  return order;
}

bool PackingState::open_for(const Piece& wanted, double budget) {
  if (fixed_) return false;
  for (const int s : preference_) {
    const Stock& stock = (*stocks_)[static_cast<std::size_t>(s)];
    std::int64_t& taken = taken_[static_cast<std::size_t>(s)];
    if (stock.count >= 0 && taken >= stock.count) continue;
    if (cost_ + stock.cost >= budget) continue;
    const bool fits = wanted.width <= stock.width && wanted.height <= stock.height;
    const bool fits_turned =
        wanted.may_turn && wanted.height <= stock.width && wanted.width <= stock.height;
    if (!fits && !fits_turned) continue;
    sheets_.push_back({s, std::make_shared<SlicingTree>(stock.width, stock.height)});
    ++taken;
    cost_ += stock.cost;
    return true;
  }
  return false;
}

bool PackingState::place(int index, Random& random, double budget, double blink) {
  const Piece& p = piece(index);
  std::optional<Slot> best;
  int where = -1;
  for (int s = 0; s < sheet_count(); ++s) {
    if (blink > 0 && random.fraction() < blink) continue;
    const std::optional<Slot> slot = tree(s).best_slot(p);
    if (!slot || (best && slot->loss >= best->loss)) continue;
    best = slot;
    where = s;
  }
  if (!best && open_for(p, budget)) {
    where = sheet_count() - 1;
    best = tree(where).best_slot(p);
  }
  if (!best) return false;
  own_tree(where).insert(index, p, *best);
  return true;
}

void PackingState::recreate(Random& random, double budget, double blink) {
  const std::vector<int> order = order_of_placing(random);
  unplaced_.clear();
  const Piece* refused = nullptr;  // equal pieces often come in a row
  for (const int index : order) {
    const Piece& p = piece(index);
    const bool again = refused != nullptr && refused->width == p.width &&
                       refused->height == p.height && refused->may_turn == p.may_turn;
    if (again || !place(index, random, budget, blink)) {
      unplaced_.push_back(index);
      refused = &p;
    }
  }
}

void PackingState::add_fixed_sheet(int stock, Units width, Units height) {
  sheets_.push_back({stock, std::make_shared<SlicingTree>(width, height)});
  fixed_ = true;
}

void PackingState::close_sheets(double budget) {
  while (cost_ >= budget && !sheets_.empty()) {
    int emptiest = -1;
    double most = -1;
    for (int s = 0; s < sheet_count(); ++s) {
      if ((*stocks_)[static_cast<std::size_t>(at(s).stock)].cost <= 0) continue;
      if (tree(s).free_area() <= most) continue;
      most = tree(s).free_area();
      emptiest = s;
    }
    if (emptiest < 0) return;
    const std::vector<int> pieces = tree(emptiest).pieces();
    unplaced_.insert(unplaced_.end(), pieces.begin(), pieces.end());
    close(emptiest);
  }
}

void PackingState::shrink(int sheet, Units width, Units height, Random& random) {
  SlicingTree& tree = own_tree(sheet);
  while (!tree.resize(width, height)) {
    int node = 0;
    do {
      node = random.below(tree.node_count());
    } while (!tree.is_block(node) || tree.pieces_below(node) != 1);
    const std::vector<int> taken_out = tree.remove(node);
    unplaced_.insert(unplaced_.end(), taken_out.begin(), taken_out.end());
  }
}

Packing PackingState::result() const {
  Packing packing;
  for (const Sheet& sheet : sheets_)
    if (!sheet.tree->empty() || fixed_) packing.sheets.push_back({sheet.stock, *sheet.tree});
  packing.unplaced = unplaced_;
  for (const PackedSheet& sheet : packing.sheets)
    packing.cost += (*stocks_)[static_cast<std::size_t>(sheet.stock)].cost;
  return packing;
}

void PackingState::load(const Packing& packing) {
  sheets_.clear();
  std::fill(taken_.begin(), taken_.end(), 0);
  cost_ = 0;
  for (const PackedSheet& sheet : packing.sheets) {
    sheets_.push_back({sheet.stock, std::make_shared<SlicingTree>(sheet.tree)});
    ++taken_[static_cast<std::size_t>(sheet.stock)];
    cost_ += (*stocks_)[static_cast<std::size_t>(sheet.stock)].cost;
  }
  unplaced_ = packing.unplaced;
}

}  // namespace splay::packing
