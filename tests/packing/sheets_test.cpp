#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <ctime>

#include "geometry/packing_random.h"
#include "geometry/packing_sheets.h"
#include "packing/verify.h"

namespace splay::packing {
namespace {

SheetPlan checked(const SheetTask& task, std::int64_t steps) {
  SheetPlan plan = plan_sheets(task, {steps, {}});
  REQUIRE(verify::plan(task, plan) == verify::sound);
  return plan;
}

// Three strips of 16 in from 48 in need 48.25 in with two kerfs of 1/8 in; at 15 7/8 in 47.875 in.
// https://assets.doityourself.com/stry/bookcaselayout , https://www.nikinnaird.com/kitchen-shelves/
TEST_CASE("Three 16 in strips do not come from a 48 in sheet, three of 15 7/8 in do") {
  SheetTask task;
  task.kerf = inch / 8;
  task.sheets = {{96 * inch, 48 * inch, -1, 1, {}}};
  task.parts = {{96 * inch, 16 * inch, 3, false}};
  CHECK(checked(task, 200).layouts.size() == 2);
  task.parts[0].height = 15.875 * inch;
  const SheetPlan plan = checked(task, 200);
  REQUIRE(plan.layouts.size() == 1);
  CHECK(plan.layouts[0].cuts.size() == 3);  // the last frees the strip of its 1/8 in surplus
  task.parts[0].height = (48 - 0.25) / 3 * inch;
  CHECK(checked(task, 200).layouts[0].cuts.size() == 2);
}

// A side of 23 1/4 by 34 1/2 in with vertical grain, sheet 48 by 96 in with the grain along 96 in,
// kerf 1/8 in: four to a sheet with the grain kept, five if turning were allowed. The sizes are
// from https://www.woodweb.com/knowledge_base/Vertical_Versus_Horizontal_Grain.html , figures
// derived.
TEST_CASE("Keeping the grain costs one side in five") {
  SheetTask task;
  task.kerf = inch / 8;
  task.sheets = {{96 * inch, 48 * inch, -1, 1, {}}};
  task.parts = {{34.5 * inch, 23.25 * inch, 4, false}};
  CHECK(checked(task, 500).layouts.size() == 1);
  task.parts[0].count = 5;
  CHECK(checked(task, 500).layouts.size() == 2);
  task.parts[0].may_turn = true;
  CHECK(checked(task, 500).layouts.size() == 1);
  task.parts[0].count = 6;
  const SheetPlan six = checked(task, 500);
  CHECK(six.layouts.size() == 2);
  CHECK(six.bound == 2);
}

TEST_CASE("Edge trims come off first and leave that much less") {
  SheetTask task;
  task.kerf = 3;
  task.sheets = {{1000, 500, -1, 1, {10, 10, 10, 10}}};
  task.parts = {{980, 480, 1, false}};
  const SheetPlan exact = checked(task, 50);
  REQUIRE(exact.layouts.size() == 1);
  CHECK(exact.layouts[0].cuts.size() == 4);
  CHECK(exact.layouts[0].parts[0].x == 10);
  task.parts[0].width = 980.01;
  CHECK(checked(task, 50).unplaced == std::vector<int>{0});
}

TEST_CASE("Off-cuts on hand are used before a new sheet is cut") {
  SheetTask task;
  task.kerf = 3.2;
  task.sheets = {{2440, 1220, -1, 1, {}}, {800, 650, 2, 0, {}}, {400, 300, 1, 0, {}}};
  task.parts = {{700, 600, 2, false}, {350, 250, 1, false}};
  const SheetPlan on_hand = checked(task, 400);
  CHECK(on_hand.cost == 0);
  CHECK(on_hand.unplaced.empty());
  task.parts[0].count = 3;
  const SheetPlan one_new = checked(task, 400);
  CHECK(one_new.cost == 1);
  CHECK(one_new.bound == 1);
}

TEST_CASE("A sequence comes from one strip in order") {
  SheetTask task;
  task.kerf = 3;
  task.sheets = {{2440, 1220, -1, 1, {}}};
  task.parts = {
      {600, 140, 2, false}, {600, 190, 1, false}, {600, 240, 2, false}, {300, 300, 6, true}};
  task.sequences = {{{0, 1, 2}, Axis::y}, {{0, 2}, Axis::x}};
  const SheetPlan plan = checked(task, 500);
  CHECK(plan.unplaced.empty());
  CHECK(plan.layouts.size() == 1);
  task.parts = {{500, 100, 2, true}, {400, 120, 2, true}};
  task.sequences = {{{0, 1, 0, 1}, Axis::x}};
  task.sheets = {{200, 2000, 1, 1, {}}};  // fits turned only
  CHECK(checked(task, 50).unplaced.empty());
}

TEST_CASE("What remains of the last sheet is kept in one piece") {
  SheetTask task;
  task.kerf = 3;
  task.sheets = {{2440, 1220, -1, 1, {}}};
  task.parts = {{400, 600, 4, false}, {600, 300, 2, false}};
  const SheetPlan plan = checked(task, 2000);
  REQUIRE(plan.layouts.size() == 1);
  REQUIRE(!plan.layouts[0].off_cuts.empty());
  // Columns of 2 by 600 and of 2 by 300: 809 + 603 wide at the most, 1220 high.
  CHECK(plan.layouts[0].off_cuts[0].width >= 2440 - 1409 - 3 - 1e-6);
  CHECK(plan.layouts[0].off_cuts[0].height >= 1220 - 1e-6);
}

TEST_CASE(
    "The first cuts run across the whole sheet, and no cut is longer than those before allow") {
  SheetTask task;
  task.kerf = 3;
  task.sheets = {{2440, 1220, -1, 1, {}}};
  task.parts = {{500, 250, 16, false}};
  const SheetPlan plan = checked(task, 500);
  REQUIRE(plan.layouts.size() == 1);
  const std::vector<SheetCut>& cuts = plan.layouts[0].cuts;
  CHECK(cuts[0].to - cuts[0].from == (cuts[0].axis == Axis::x ? 1220 : 2440));
  // Sixteen equal parts in rows: one cut frees the rows' length, one each a row, then the parts.
  const auto length = [](const SheetCut& cut) { return cut.to - cut.from; };
  const auto first_short = std::find_if(cuts.begin(), cuts.end(),
                                        [&](const SheetCut& cut) { return length(cut) < 600; });
  CHECK(
      std::all_of(first_short, cuts.end(), [&](const SheetCut& cut) { return length(cut) < 600; }));
}

TEST_CASE("Random sheet tasks are sound") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const auto between = [&](double least, double most) {
      return least + (most - least) * random.fraction();
    };
    SheetTask task;
    task.kerf = random.below(4) == 0 ? 0 : between(1, 5);
    task.sheets = {{2440, 1220, -1, 1, {between(0, 15), 0, between(0, 15), between(0, 5)}},
                   {between(300, 1500), between(300, 1200), 1 + random.below(3), 0, {}}};
    const int kinds = 1 + random.below(12);
    for (int i = 0; i < kinds; ++i)
      task.parts.push_back(
          {between(40, 900), between(40, 900), 1 + random.below(5), random.below(2) == 0});
    if (random.below(2) == 0) task.sequences.push_back({{0}, Axis::x});
    if (kinds > 2) task.sequences.push_back({{1, 2}, random.below(2) == 0 ? Axis::x : Axis::y});
    const SheetPlan plan = checked(task, 200);
    CHECK((plan.unplaced.empty() || kinds > 2));
  }
}

