// The strip and the off-cut of packing_search.h: goals that are lengths of one sheet.
#include <algorithm>
#include <stdexcept>

#include "geometry/packing_goal.h"

namespace splay::packing {

namespace {

// No layout of the strip is lower than `least`, and `most` holds all pieces one above the other.
struct Heights {
  Units least = 0, most = 0;
};

Heights heights_of(Units width, const std::vector<Piece>& pieces) {
  Heights heights;
  double total = 0;
  for (const Piece& p : pieces) {
    const bool upright = p.width <= width, turned = p.may_turn && p.height <= width;
    if (!upright && !turned) throw std::invalid_argument("a piece is wider than the strip");
    Units height = upright ? p.height : p.width;
    if (turned) height = std::min(height, p.width);
    heights.least = std::max(heights.least, height);
    heights.most += std::max(p.width, p.height);
    total += area(p);
  }
  const auto rows = static_cast<Units>((total - 0.5) / static_cast<double>(width)) + 1;
  heights.least = std::max(heights.least, rows);
  return heights;
}

Packing first_strip(const std::vector<Stock>& stock, const std::vector<Piece>& pieces,
                    const Heights& heights, Random& random) {
  for (Units height = heights.least;; height += std::max<Units>(1, height / 20)) {
    PackingState state(stock, pieces);
    state.add_fixed_sheet(0, stock[0].width, std::min(height, heights.most));
    state.recreate(random, no_budget, 0);
    if (state.unplaced().empty()) return state.result();  // so at the greatest height, at last
  }
}

}  // namespace

Packing pack_strip(Units width, const std::vector<Piece>& pieces, const Effort& effort) {
  const Heights heights = heights_of(width, pieces);
  const std::vector<Stock> stock = {{width, heights.most, 1, 0}};
  Random random(search_start);
  Meter meter(effort);
  Packing best = first_strip(stock, pieces, heights, random);
  while (true) {
    const Units height = best.sheets[0].tree.used_height();
    best.sheets[0].tree.resize(width, height);
    meter.report(static_cast<double>(height));
    if (height <= heights.least || meter.spent()) break;
    PackingState state(stock, pieces);
    state.load(best);
    state.fix_sheets();
    const Units step = std::max<Units>(1, (height - heights.least) / 16);
    state.shrink(0, width, height - step, random);
    state.recreate(random, no_budget, 0);
    if (!reach(state, no_budget, static_cast<double>(height), effort.steps, meter, random)) break;
    best = state.result();
  }
  best.steps = meter.done();
  return best;
}

namespace {

// One sheet of a packing made narrower or lower as far as its pieces, and those of the other
// sheets, allow.
class Gathering {
 public:
  Gathering(const Packing& packing, const std::vector<Piece>& pieces)
      : pieces_(pieces), best_(packing) {
    for (std::size_t s = 0; s < best_.sheets.size(); ++s) {
      const SlicingTree& tree = best_.sheets[s].tree;
      if (tree.free_area() > best_.sheets[emptiest_].tree.free_area()) emptiest_ = s;
      stocks_.push_back({tree.width(), tree.height(), 1, 0});
      best_.sheets[s].stock = static_cast<int>(s);
    }
    start_ = best_;
  }

  void run(int axis, Meter& meter, std::int64_t patience) {
    Random random(search_start);
    Packing current = start_;
    while (true) {
      const SlicingTree& tree = current.sheets[emptiest_].tree;
      const Stock& full = stocks_[emptiest_];
      const Units used = axis == 0 ? tree.used_width() : tree.used_height();
      const Units side = axis == 0 ? full.width : full.height;
      const Units across = axis == 0 ? full.height : full.width;
      const double left = static_cast<double>(side - used) * static_cast<double>(across);
      if (left > most_) {
        most_ = left;
        best_ = current;
        meter.report(left);
      }
      if (used == 0 || meter.spent()) return;
      const Units goal = used - std::max<Units>(1, used / 32);
      PackingState state(stocks_, pieces_);
      state.load(current);
      state.fix_sheets();
      state.shrink(static_cast<int>(emptiest_), axis == 0 ? goal : full.width,
                   axis == 0 ? full.height : goal, random);
      state.recreate(random, no_budget, 0);
      if (!reach(state, no_budget, most_, patience, meter, random)) return;
      current = state.result();
    }
  }

  // The trees of the best layout found, in the order of the sheets given, at their full sizes.
  std::vector<PackedSheet> sheets() {
    best_.sheets[emptiest_].tree.resize(stocks_[emptiest_].width, stocks_[emptiest_].height);
    return best_.sheets;
  }

 private:
  const std::vector<Piece>& pieces_;
  std::vector<Stock> stocks_;
  Packing start_, best_;
  std::size_t emptiest_ = 0;
  double most_ = 0;
};

}  // namespace

void gather_off_cut(Packing& packing, const std::vector<Piece>& pieces, const Effort& effort) {
  if (packing.sheets.empty() || !packing.unplaced.empty()) return;
  const Effort half{effort.steps / 2, effort.progress};
  Gathering gathering(packing, pieces);
  for (int axis = 0; axis < 2; ++axis) {
    Meter meter(half);
    gathering.run(axis, meter, half.steps);
    packing.steps += meter.done();
  }
  const std::vector<PackedSheet> sheets = gathering.sheets();
  for (std::size_t s = 0; s < sheets.size(); ++s) packing.sheets[s].tree = sheets[s].tree;
}

}  // namespace splay::packing
