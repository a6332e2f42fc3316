#include <catch2/catch.hpp>

#include "geometry/packing_boards.h"
#include "geometry/packing_lengths.h"
#include "geometry/packing_random.h"
#include "packing/verify.h"

namespace splay::packing {
namespace {

BoardPlan checked(const BoardTask& task, std::int64_t steps) {
  BoardPlan plan = plan_boards(task, {steps, {}});
  REQUIRE(verify::plan(task, plan) == verify::sound);
  return plan;
}

// Eight staves of 8 3/4 in need 70.875 in of a 72 in board with seven kerfs of 1/8 in, 71.125 in
// with both ends trimmed; at 9 in they need 72.875 in. Sizes from the 8-sided planter thread on
// sawdustzone.org.
TEST_CASE("Eight 8 3/4 in staves come from a 72 in board, eight of 9 in do not") {
  BoardTask task;
  task.kerf = inch / 8;
  task.boards = {{72 * inch, -1, 1, inch / 8, inch / 8, {}}};
  task.parts = {{8.75 * inch, 8}};
  const BoardPlan plan = checked(task, 100);
  REQUIRE(plan.layouts.size() == 1);
  const BoardLayout::Placed& last = plan.layouts[0].parts.back();
  CHECK(last.at + last.length + inch / 8 == Approx(71.125 * inch));
  CHECK(plan.layouts[0].cuts.size() == 9);
  task.parts[0].length = 9 * inch;
  CHECK(checked(task, 100).layouts.size() == 2);
  task.boards[0].trim_left = task.boards[0].trim_right = 0;
  CHECK(checked(task, 100).layouts.size() == 2);
  task.boards[0].length = 72.875 * inch;
  CHECK(checked(task, 100).layouts.size() == 1);
  CHECK(checked(task, 100).layouts[0].cuts.size() == 7);
}

TEST_CASE("Parts keep clear of defects") {
  BoardTask task;
  task.kerf = 3;
  task.boards = {{2000, 1, 1, 0, 0, {{600, 640}, {1300, 1301}}}};
  const std::vector<Interval> clear = clear_stretches(task.boards[0], task.kerf);
  REQUIRE(clear.size() == 3);
  CHECK(clear[1].from == 640);
  CHECK(clear[1].to == 1300);
  CHECK(clear[2].from == 1303);  // one kerf takes a defect narrower than itself
  task.parts = {{600, 1}, {660, 1}, {697, 1}};
  CHECK(checked(task, 100).unplaced.empty());
  task.parts[2].length = 697.1;
  CHECK(checked(task, 100).unplaced == std::vector<int>{2});
}

TEST_CASE("Boards on hand are used before new ones, and the bound counts them") {
  BoardTask task;
  task.kerf = 3;
  task.boards = {{2400, -1, 1, 0, 0, {}}, {900, 2, 0, 0, 0, {}}};
  task.parts = {{440, 4}};
  CHECK(checked(task, 100).cost == 0);
  task.parts[0].count = 9;
  const BoardPlan plan = checked(task, 100);
  CHECK(plan.cost == 1);
  CHECK(plan.bound == 1);
}

TEST_CASE("Random board tasks are sound") {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    Random random(seed);
    const auto between = [&](double least, double most) {
      return least + (most - least) * random.fraction();
    };
    BoardTask task;
    task.kerf = random.below(4) == 0 ? 0 : between(1, 5);
    task.boards = {{2400, -1, 3, between(0, 30), between(0, 30), {}}, {1800, -1, 2, 0, 0, {}}};
    for (int i = 0; i < 3; ++i) {
      const double a = between(0, 1500), b = between(0, 1500);
      task.boards.push_back(
          {between(1000, 3000), 1, 0.5, 0, 0, {{a, a + between(0, 80)}, {b, b + between(0, 80)}}});
    }
    const int kinds = 1 + random.below(10);
    for (int i = 0; i < kinds; ++i) task.parts.push_back({between(50, 1500), 1 + random.below(6)});
    CHECK(checked(task, 100).unplaced.empty());
  }
}

TEST_CASE("Exact fillings are found") {
  // Three of each bar: 100 = 51 + 27 + 22, no other way leaves as little.
  const LengthPlan plan =
      cut_lengths({{{100}, -1, 1}}, {51, 27, 22, 51, 27, 22, 51, 27, 22}, {1000, {}});
  CHECK(plan.bars.size() == 3);
  CHECK(plan.bound == 3);
}

TEST_CASE("Board tasks that mean nothing are refused") {
  CHECK_THROWS_AS(plan_boards({{{0, -1, 1, 0, 0, {}}}, {}, 0, 0}, {1, {}}), std::invalid_argument);
  CHECK_THROWS_AS(plan_boards({{}, {{-5, 1}}, 0, 0}, {1, {}}), std::invalid_argument);
  CHECK_THROWS_AS(plan_boards({{}, {}, -1, 0}, {1, {}}), std::invalid_argument);
  CHECK(plan_boards({{}, {{5, 2}}, 0, 0}, {1, {}}).unplaced.size() == 2);
}

}  // namespace
}  // namespace splay::packing
