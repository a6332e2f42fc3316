#include "geometry/packing_outside.h"

#include <algorithm>

#include "geometry/packing_cuts.h"

namespace splay::packing {

namespace {

std::vector<int> index_above(const std::vector<Units>& patterns, Units limit) {
  std::vector<int> above(static_cast<std::size_t>(limit) + 1);
  int index = 0;
  for (Units p = 0; p <= limit; ++p) {
    const auto i = static_cast<std::size_t>(index);
    if (i + 1 < patterns.size() && patterns[i] < p) ++index;
    above[static_cast<std::size_t>(p)] = index;
  }
  return above;
}

std::vector<Offer> less_price(std::vector<Offer> offers, const std::vector<double>& price) {
  for (std::size_t i = 0; i < offers.size(); ++i) offers[i].value -= price[i];
  return offers;
}

}  // namespace

PatternGrid::PatternGrid(const std::vector<Offer>& offers, Units width, Units height) {
  std::vector<Units> widths, heights;
  for (const Offer& offer : offers) {
    widths.push_back(offer.piece.width);
    heights.push_back(offer.piece.height);
    if (!offer.piece.may_turn) continue;
    widths.push_back(offer.piece.height);
    heights.push_back(offer.piece.width);
  }
  x = normal_patterns(widths, width);
  y = normal_patterns(heights, height);
  x_index = index_above(x, width);
  y_index = index_above(y, height);
}

OutsideBound::OutsideBound(const std::vector<Offer>& offers,
                           const std::vector<std::int64_t>& copies, std::vector<double> price,
                           Units width, Units height)
    : price_(std::move(price)),
      table_(less_price(offers, price_), width, height),
      taken_(offers.size(), 0) {
  for (std::size_t i = 0; i < offers.size(); ++i)
    refund_ += price_[i] * static_cast<double>(copies[i]);
  whole_ = table_.value(width, height) + refund_;
  const CutTree tree = table_.cuts(width, height);
  for (const int region : regions_with(tree, Content::piece))
    ++taken_[static_cast<std::size_t>(tree[static_cast<std::size_t>(region)].piece)];
}

void OutsideBound::prepare(const PatternGrid& grid) {
  columns_ = grid.x.size();
  const std::size_t rows = grid.y.size();
  outside_.assign(columns_ * rows, 0);
  for (std::size_t iy = rows; iy-- > 0;) {
    for (std::size_t ix = columns_; ix-- > 0;) {
      double best = 0;
      for (std::size_t jx = ix + 1; jx < columns_; ++jx)
        best = std::max(
            best, outside_[iy * columns_ + jx] + table_.value(grid.x[jx] - grid.x[ix], grid.y[iy]));
      for (std::size_t jy = iy + 1; jy < rows; ++jy)
        best = std::max(
            best, outside_[jy * columns_ + ix] + table_.value(grid.x[ix], grid.y[jy] - grid.y[iy]));
      outside_[iy * columns_ + ix] = best;
    }
  }
}

std::vector<OutsideBound> priced_bounds(const std::vector<Offer>& offers,
                                        const std::vector<std::int64_t>& copies, Units width,
                                        Units height, const PatternGrid& grid, std::size_t count) {
  constexpr int rounds = 150;
  std::vector<OutsideBound> bounds;
  std::vector<double> price(offers.size(), 0);
  double step = 0.1;
  double lowest = 0;
  int idle = 0;
  for (int round = 0; round < rounds; ++round) {
    bounds.emplace_back(offers, copies, price, width, height);
    const OutsideBound& now = bounds.back();
    if (round == 0 || now.whole() < lowest) {
      lowest = now.whole();
      idle = 0;
    } else if (++idle >= 10) {
      step /= 2;
      idle = 0;
    }
    double length = 0;
    for (std::size_t i = 0; i < offers.size(); ++i) {
      const auto over = static_cast<double>(now.taken()[i] - copies[i]);
      if (over > 0 || price[i] > 0) length += over * over;
    }
    if (length == 0) break;  // a layout that keeps within the copies: the bound is reached
    for (std::size_t i = 0; i < offers.size(); ++i) {
      const auto over = static_cast<double>(now.taken()[i] - copies[i]);
      price[i] = std::max(0.0, price[i] + step * lowest * over / length);
    }
    std::stable_sort(bounds.begin(), bounds.end(),
                     [](const auto& a, const auto& b) { return a.whole() < b.whole(); });
    if (bounds.size() > count)
      bounds.erase(bounds.begin() + static_cast<std::ptrdiff_t>(count), bounds.end());
  }
  std::stable_sort(bounds.begin(), bounds.end(),
                   [](const auto& a, const auto& b) { return a.whole() < b.whole(); });
  if (bounds.size() > count)
    bounds.erase(bounds.begin() + static_cast<std::ptrdiff_t>(count), bounds.end());
  for (OutsideBound& bound : bounds) bound.prepare(grid);
  return bounds;
}

}  // namespace splay::packing
