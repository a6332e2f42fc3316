#include "geometry/packing_knapsack.h"

#include <algorithm>
#include <cmath>
#include <queue>
#include <unordered_map>

#include "geometry/packing_cuts.h"
#include "geometry/packing_outside.h"

namespace splay::packing {

namespace {

// A rectangle built so far. Its pieces are counted in a row of `counts_` of the same index.
struct Built {
  Units width, height;
  double value;
  double hope;  // bound on the value of a sheet that contains it
  int near = -1, far = -1;
  Axis axis = Axis::x;
  int offer = -1;
  bool turned = false;
};

class Builder {
 public:
  Builder(const std::vector<Offer>& offers, Units width, Units height)
      : offers_(offers), width_(width), height_(height), grid_(offers, width, height) {
    for (const Offer& o : offers) {
      const auto most = static_cast<std::int64_t>(static_cast<double>(width) *
                                                  static_cast<double>(height) / area(o.piece));
      copies_.push_back(o.copies < 0 ? most : std::min(o.copies, most));
      whole_values_ = whole_values_ && o.value == std::floor(o.value);
    }
  }

  Knapsack run(const Effort& effort) {
    constexpr std::size_t price_sets = 4;
    bounds_ = priced_bounds(offers_, copies_, width_, height_, grid_, price_sets);
    add_pieces();
    Knapsack result;
    while (!open_.empty() && built_[top()].hope >= needed()) {
      if (result.steps >= effort.steps) break;
      if (effort.progress && result.steps % 1000 == 0 && !effort.progress(result.steps, best_))
        break;
      ++result.steps;
      const std::size_t next = top();
      open_.pop();
      closed_.push_back(next);
      join_with_closed(next);
    }
    const double left = open_.empty() ? 0 : built_[top()].hope;
    result.proven = left < needed();
    result.value = best_;
    result.bound = result.proven ? best_ : std::max(best_, left);
    result.tree.resize(1);
    result.tree[0].width = width_;
    result.tree[0].height = height_;
    if (best_index_ >= 0) write(result.tree, 0, static_cast<std::size_t>(best_index_));
    return result;
  }

 private:
  using Counts = std::vector<std::uint16_t>;
  struct CountsHash {
    std::size_t operator()(const Counts& counts) const {
      std::uint64_t h = 1469598103934665603U;  // FNV-1a
      for (const std::uint16_t c : counts) h = (h ^ c) * 1099511628211U;
      return static_cast<std::size_t>(h ^ (h >> 29U));
    }
  };

  std::size_t top() const { return open_.top().second; }
  // The least value that would be an improvement.
  double needed() const { return whole_values_ ? best_ + 1 - 1e-6 : best_ + 1e-9 * (1 + best_); }

  double hope(Units width, Units height, double value, const Counts& counts) const {
    const int ix = grid_.x_index[static_cast<std::size_t>(width)];
    const int iy = grid_.y_index[static_cast<std::size_t>(height)];
    double least = std::numeric_limits<double>::infinity();
    for (const OutsideBound& bound : bounds_) {
      double spent = 0;
      for (std::size_t i = 0; i < counts.size(); ++i)
        if (counts[i] != 0) spent += bound.price()[i] * counts[i];
      least = std::min(least, value + bound.outside(ix, iy, spent));
      if (least < needed()) break;
    }
    return least;
  }

  void add(Built built, Counts counts) {
    built.hope = hope(built.width, built.height, built.value, counts);
    if (built.value <= best_ && built.hope < needed()) return;
    std::vector<std::pair<Units, Units>>& sizes = seen_[counts];
    for (const auto& [w, h] : sizes)
      if (w <= built.width && h <= built.height) return;
    sizes.emplace_back(built.width, built.height);
    const std::size_t index = built_.size();
    built_.push_back(built);
    counts_.push_back(std::move(counts));
    if (built.value > best_) {
      best_ = built.value;
      best_index_ = static_cast<int>(index);
    }
    if (built.hope >= needed()) open_.emplace(built.hope, index);
  }

