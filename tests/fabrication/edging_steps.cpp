// Steps of panels whose edging is on before they are cut. That core and edging are then one piece,
// measured and cut as one, is common practice, no source.
#include <algorithm>
#include <cmath>

#include "fabrication/edging.h"
#include "fabrication/proof.h"
#include "glue_pieces.h"

using namespace splay;
using fabrication::Step;
using fabrication::Tool;

namespace {

// A mitred case with a thick nosing on its panels and a shelf in housings that stop short of it.
std::string nosed(const std::string& glued, const std::string& shelf) {
  const std::string front =
      "front = { edge = \"nosing\", stock = \"lip\", thickness = 8, glued = \"" + glued + "\" }\n";
  return test::job("mm") + test::sheet("panel", "18 mm") + test::board("lip", "8 mm") +
         "[case.c]\noutline = { bottom = 800, height = 600, lean_in = [\"12 deg\", \"12 deg\"] }\n"
         "depth = 300\nstock = \"panel\"\ncorners = \"mitre\"\n" +
         front + "[case.c.shelf.a]\ntop_at = 300\n" + shelf;
}
const std::string stopped =
    "set_back = 20\nends = { housing = 6, floor = \"square to walls\", stopped = 15 }\n";

std::vector<const Step*> steps_for(const test::Built& built, const std::string& part) {
  const int row = static_cast<int>(&built.row(part) - built.plan.rows.data());
  std::vector<const Step*> found;
  for (const Step& step : built.plan.steps)
    if (step.row == row) found.push_back(&step);
  return found;
}

const Step* starting(const std::vector<const Step*>& steps, const std::string& start) {
  for (const Step* step : steps)
    if (step->name.starts_with(start)) return step;
  return nullptr;
}

void check_proven(const test::Built& built) {
  CHECK(built.stops() == "");
  for (const Step& step : built.plan.steps) {
    INFO(step.id << " " << step.name << ": " << step.unproven_why);
    CHECK(step.proven);
    CHECK(step.deviation_exact < 1e-6);
  }
  for (const fabrication::JointReport& joint : built.plan.joints) {
    INFO(joint.name);
    CHECK(joint.gap_cut >= 0);
    CHECK(joint.gap_cut < 1e-6);
  }
}

}  // namespace

TEST_CASE("A panel is ripped, edged, then cut to its ends, and the edging with it") {
  const test::Built built = test::build(nosed("before the cuts", stopped));
  check_proven(built);
  const auto panel = steps_for(built, "left panel");
  const Step* edging = starting(panel, "edging on the front edge");
  REQUIRE(edging != nullptr);
  CHECK(edging->exact.width == Approx(8));
  CHECK(built.plan.mark_of(built.plan.rows[static_cast<std::size_t>(edging->glued)].members[0]) ==
        built.row("left panel nosing").mark);
  bool before = true;
  for (const Step* step : panel) {
    if (step == edging) before = false;
    if (step->name.starts_with("rip")) CHECK(before);
    if (step->name.starts_with("mitre") || step->name.starts_with("housing")) CHECK_FALSE(before);
  }
  // The nosing is made to its section; nothing of it is cut to length.
  for (const Step* step : steps_for(built, "left panel nosing")) {
    INFO(step->name);
    CHECK_FALSE(step->name.starts_with("mitre"));
    CHECK(step->operations.empty());
  }
}

TEST_CASE("What is measured from an edged edge is longer by the edging") {
  const test::Built before = test::build(nosed("before the cuts", stopped)),
                    after = test::build(nosed("after the cuts", stopped));
  check_proven(before);
  check_proven(after);
  const auto furthest = [](const test::Built& built) {
    double most = 0;
    int front = 0;
    for (const Step* step : steps_for(built, "left panel")) {
      if (!step->name.starts_with("housing") || step->across_from != parts::Side::y_low) continue;
      for (const fabrication::Line& line : step->exact.lines)
        for (const fabrication::Mark& mark : {line.a, line.b}) {
          most = std::max(most, mark.across);
          ++front;
        }
    }
    REQUIRE(front > 0);
    return most;
  };
  CHECK(furthest(before) == Approx(furthest(after) + 8));
}

TEST_CASE("A housing that runs out in front goes through edging that was on before") {
  const std::string open = "set_back = 20\nends = { housing = 6, floor = \"square to walls\" }\n";
  const test::Built before = test::build(nosed("before the cuts", open)),
                    after = test::build(nosed("after the cuts", open));
  check_proven(before);
  check_proven(after);
  const auto volume = [](const test::Built& built) {
    return built.part("left panel nosing").body.volume();
  };
  // Its walls are level and 18 mm apart, the side leans 12 degrees: at the shallow wall it is 6 mm
  // deep square to the side's face, and it goes through 8 mm.
  const double lean = 12 * std::acos(-1.0) / 180;
  const double slot = 18 * (6 / std::cos(lean) + 9 * std::tan(lean)) * 8;
  CHECK(volume(after) - volume(before) == Approx(slot).epsilon(1e-9));
}

TEST_CASE("Edging of another thickness than the step says is not proven") {
  const test::Built built = test::build(nosed("before the cuts", stopped));
  std::vector<Step> steps;
  for (const Step* step : steps_for(built, "left panel")) steps.push_back(*step);
  const auto row = static_cast<int>(&built.row("left panel") - built.plan.rows.data());
  const Solid wanted = fabrication::wanted_of(built.plan, row);
  for (const double off : {0.0, 0.5}) {
    for (Step& step : steps)
      if (step.tool == Tool::edging) step.exact.width = 8 + off;
    Solid work = fabrication::blank_of(*built.project, built.plan.sample(row));
    REQUIRE(fabrication::cut_part(steps, false, work) == "");
    CHECK((fabrication::compare(work, wanted).deviation < 1e-6) == (off == 0));
  }
}

TEST_CASE("A panel with edging and one without are not alike") {
  const std::string text =
      test::job("mm") + test::board("oak", "20 mm") +
      "[board.one]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 600\nwidth = 200\n"
      "[board.two]\nstock = \"oak\"\nat = [0, 500, 0]\nlength = 600\nwidth = 200\n"
      "[board.lip]\nstock = \"oak\"\nat = [0, -12, 0]\nlength = 600\nwidth = 12\n"
      "[joint.lipping]\nkind = \"glued\"\nhost = \"one\"\nguest = \"lip\"\nmade = \"";
  const test::Built before = test::build(text + "before the cuts\"\n"),
                    after = test::build(text + "in its turn\"\n");
  CHECK(before.row("one").mark != before.row("two").mark);
  CHECK(after.row("one").mark == after.row("two").mark);
  check_proven(before);
}