TEST_CASE("Sheet tasks that mean nothing are refused") {
  SheetTask task;
  task.sheets = {{100, 100, -1, 1, {}}};
  task.parts = {{10, 10, 1, false}};
  const auto refused = [](const SheetTask& t) {
    CHECK_THROWS_AS(plan_sheets(t, {10, {}}), std::invalid_argument);
  };
  SheetTask bad = task;
  bad.kerf = -1;
  refused(bad);
  bad = task;
  bad.parts[0].width = 0;
  refused(bad);
  bad = task;
  bad.sequences = {{{0, 0}, Axis::x}};
  refused(bad);
  bad.sequences = {{{1}, Axis::x}};
  refused(bad);
  bad = task;
  bad.sheets[0].trim.left = -1;
  refused(bad);
  CHECK(plan_sheets({{}, task.parts, {}, 0, 100}, {10, {}}).unplaced.size() == 1);
  CHECK(plan_sheets({task.sheets, {}, {}, 0, 100}, {10, {}}).layouts.empty());
}

// An invented shop order: thirty sizes, five hundred parts.
TEST_CASE("Five hundred parts are laid out") {
  Random random(500);
  SheetTask task;
  task.kerf = 3.2;
  task.sheets = {{2440, 1220, -1, 1, {8, 8, 8, 8}}, {1100, 580, 2, 0, {}}};
  int left = 500;
  for (int i = 0; i < 30; ++i) {
    const int count = i < 29 ? std::min(left, 6 + random.below(21)) : left;
    left -= count;
    task.parts.push_back({std::round(120 + 780 * random.fraction()),
                          std::round(80 + 420 * random.fraction()), count, random.below(3) != 0});
  }
  const std::clock_t start = std::clock();
  const SheetPlan plan = plan_sheets(task, {4000, {}});
  const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  CHECK(verify::plan(task, plan) == verify::sound);
  CHECK(plan.unplaced.empty());
  CHECK(plan.cost <= plan.bound * 1.1);
  WARN("500 parts: " << plan.cost << " sheets, at least " << plan.bound << ", " << seconds << " s");
}

}  // namespace
}  // namespace splay::packing
