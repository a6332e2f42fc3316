// What is measured while the glue is wet and what is finished first, by plain coordinates.
#include <algorithm>
#include <cmath>
#include <set>

#include "fabrication/glue_up.h"
#include "glue_pieces.h"

using namespace splay;
using fabrication::GlueStage;

TEST_CASE("Wet checks: unequal diagonals and the width inside, from plain coordinates") {
  const test::Built built = test::build(test::leaning_case("[glue_up]\nglue = \"epoxy\"\n"));
  const double t = std::tan(12 * 3.14159265358979323846 / 180);
  // The outer trapezoid: foot 800 wide, height 600, the left side leaning in.
  const double rising = std::hypot(800, 600);             // left foot to right head
  const double falling = std::hypot(800 - 600 * t, 600);  // right foot to left head
  std::multiset<double> diagonals;
  double inside = 0;
  for (const GlueStage& stage : built.plan.glue_up.stages) {
    for (const fabrication::WetCheck& check : stage.checks) {
      CHECK(check.tolerance > 0);
      if (check.kind == fabrication::MeasureKind::diagonal) diagonals.insert(check.value);
      if (check.kind == fabrication::MeasureKind::inside && check.name == "inside, on a shelf")
        inside = check.value;
    }
  }
  const auto has = [&](double value) {
    return std::any_of(diagonals.begin(), diagonals.end(),
                       [&](double d) { return std::abs(d - value) < 1e-6; });
  };
  CHECK(has(rising));
  CHECK(has(falling));
  // One millimetre over the shelf's top at 300: between the inner faces.
  const double cosine = std::cos(12 * 3.14159265358979323846 / 180);
  CHECK(inside == Approx(800 - 301 * t - 18 / cosine - 18).margin(1e-6));
}

TEST_CASE("A partition housed at one end only is set by its angle and fixed with blocks") {
  const test::Built tee = test::build(
      test::job("mm") + test::board("oak", "20 mm") +
      "[board.base]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 300\nwidth = 100\n"
      "[board.post]\nstock = \"oak\"\nlength = 250\nwidth = 100\nat = [160, 0, 10]\nrise = 90\n"
      "[joint.foot]\nkind = \"housing\"\nhost = \"base\"\nguest = \"post\"\n");
  INFO(tee.stops());
  REQUIRE(tee.plan.glue_up.stages.size() == 1);
  REQUIRE(tee.plan.glue_up.stages[0].one_end.size() == 1);
  const auto& checks = tee.plan.glue_up.stages[0].checks;
  REQUIRE(checks.size() == 1);
  CHECK(test::degrees(checks[0].value) == Approx(90));
}

TEST_CASE("A face that a near neighbour hides is finished first") {
  // Two wide boards 30 mm apart, held by two spacers between them.
  const test::Built built = test::build(
      test::job("mm") + test::board("oak", "20 mm") +
      "[board.low]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 400\nwidth = 300\n"
      "[board.high]\nstock = \"oak\"\nlength = 400\nwidth = 300\nat = [0, 0, 40]\n"
      "[board.left]\nstock = \"oak\"\nlength = 300\nwidth = 20\nat = [20, 0, 20]\nturn = 90\n"
      "[board.right]\nstock = \"oak\"\nlength = 300\nwidth = 20\nat = [400, 0, 20]\nturn = 90\n"
      "[joint.a]\nkind = \"glued\"\nhost = \"low\"\nguest = \"left\"\n"
      "[joint.b]\nkind = \"glued\"\nhost = \"low\"\nguest = \"right\"\n"
      "[joint.c]\nkind = \"glued\"\nhost = \"high\"\nguest = \"left\"\n"
      "[joint.d]\nkind = \"glued\"\nhost = \"high\"\nguest = \"right\"\n");
  INFO(built.stops());
  std::set<std::string> first;
  for (const GlueStage& stage : built.plan.glue_up.stages)
    for (const fabrication::OutOfReach& surface : stage.finish_first) {
      first.insert(built.plan.assembly.parts[static_cast<std::size_t>(surface.part)].name);
      CHECK(surface.gap == Approx(20).margin(1e-9));
    }
  CHECK(first == std::set<std::string>{"low", "high"});
}
