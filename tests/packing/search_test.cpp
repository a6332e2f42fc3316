#include <catch2/catch.hpp>

#include <numeric>

#include "geometry/packing_bound.h"
#include "geometry/packing_cuts.h"
#include "geometry/packing_random.h"
#include "geometry/packing_search.h"
#include "packing/brute_force.h"
#include "packing/verify.h"

namespace splay::packing {
namespace {

std::vector<Piece> random_pieces(Random& random, int count, int longest) {
  std::vector<Piece> pieces;
  pieces.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i)
    pieces.push_back({1 + random.below(longest), 1 + random.below(longest), random.below(2) == 0});
  return pieces;
}

TEST_CASE("A slicing tree stays sound through insertions and removals") {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const std::vector<Piece> pieces = random_pieces(random, 30, 12);
    SlicingTree tree(30, 20);
    std::vector<int> outside(pieces.size());
    std::iota(outside.begin(), outside.end(), 0);
    for (int move = 0; move < 60; ++move) {
      if (!tree.empty() && random.below(3) == 0) {
        const int node = random.below(tree.node_count());
        if (!tree.is_block(node)) continue;
        const std::vector<int> out = tree.remove(node);
        outside.insert(outside.end(), out.begin(), out.end());
      } else if (!outside.empty()) {
        const int index = outside.back();
        const Piece& piece = pieces[static_cast<std::size_t>(index)];
        const std::optional<Slot> slot = tree.best_slot(piece);
        if (!slot) continue;
        outside.pop_back();
        tree.insert(index, piece, *slot);
      }
      const CutTree cuts = tree.cuts();
      REQUIRE(verify::tree(cuts, 30, 20, pieces, std::vector<std::int64_t>(30, 1)) ==
              verify::sound);
      const std::size_t inside = regions_with(cuts, Content::piece).size();
      REQUIRE(inside + outside.size() == pieces.size());
      REQUIRE(static_cast<int>(inside) == tree.leaf_count());
      double used = 0;
      for (const int index : tree.pieces()) used += area(pieces[static_cast<std::size_t>(index)]);
      REQUIRE(tree.free_area() == 600 - used);
    }
  }
}

TEST_CASE("Few pieces reach the fewest sheets, and no bound passes them") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Units width = 5 + random.below(4), height = 4 + random.below(4);
    const std::vector<Piece> pieces = random_pieces(random, 6, 4);
    const std::vector<Stock> stocks = {{width, height, -1, 1}};
    const int fewest = brute::fewest_sheets(pieces, width, height);
    CHECK(area_bound(stocks, pieces) <= fewest);
    CHECK(dual_feasible_bound(stocks, pieces) <= fewest);
    CHECK(column_bound(stocks, pieces, {200, {}}) <= fewest);
    const Packing packing = pack_sheets(stocks, pieces, {2000, {}}, 0);
    CHECK(verify::placed_once(packing, pieces) == verify::sound);
    CHECK(packing.cost == fewest);
  }
}

TEST_CASE("Few pieces reach the least height of a strip") {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    std::vector<Piece> pieces = random_pieces(random, 5, 5);
    const Packing packing = pack_strip(6, pieces, {3000, {}});
    CHECK(verify::placed_once(packing, pieces) == verify::sound);
    CHECK(packing.sheets[0].tree.height() == brute::least_height(pieces, 6));
  }
  CHECK_THROWS_AS(pack_strip(5, {{6, 2, false}}, {10, {}}), std::invalid_argument);
  CHECK(pack_strip(5, {{6, 2, true}}, {10, {}}).sheets[0].tree.height() == 6);
}

TEST_CASE("Random orders on several kinds of sheet are sound and never under the bound") {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const std::vector<Piece> pieces = random_pieces(random, 5 + random.below(40), 60);
    const std::vector<Stock> stocks = {{100, 80, -1, 10},
                                       {70, 60, -1, static_cast<double>(4 + random.below(5))},
                                       {50 + random.below(40), 40 + random.below(40), 2, 0},
                                       {90, 30, 1, 1}};
    const Packing packing = pack_sheets(stocks, pieces, {300, {}}, 0);
    CHECK(verify::placed_once(packing, pieces) == verify::sound);
    CHECK(packing.unplaced.empty());
    const double bound = cost_bound(stocks, pieces, {60, {}}, packing.cost);
    CHECK(bound <= packing.cost);
    std::vector<int> used(stocks.size(), 0);
    for (const PackedSheet& sheet : packing.sheets) ++used[static_cast<std::size_t>(sheet.stock)];
    CHECK(used[2] <= 2);
    CHECK(used[3] <= 1);
    Packing gathered = packing;
    gather_off_cut(gathered, pieces, {300, {}});
    CHECK(verify::placed_once(gathered, pieces) == verify::sound);
    CHECK(gathered.sheets.size() == packing.sheets.size());
    CHECK(gathered.cost == packing.cost);
  }
}

TEST_CASE("The same input gives the same packing, and more effort never a dearer one") {
  Random random(3);
  const std::vector<Piece> pieces = random_pieces(random, 60, 50);
  const std::vector<Stock> stocks = {{100, 100, -1, 1}};
  const auto layout = [&](std::int64_t steps) {
    std::vector<CutTree> trees;
    for (const PackedSheet& s : pack_sheets(stocks, pieces, {steps, {}}, 0).sheets)
      trees.push_back(s.tree.cuts());
    return trees;
  };
  const std::vector<CutTree> once = layout(500), again = layout(500);
  REQUIRE(once.size() == again.size());
  for (std::size_t i = 0; i < once.size(); ++i) {
    REQUIRE(once[i].size() == again[i].size());
    for (std::size_t n = 0; n < once[i].size(); ++n) {
      CHECK(once[i][n].x == again[i][n].x);
      CHECK(once[i][n].piece == again[i][n].piece);
    }
  }
  CHECK(layout(0).size() >= once.size());
  CHECK(once.size() >= layout(4000).size());
}

TEST_CASE("Progress is reported and can stop the search") {
  Random random(5);
  const std::vector<Piece> pieces = random_pieces(random, 60, 50);
  int calls = 0;
  const Effort effort{100000, [&](std::int64_t, double) { return ++calls < 3; }};
  const Packing packing = pack_sheets({{100, 100, -1, 1}}, pieces, effort, 0);
  CHECK(packing.unplaced.empty());
  CHECK(packing.steps < 100000);
  CHECK(calls == 3);
}

TEST_CASE("A piece that fits no sheet, or comes too late, stays unplaced") {
  const Packing large = pack_sheets({{10, 10, -1, 1}}, {{12, 3, true}, {4, 4, false}}, {50, {}});
  CHECK(large.unplaced == std::vector<int>{0});
  const Packing few = pack_sheets({{10, 10, 1, 1}}, {{6, 6, true}, {6, 6, true}}, {50, {}});
  CHECK(few.unplaced.size() == 1);
}

}  // namespace
}  // namespace splay::packing