  void add_pieces() {
    for (std::size_t i = 0; i < offers_.size(); ++i) {
      if (copies_[i] < 1 || offers_[i].value <= 0) continue;
      const Piece& p = offers_[i].piece;
      const int positions = p.may_turn && p.width != p.height ? 2 : 1;
      for (int turn = 0; turn < positions; ++turn) {
        Built b{turn == 0 ? p.width : p.height, turn == 0 ? p.height : p.width, offers_[i].value,
                0};
        if (b.width > width_ || b.height > height_) continue;
        b.offer = static_cast<int>(i);
        b.turned = turn == 1;
        Counts counts(offers_.size(), 0);
        counts[i] = 1;
        add(b, std::move(counts));
      }
    }
  }

  void join_with_closed(std::size_t a) {
    for (std::size_t c = 0; c < closed_.size(); ++c) {
      const std::size_t b = closed_[c];
      const Built first = built_[a], second = built_[b];
      const double value = first.value + second.value;
      Built beside{first.width + second.width, std::max(first.height, second.height), value, 0};
      Built above{std::max(first.width, second.width), first.height + second.height, value, 0};
      above.axis = Axis::y;
      const bool fits_beside = beside.width <= width_ && promising(beside);
      const bool fits_above = above.height <= height_ && promising(above);
      if (!fits_beside && !fits_above) continue;
      Counts sum = counts_[a];
      bool within = true;
      for (std::size_t i = 0; i < sum.size() && within; ++i) {
        sum[i] = static_cast<std::uint16_t>(sum[i] + counts_[b][i]);
        within = sum[i] <= copies_[i];
      }
      if (!within) continue;
      beside.near = above.near = static_cast<int>(a);
      beside.far = above.far = static_cast<int>(b);
      if (fits_beside) add(beside, sum);
      if (fits_above) add(above, std::move(sum));
    }
  }

  // Cheap test before the copies are counted: at no prices the pieces do not matter.
  bool promising(const Built& b) const {
    const int ix = grid_.x_index[static_cast<std::size_t>(b.width)];
    const int iy = grid_.y_index[static_cast<std::size_t>(b.height)];
    return b.value + free_outside(ix, iy) >= needed();
  }
  double free_outside(int ix, int iy) const { return bounds_.back().outside(ix, iy, 0); }

  void write(CutTree& tree, int node, std::size_t index) const {
    const Built& b = built_[index];
    node = trim_region(tree, node, b.width, b.height);
    if (b.offer >= 0) {
      CutNode& leaf = tree[static_cast<std::size_t>(node)];
      leaf.content = Content::piece;
      leaf.piece = b.offer;
      leaf.turned = b.turned;
      return;
    }
    const Built& near = built_[static_cast<std::size_t>(b.near)];
    const int first =
        split_region(tree, node, b.axis, b.axis == Axis::x ? near.width : near.height);
    write(tree, first, static_cast<std::size_t>(b.near));
    write(tree, first + 1, static_cast<std::size_t>(b.far));
  }

  const std::vector<Offer>& offers_;
  Units width_, height_;
  PatternGrid grid_;
  std::vector<std::int64_t> copies_;
  bool whole_values_ = true;
  std::vector<OutsideBound> bounds_;
  std::vector<Built> built_;
  std::vector<Counts> counts_;
  std::vector<std::size_t> closed_;
  std::priority_queue<std::pair<double, std::size_t>> open_;
  std::unordered_map<Counts, std::vector<std::pair<Units, Units>>, CountsHash> seen_;
  double best_ = 0;
  int best_index_ = -1;
};

}  // namespace

Knapsack best_cutting(const std::vector<Offer>& offers, Units width, Units height,
                      const Effort& effort) {
  return Builder(offers, width, height).run(effort);
}

}  // namespace splay::packing
