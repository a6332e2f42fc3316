// The verifier finds what it is there to find.
#include <catch2/catch.hpp>

#include "packing/verify.h"

namespace splay::packing {
namespace {

using verify::rectangles;
using verify::sound;

TEST_CASE("The verifier knows a pinwheel from a guillotine layout") {
  const verify::Rect sheet{0, 0, 3, 3};
  const std::vector<verify::Rect> pinwheel = {
      {0, 0, 2, 1}, {2, 0, 1, 2}, {1, 2, 2, 1}, {0, 1, 1, 2}, {1, 1, 1, 1}};
  CHECK(rectangles(pinwheel, sheet, 0, 1e-9) == "no cut from edge to edge parts the rectangles");
  CHECK(rectangles({{0, 0, 2, 1}, {2, 0, 1, 2}, {0, 1, 2, 1}, {0, 2, 3, 1}}, sheet, 0, 1e-9) ==
        sound);
}

TEST_CASE("The verifier sees overlaps, lost kerfs and rectangles outside") {
  const verify::Rect sheet{0, 0, 10, 10};
  CHECK(rectangles({{0, 0, 5, 5}, {4, 4, 5, 5}}, sheet, 0, 1e-9) != sound);
  CHECK(rectangles({{0, 0, 5, 5}, {5, 0, 5, 5}}, sheet, 0, 1e-9) == sound);
  CHECK(rectangles({{0, 0, 4, 5}, {5, 0, 5, 5}}, sheet, 1, 1e-9) == sound);
  CHECK(rectangles({{0, 0, 4, 5}, {4.9, 0, 5, 5}}, sheet, 1, 1e-9) != sound);
  CHECK(rectangles({{6, 0, 5, 5}}, sheet, 0, 1e-9) != sound);
}

SheetPlan two_parts(SheetTask& task) {
  task.sheets = {{1000, 500, 1, 1, {}}};
  task.parts = {{380, 500, 2, false}, {100, 80, 2, false}};
  task.sequences = {{{1, 1}, Axis::x}};
  task.kerf = 4;
  SheetPlan plan = plan_sheets(task, {100, {}});
  REQUIRE(plan.unplaced.empty());
  REQUIRE(verify::plan(task, plan) == sound);
  return plan;
}

TEST_CASE("The verifier sees every kind of damage to a plan") {
  SheetTask task;
  const SheetPlan good = two_parts(task);
  const auto damaged = [&](const auto& damage) {
    SheetPlan plan = good;
    damage(plan.layouts[0]);
    return verify::plan(task, plan);
  };
  using Layout = SheetLayout;
  CHECK(damaged([](Layout& l) { l.parts.pop_back(); }) != sound);
  CHECK(damaged([](Layout& l) { l.parts.push_back(l.parts[0]); }) != sound);
  CHECK(damaged([](Layout& l) { l.parts[0].x += 1; }) != sound);
  CHECK(damaged([](Layout& l) { l.parts[0].turned = true; }) == "the grain is not kept");
  CHECK(damaged([](Layout& l) { l.parts[0].width -= 1; }) == "a part has lost its size");
  CHECK(damaged([](Layout& l) { l.cuts.pop_back(); }) != sound);
  CHECK(damaged([](Layout& l) { std::swap(l.cuts.front(), l.cuts.back()); }) != sound);
  CHECK(damaged([](Layout& l) { l.cuts[0].at += 0.5; }) != sound);
  CHECK(damaged([](Layout& l) { l.cuts[0].to -= 5; }) != sound);
  CHECK(damaged([](Layout& l) { l.off_cuts.pop_back(); }) == "an off-cut is not listed");
  CHECK(damaged([](Layout& l) { l.off_cuts[0].width += 1; }) != sound);
  CHECK(damaged([](Layout& l) { l.parts_area += 1; }) == "the area of the parts is off");
  CHECK(damaged([](Layout& l) {
          for (PlacedPart& p : l.parts) p.sequence = -1;
        }) == "a sequence is missing or there twice");
  SheetPlan twice = good;
  twice.layouts.push_back(twice.layouts[0]);
  CHECK(verify::plan(task, twice) != sound);
  SheetPlan cheap = good;
  cheap.bound = 2;
  CHECK(verify::plan(task, cheap) == "the cost is under the proven bound");
}

TEST_CASE("The verifier sees every kind of damage to a board") {
  BoardTask task;
  task.kerf = 3;
  task.boards = {{2000, 1, 1, 10, 10, {{900, 950}}}};
  task.parts = {{400, 3}};
  const BoardPlan good = plan_boards(task, {100, {}});
  REQUIRE(verify::plan(task, good) == sound);
  const auto damaged = [&](const auto& damage) {
    BoardPlan plan = good;
    damage(plan.layouts[0]);
    return verify::plan(task, plan);
  };
  CHECK(damaged([](BoardLayout& l) { l.parts.pop_back(); }) != sound);
  CHECK(damaged([](BoardLayout& l) { l.parts[0].length -= 1; }) != sound);
  CHECK(damaged([](BoardLayout& l) { l.parts[1].at -= 1; }) != sound);
  CHECK(damaged([](BoardLayout& l) { l.parts.back().at = 560; }) != sound);
  CHECK(damaged([](BoardLayout& l) { l.parts.back().at = 1600; }) != sound);
  CHECK(damaged([](BoardLayout& l) { l.cuts.erase(l.cuts.begin()); }) != sound);
  CHECK(damaged([](BoardLayout& l) { l.cuts.push_back(l.parts[0].at + 100); }) ==
        "a cut hits a part");
}

}  // namespace
}  // namespace splay::packing
