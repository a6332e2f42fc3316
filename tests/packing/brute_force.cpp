#include "packing/brute_force.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace splay::packing::brute {

namespace {

using Counts = std::vector<std::int64_t>;

// value(w, h, copies) over every cut and every way to share the copies out.
class Knapsack {
 public:
  explicit Knapsack(const std::vector<Offer>& offers) : offers_(offers) {}

  double value(Units w, Units h, const Counts& copies) {
    const auto key = std::make_tuple(w, h, copies);
    if (const auto known = known_.find(key); known != known_.end()) return known->second;
    double best = 0;
    for (std::size_t i = 0; i < offers_.size(); ++i) {
      const Piece& p = offers_[i].piece;
      const bool fits =
          (p.width <= w && p.height <= h) || (p.may_turn && p.height <= w && p.width <= h);
      if (copies[i] > 0 && fits) best = std::max(best, offers_[i].value);
    }
    Counts mine(copies.size(), 0);
    share(w, h, copies, mine, 0, best);
    return known_[key] = best;
  }

 private:
  void share(Units w, Units h, const Counts& copies, Counts& mine, std::size_t i, double& best) {
    if (i < copies.size()) {
      for (mine[i] = 0; mine[i] <= copies[i]; ++mine[i]) share(w, h, copies, mine, i + 1, best);
      mine[i] = 0;
      return;
    }
    Counts others = copies;
    for (std::size_t k = 0; k < others.size(); ++k) others[k] -= mine[k];
    if (others == copies || mine == copies) return;  // nothing on one side is a mere trim
    for (Units x = 1; x < w; ++x)
      best = std::max(best, value(x, h, mine) + value(w - x, h, others));
    for (Units y = 1; y < h; ++y)
      best = std::max(best, value(w, y, mine) + value(w, h - y, others));
  }

  const std::vector<Offer>& offers_;
  std::map<std::tuple<Units, Units, Counts>, double> known_;
};

// Whether a set of pieces (bits) fits a rectangle.
class Fitting {
 public:
  explicit Fitting(const std::vector<Piece>& pieces) : pieces_(pieces) {}

  bool fits(unsigned set, Units w, Units h) {
    if (set == 0) return true;
    if ((set & (set - 1)) == 0) {
      std::size_t i = 0;
      while ((set >> i) != 1) ++i;
      const Piece& p = pieces_[i];
      return (p.width <= w && p.height <= h) || (p.may_turn && p.height <= w && p.width <= h);
    }
    const auto key = std::make_tuple(set, w, h);
    if (const auto known = known_.find(key); known != known_.end()) return known->second;
    bool found = false;
    for (unsigned part = (set - 1) & set; part != 0 && !found; part = (part - 1) & set) {
      for (Units x = 1; x < w && !found; ++x)
        found = fits(part, x, h) && fits(set ^ part, w - x, h);
      for (Units y = 1; y < h && !found; ++y)
        found = fits(part, w, y) && fits(set ^ part, w, h - y);
    }
    return known_[key] = found;
  }

 private:
  const std::vector<Piece>& pieces_;
  std::map<std::tuple<unsigned, Units, Units>, bool> known_;
};

}  // namespace

double best_value(const std::vector<Offer>& offers, Units width, Units height) {
  Counts copies;
  for (const Offer& o : offers) copies.push_back(o.copies);
  return Knapsack(offers).value(width, height, copies);
}

std::vector<std::vector<double>> best_values_unlimited(const std::vector<Offer>& offers,
                                                       Units width, Units height) {
  const auto columns = static_cast<std::size_t>(width) + 1;
  const auto rows = static_cast<std::size_t>(height) + 1;
  std::vector<std::vector<double>> best(columns, std::vector<double>(rows, 0));
  for (std::size_t w = 1; w < columns; ++w) {
    for (std::size_t h = 1; h < rows; ++h) {
      for (const Offer& o : offers) {
        const auto pw = static_cast<std::size_t>(o.piece.width);
        const auto ph = static_cast<std::size_t>(o.piece.height);
        const bool fits = (pw <= w && ph <= h) || (o.piece.may_turn && ph <= w && pw <= h);
        if (fits) best[w][h] = std::max(best[w][h], o.value);
      }
      for (std::size_t x = 1; x < w; ++x)
        best[w][h] = std::max(best[w][h], best[x][h] + best[w - x][h]);
      for (std::size_t y = 1; y < h; ++y)
        best[w][h] = std::max(best[w][h], best[w][y] + best[w][h - y]);
    }
  }
  return best;
}

int fewest_sheets(const std::vector<Piece>& pieces, Units width, Units height) {
  const unsigned all = (1U << pieces.size()) - 1;
  Fitting fitting(pieces);
  std::vector<int> fewest(all + 1, 0);
  for (unsigned set = 1; set <= all; ++set) {
    for (unsigned part = set; part != 0; part = (part - 1) & set) {
      const bool reached = set == part || fewest[set ^ part] > 0;
      if (!reached || !fitting.fits(part, width, height)) continue;
      const int count = fewest[set ^ part] + 1;
      if (fewest[set] == 0 || count < fewest[set]) fewest[set] = count;
    }
  }
  return fewest[all];
}

Units least_height(const std::vector<Piece>& pieces, Units width) {
  const unsigned all = (1U << pieces.size()) - 1;
  Fitting fitting(pieces);
  Units height = 1;
  while (!fitting.fits(all, width, height)) ++height;
  return height;
}

}  // namespace splay::packing::brute
