#include <catch2/catch.hpp>

#include <cmath>

#include "geometry/packing_cuts.h"
#include "geometry/packing_knapsack.h"
#include "geometry/packing_random.h"
#include "packing/brute_force.h"
#include "packing/verify.h"

namespace splay::packing {
namespace {

std::vector<Offer> random_offers(Random& random, int kinds, int longest, int most_copies) {
  std::vector<Offer> offers;
  for (int i = 0; i < kinds; ++i) {
    const Piece p{1 + random.below(longest), 1 + random.below(longest), random.below(2) == 0};
    offers.push_back({p, static_cast<double>(1 + random.below(20)), 1 + random.below(most_copies)});
  }
  return offers;
}

// The value of a tree, once it has been found sound.
double checked_value(const CutTree& tree, const std::vector<Offer>& offers, Units width,
                     Units height, bool limited) {
  std::vector<Piece> pieces;
  std::vector<std::int64_t> most;
  for (const Offer& o : offers) {
    pieces.push_back(o.piece);
    most.push_back(limited && o.copies >= 0 ? o.copies : width * height);
  }
  REQUIRE(verify::tree(tree, width, height, pieces, most) == verify::sound);
  double value = 0;
  for (const int region : regions_with(tree, Content::piece))
    value += offers[static_cast<std::size_t>(tree[static_cast<std::size_t>(region)].piece)].value;
  return value;
}

TEST_CASE("Normal patterns are all sums of the sizes") {
  CHECK(normal_patterns({5, 3}, 12) == std::vector<Units>{0, 3, 5, 6, 8, 9, 10, 11, 12});
  CHECK(normal_patterns({}, 4) == std::vector<Units>{0});
}

TEST_CASE("The unconstrained table agrees with trying every cut") {
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Units width = 5 + random.below(35), height = 5 + random.below(30);
    std::vector<Offer> offers = random_offers(random, 1 + random.below(8), 15, 1);
    if (random.below(2) == 0)  // values near the areas are the hard case
      for (Offer& o : offers) o.value = std::floor(area(o.piece) * (0.9 + 0.1 * random.fraction()));
    if (random.below(3) == 0)
      for (Offer& o : offers) o.piece.may_turn = true;
    const auto best = brute::best_values_unlimited(offers, width, height);
    const GuillotineTable table(offers, width, height);
    for (Units w = 1; w <= width; ++w)
      for (Units h = 1; h <= height; ++h)
        REQUIRE(table.value(w, h) ==
                best[static_cast<std::size_t>(w)][static_cast<std::size_t>(h)]);
    CHECK(checked_value(table.cuts(width, height), offers, width, height, false) ==
          table.value(width, height));
    const GuillotineTable sheet = GuillotineTable::for_sheet(offers, width, height);
    CHECK(sheet.value(width, height) == table.value(width, height));
    CHECK(checked_value(sheet.cuts(width, height), offers, width, height, false) ==
          table.value(width, height));
  }
}

TEST_CASE("The constrained search agrees with trying every cut") {
  int proven = 0;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const Units width = 3 + random.below(5), height = 3 + random.below(4);
    const std::vector<Offer> offers = random_offers(random, 3, 5, 2);
    const Knapsack best = best_cutting(offers, width, height, {20000, {}});
    CHECK(checked_value(best.tree, offers, width, height, true) == best.value);
    CHECK(best.proven);
    CHECK(best.value == brute::best_value(offers, width, height));
    proven += best.proven ? 1 : 0;
  }
  CHECK(proven == 120);
}

TEST_CASE("A search cut short says what it has not proven") {
  Random random(7);
  const std::vector<Offer> offers = random_offers(random, 12, 30, 2);
  const Knapsack one = best_cutting(offers, 70, 40, {1, {}});
  const Knapsack full = best_cutting(offers, 70, 40, {20000, {}});
  CHECK(one.steps <= 1);
  CHECK(one.value <= full.value);
  CHECK(one.bound >= full.value);
  CHECK(checked_value(full.tree, offers, 70, 40, true) == full.value);
}

TEST_CASE("The table refuses sheets it cannot hold and pieces without size") {
  CHECK_THROWS_AS(GuillotineTable({}, GuillotineTable::longest_side + 1, 5), std::invalid_argument);
  CHECK_THROWS_AS(GuillotineTable({{{0, 3, false}, 1, 1}}, 5, 5), std::invalid_argument);
  CHECK(GuillotineTable({}, 5, 5).value(5, 5) == 0);
}

TEST_CASE("Cuts of one level come before those of the next") {
  CutTree tree(1);
  tree[0].width = 10;
  tree[0].height = 8;
  const int strip = split_region(tree, 0, Axis::y, 3);
  const int rest = strip + 1;
  split_region(tree, strip, Axis::x, 4);
  split_region(tree, rest, Axis::y, 2);
  CHECK(cut_order(tree) == std::vector<int>{0, rest, strip});
}

}  // namespace
}  // namespace splay::packing
