#include "geometry/packing_table.h"

#include <algorithm>
#include <limits>
#include <stdexcept>

#include "geometry/packing_cuts.h"

namespace splay::packing {

std::vector<Units> normal_patterns(const std::vector<Units>& sizes, Units limit) {
  std::vector<char> reached(static_cast<std::size_t>(limit) + 1, 0);
  reached[0] = 1;
  for (const Units size : sizes)
    for (Units p = size; p <= limit; ++p)
      if (reached[static_cast<std::size_t>(p - size)]) reached[static_cast<std::size_t>(p)] = 1;
  std::vector<Units> patterns;
  for (Units p = 0; p <= limit; ++p)
    if (reached[static_cast<std::size_t>(p)]) patterns.push_back(p);
  return patterns;
}

namespace {

std::vector<int> index_below(const std::vector<Units>& patterns, Units limit) {
  std::vector<int> below(static_cast<std::size_t>(limit) + 1);
  int index = 0;
  for (Units p = 0; p <= limit; ++p) {
    const auto next = static_cast<std::size_t>(index) + 1;
    if (next < patterns.size() && patterns[next] == p) ++index;
    below[static_cast<std::size_t>(p)] = index;
  }
  return below;
}

template <class Block>
void keep_sorted(std::vector<Block>& blocks, Block block) {
  blocks.insert(std::upper_bound(blocks.begin(), blocks.end(), block,
                                 [](const Block& a, const Block& b) { return a.loss < b.loss; }),
                block);
}

}  // namespace

GuillotineTable::GuillotineTable(const std::vector<Offer>& offers, Units width, Units height)
    : GuillotineTable(offers, width, height, std::numeric_limits<double>::infinity()) {}

GuillotineTable GuillotineTable::for_sheet(const std::vector<Offer>& offers, Units width,
                                           Units height) {
  double density = 0;
  for (const Offer& o : offers) density = std::max(density, o.value / area(o.piece));
  const double whole = density * area({width, height, false});
  for (double allowed = whole / 512;; allowed *= 8) {
    GuillotineTable table(offers, width, height, allowed);
    const double loss = table.density_ * area({width, height, false}) - table.value(width, height);
    if (loss <= allowed || allowed >= whole) return table;
    if (loss < 8 * allowed) return {offers, width, height, loss * (1 + 1e-9)};
  }
}

GuillotineTable::GuillotineTable(const std::vector<Offer>& offers, Units width, Units height,
                                 double most_loss)
    : width_(width), height_(height), most_loss_(most_loss) {
  if (width < 0 || height < 0 || width > longest_side || height > longest_side)
    throw std::invalid_argument("sheet outside the range of the guillotine table");
  place_offers(offers);
  solve(offers);
}

void GuillotineTable::place_offers(const std::vector<Offer>& offers) {
  std::vector<Units> widths, heights;
  const auto each_position = [&](const auto& use) {
    for (std::size_t i = 0; i < offers.size(); ++i) {
      const Piece& p = offers[i].piece;
      if (p.width <= 0 || p.height <= 0) throw std::invalid_argument("a piece without size");
      if (offers[i].value <= 0) continue;
      const int positions = p.may_turn && p.width != p.height ? 2 : 1;
      for (int turn = 0; turn < positions; ++turn) {
        const Units w = turn == 0 ? p.width : p.height;
        const Units h = turn == 0 ? p.height : p.width;
        if (w <= width_ && h <= height_) use(static_cast<int>(i), w, h, turn == 1);
      }
    }
  };
  each_position([&](int offer, Units w, Units h, bool) {
    widths.push_back(w);
    heights.push_back(h);
    const auto& o = offers[static_cast<std::size_t>(offer)];
    density_ = std::max(density_, o.value / area(o.piece));
  });
  x_ = normal_patterns(widths, width_);
  y_ = normal_patterns(heights, height_);
  x_below_ = index_below(x_, width_);
  y_below_ = index_below(y_, height_);
  value_.assign(x_.size() * y_.size(), 0);
  value_by_x_.assign(value_.size(), 0);
  how_.assign(value_.size(), How::nothing);
  made_.assign(value_.size(), How::nothing);
  at_.assign(value_.size(), -1);
  each_position([&](int offer, Units w, Units h, bool turned) {
    const int ix = x_below_[static_cast<std::size_t>(w)];
    const int iy = y_below_[static_cast<std::size_t>(h)];
    const std::size_t e = entry(ix, iy);
    const double v = offers[static_cast<std::size_t>(offer)].value;
    if (v <= value_[e]) return;
    value_[e] = v;
    how_[e] = How::piece;
    at_[e] = static_cast<int>(fittings_.size());
    fittings_.push_back({ix, iy, offer, turned});
  });
}

void GuillotineTable::solve_entry(int ix, int iy, std::vector<Block>& row,
                                  std::vector<Block>& column) {
  const std::size_t e = entry(ix, iy);
  double best = value_[e];
  How how = how_[e];
  int at = at_[e];
  if (value_[entry(ix - 1, iy)] >= best) {
    best = value_[entry(ix - 1, iy)];
    how = How::narrower;
  }
  if (value_[entry(ix, iy - 1)] > best) {
    best = value_[entry(ix, iy - 1)];
    how = How::lower;
  }
  const Units w = x_[static_cast<std::size_t>(ix)], h = y_[static_cast<std::size_t>(iy)];
  const double whole = density_ * static_cast<double>(w) * static_cast<double>(h);
  const int* x_rest = &x_below_[static_cast<std::size_t>(w)];
  const int* y_rest = &y_below_[static_cast<std::size_t>(h)];
  const double* values = &value_[entry(0, iy)];
  for (const Block& block : row) {
    if (2 * block.loss >= whole - best) break;
    const double sum = values[block.index] + values[x_rest[-block.length]];
    if (sum <= best) continue;
    best = sum;
    how = How::cut_x;
    at = block.index;
  }
  values = &value_by_x_[static_cast<std::size_t>(ix) * y_.size()];
  for (const Block& block : column) {
    if (2 * block.loss >= whole - best) break;
    const double sum = values[block.index] + values[y_rest[-block.length]];
    if (sum <= best) continue;
    best = sum;
    how = How::cut_y;
    at = block.index;
  }
  value_[e] = best;
  how_[e] = how;
  at_[e] = at;
  record(ix, iy, row, column);
}

// The entry of the same rectangle turned, where every piece may turn.
void GuillotineTable::mirror_entry(int ix, int iy, std::vector<Block>& row,
                                   std::vector<Block>& column) {
  const std::size_t e = entry(ix, iy), from = entry(iy, ix);
  value_[e] = value_[from];
  if (how_[from] != How::piece) at_[e] = at_[from];
  switch (how_[from]) {
    case How::narrower:
      how_[e] = How::lower;
      break;
    case How::lower:
      how_[e] = How::narrower;
      break;
    case How::cut_x:
      how_[e] = How::cut_y;
      break;
    case How::cut_y:
      how_[e] = How::cut_x;
      break;
    default:
      how_[e] = how_[from];
  }
  record(ix, iy, row, column);
}

void GuillotineTable::record(int ix, int iy, std::vector<Block>& row, std::vector<Block>& column) {
  const std::size_t e = entry(ix, iy);
  const double best = value_[e];
  const How how = how_[e];
  value_by_x_[static_cast<std::size_t>(ix) * y_.size() + static_cast<std::size_t>(iy)] = best;
  const Units w = x_[static_cast<std::size_t>(ix)], h = y_[static_cast<std::size_t>(iy)];
  const double whole = density_ * static_cast<double>(w) * static_cast<double>(h);
  // What is no better than a shorter block of the same row is not needed there.
  const bool beats_narrower = how != How::narrower;
  const bool beats_lower = how != How::lower && best > value_[entry(ix, iy - 1)];
  How made = how;
  if (how == How::narrower) made = made_[entry(ix - 1, iy)];
  if (how == How::lower) made = made_[entry(ix, iy - 1)];
  made_[e] = made;
  if (made == How::nothing || whole - best > most_loss_) return;
  if (beats_narrower && made != How::cut_x)
    keep_sorted(row, {whole - best, ix, static_cast<int>(w)});
  if (beats_lower && made != How::cut_y)
    keep_sorted(column, {whole - best, iy, static_cast<int>(h)});
}

void GuillotineTable::solve(const std::vector<Offer>& offers) {
  const bool symmetric =
      y_.size() <= x_.size() && std::equal(y_.begin(), y_.end(), x_.begin()) &&
      std::all_of(offers.begin(), offers.end(), [](const Offer& o) {
        return o.value <= 0 || o.piece.may_turn || o.piece.width == o.piece.height;
      });
  // Rows are solved a few at a time, so that writes down a column share cache lines.
  constexpr int band = 8;
  const int rows = static_cast<int>(y_.size());
  std::vector<std::vector<Block>> columns(x_.size());
  for (int from = 1; from < rows; from += band) {
    std::vector<Block> row[band];
    for (int ix = 1; ix < static_cast<int>(x_.size()); ++ix) {
      std::vector<Block>& column = columns[static_cast<std::size_t>(ix)];
      for (int iy = from; iy < std::min(from + band, rows); ++iy) {
        if (symmetric && ix < from)
          mirror_entry(ix, iy, row[iy - from], column);
        else
          solve_entry(ix, iy, row[iy - from], column);
      }
    }
  }
}

double GuillotineTable::value(Units width, Units height) const {
  const auto w = static_cast<std::size_t>(std::clamp<Units>(width, 0, width_));
  const auto h = static_cast<std::size_t>(std::clamp<Units>(height, 0, height_));
  return value_[entry(x_below_[w], y_below_[h])];
}

CutTree GuillotineTable::cuts(Units width, Units height) const {
  CutTree tree(1);
  tree[0].width = width;
  tree[0].height = height;
  cut_region(tree, 0);
  return tree;
}

void GuillotineTable::cut_region(CutTree& tree, int node) const {
  const auto region = [&]() -> CutNode& { return tree[static_cast<std::size_t>(node)]; };
  const auto w = static_cast<std::size_t>(std::min(region().width, width_));
  const auto h = static_cast<std::size_t>(std::min(region().height, height_));
  int ix = x_below_[w], iy = y_below_[h];
  while (how_[entry(ix, iy)] == How::narrower || how_[entry(ix, iy)] == How::lower)
    --(how_[entry(ix, iy)] == How::narrower ? ix : iy);
  const std::size_t e = entry(ix, iy);
  if (how_[e] == How::nothing) return;
  const auto at = static_cast<std::size_t>(at_[e]);
  // A cut divides the whole region, so that a surplus goes to the far side and is cut there.
  if (how_[e] == How::cut_x || how_[e] == How::cut_y) {
    const bool across = how_[e] == How::cut_x;
    split_region(tree, node, across ? Axis::x : Axis::y, across ? x_[at] : y_[at]);
    const int first = region().first;
    cut_region(tree, first);
    cut_region(tree, first + 1);
    return;
  }
  const Fitting& fitting = fittings_[at];
  node = trim_region(tree, node, x_[static_cast<std::size_t>(fitting.x)],
                     y_[static_cast<std::size_t>(fitting.y)]);
  region().content = Content::piece;
  region().piece = fitting.offer;
  region().turned = fitting.turned;
}

}  // namespace splay::packing
