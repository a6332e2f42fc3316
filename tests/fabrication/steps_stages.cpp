// Joints that no tool makes in one go: what machines take of them, and what is left for the hand.
#include <array>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "fabrication/proof.h"
#include "fabrication/simulate.h"
#include "fabrication/steps_check.h"
#include "support/demos.h"

using namespace splay;
using namespace splay::fabrication;
using test::check_steps;
using test::degrees;

namespace {

// Aprons between legs that lean two ways, their faces plumb: compound shoulders.
test::Built splayed(const std::string& more = "") {
  return test::build(test::job("mm") + more + test::board("leg", "60") + test::board("oak", "20") +
                     "[table.t]\nheight = 420\nwidth = 600\ndepth = 450\nsplay = [\"8 deg\", \"6 "
                     "deg\"]\n[table.t.leg]\nstock = \"leg\"\nwidth = 44\ndepth = 44\nfoot_width = "
                     "30\ntaper = \"inside\"\n[table.t.apron]\nstock = \"oak\"\nwidth = 70\nface = "
                     "\"plumb\"\n");
}

bool ends(const std::string& name, const std::string& how) { return name.ends_with(how); }

// How much wood a step takes: the volume before less that after, from the simulator's own run.
double taken_by(const Plan& plan, const Step& wanted) {
  const PartRow& row = plan.rows[static_cast<std::size_t>(wanted.row)];
  Solid work =
      blank_of(*plan.project, plan.assembly.parts[static_cast<std::size_t>(row.members.front())]);
  for (const Step& step : plan.steps) {
    if (step.row != wanted.row) continue;
    const double before = work.volume();
    CHECK(carry_out(step, step.exact, work) == "");
    if (step.id == wanted.id) return before - work.volume();
  }
  return 0;
}

}  // namespace

// The blade's surface from its settings by plain trigonometry: with the board flat it leans by the
// tilt off square to the face, and by the gauge off square to the edge. It must be the shoulder's.
TEST_CASE("a compound shoulder is sawn by gauge, tilt and stop before it is cleared") {
  const test::Built built = splayed();
  REQUIRE(built.stops() == "");
  check_steps(built.plan);
  int lines = 0;
  double sawn = 0, pared = 0;
  for (const Step& step : built.plan.steps) {
    if (step.name.find("shoulder") == std::string::npos) continue;
    if (ends(step.name, ", pared")) pared += taken_by(built.plan, step);
    if (step.machine != Machine::hand) sawn += taken_by(built.plan, step);
    if (!ends(step.name, ", the line")) continue;
    ++lines;
    CHECK(step.machine == Machine::table_saw);
    CHECK(step.guide == Guide::gauge);
    CHECK(step.exact.tilt > 1e-4);
    CHECK_FALSE(step.cuts_through);
    if (step.position() != Position::flat) continue;
    const parts::Part& part = built.plan.assembly.parts[static_cast<std::size_t>(
        built.plan.rows[static_cast<std::size_t>(step.row)].members.front())];
    bool found = false;
    for (const parts::Operation& op : part.operations) {
      if (op.kind != parts::OperationKind::shoulder) continue;
      found = found || (std::abs(std::asin(std::abs(op.cut.n.z)) - step.exact.tilt) < 1e-9 &&
                        std::abs(std::atan(std::abs(op.cut.n.y / op.cut.n.x)) -
                                 std::abs(step.exact.gauge)) < 1e-9);
    }
    CHECK(found);
  }
  CHECK(lines > 0);
  // Left for the chisel are slivers in undercut corners: a hundredth of the waste.
  CHECK(pared < sawn / 100);
}

// A mortise whose cheeks lean the same way is routed on a wedge of that angle; a shop whose router
// doesn't go so deep bores it with the drill's table tilted.
TEST_CASE(
    "leaning mortises are made by machine, upright where the shop has no wedge steep enough") {
  for (const char* shop : {"", "[shop.router]\ndeepest = \"5 mm\"\n"}) {
    const test::Built built = splayed(shop);
    REQUIRE(built.stops() == "");
    check_steps(built.plan);
    double machine = 0, hand = 0;
    for (const Step& step : built.plan.steps) {
      if (step.name.find("mortise") == std::string::npos) continue;
      (step.machine == Machine::hand ? hand : machine) += taken_by(built.plan, step);
      if (!step.has(Flag::sloped_jig)) continue;
      CHECK(step.machine == (*shop == 0 ? Machine::router : Machine::drill));
      CHECK(step.exact.tilt > 1e-4);
      CHECK(degrees(step.exact.tilt) < 45);
    }
    INFO(machine << " by machine, " << hand << " by hand");
    CHECK(machine > hand);
  }
}

// What remains by hand alone in the demos is counted, so that it doesn't grow unseen: of all steps
// that shape joints fewer than one in six is wholly a hand's.
TEST_CASE("hand tools are the last way in the demos") {
  int all = 0, hand = 0;
  for (const std::filesystem::path& file : test::demos()) {
    const test::Built built = test::build(test::text_of(file));
    for (const Step& step : built.plan.steps) {
      if (step.operations.empty()) continue;
      ++all;
      hand += step.machine == Machine::hand && !ends(step.name, ", pared");
    }
  }
  CHECK(all > 200);
  CHECK(hand < all / 6);
}

// A slot square to a mitre of 45 degrees is cut with the board flat and the blade tilted 45
// degrees, as the mitre was (common practice, no source): in one pass where the kerf or a stack is
// as wide as the spline, else pass by pass. The bookcase's splines are a quarter inch thick.
TEST_CASE("slots for splines in mitres are sawn at the mitre's own tilt") {
  const std::string demo =
      test::text_of(std::string(SPLAYBOOK_SOURCE_DIR) + "/projects/plain-bookcase.toml");
  struct Shop {
    std::string saw;
    std::size_t passes;
    Tool tool;
  };
  for (const Shop& shop : {Shop{"kerf = 3.2\n", 2, Tool::blade},
                           Shop{"kerf = 3.2\nwidest_stack = 20\n", 1, Tool::stack},
                           Shop{"kerf = \"1/4 in\"\n", 1, Tool::blade}}) {
    std::string text = demo;
    const std::string kerf = "kerf = 3.2\n";
    text.replace(text.find(kerf), kerf.size(), shop.saw);
    const test::Built built = test::build(text);
    REQUIRE(built.stops() == "");
    check_steps(built.plan);
    std::size_t passes = 0, finished = 0;
    for (const Step& step : built.plan.steps) {
      if (!step.name.starts_with("slot for the spline")) continue;
      INFO(step.id << " " << step.name);
      CHECK(step.machine == Machine::table_saw);
      CHECK(step.tool == shop.tool);
      CHECK(step.position() == Position::flat);
      CHECK(degrees(step.exact.tilt) == Approx(45));
      CHECK_FALSE(step.cuts_through);
      ++passes;
      finished += step.operations.size();
    }
    // The front has a slot at either end; both ends of the plinth are one row, with one slot.
    CHECK(finished == 3);
    CHECK(passes == 3 * shop.passes);
  }
}

// The fewest changes of setting: what a part's shoulders need of one tilt and gauge comes in one
// run, first their lines and then their waste.
TEST_CASE("shoulders that one setting serves are cut after each other") {
  const test::Built built = splayed();
  for (const char* stage : {", the line", ", the waste"})
    for (std::size_t row = 0; row < built.plan.rows.size(); ++row) {
      std::vector<std::array<double, 3>> runs;
      for (const Step& step : built.plan.steps) {
        if (step.row != static_cast<int>(row) || !ends(step.name, stage)) continue;
        if (step.name.find("shoulder") == std::string::npos) continue;
        const std::array<double, 3> set = {static_cast<double>(step.tool), step.printed.tilt,
                                           step.printed.gauge};
        if (runs.empty() || runs.back() != set) runs.push_back(set);
      }
      INFO(built.plan.rows[row].mark << stage);
      const std::set<std::array<double, 3>> settings(runs.begin(), runs.end());
      CHECK(runs.size() == settings.size());
    }
}

// Butt hinges are let in from the door's edge, as deep as the leaf is thick, not routed as a slit
// from its face (common practice, no source).
TEST_CASE("a hinge's recess is let in from the edge by the thickness of its leaf") {
  for (const std::string hung : {"left", "right"}) {
    const test::Built built = test::build(
        test::job("mm") + test::sheet("panel", "18 mm") + test::board("oak", "20 mm") +
        "[case.c]\noutline = { bottom = 500, height = 700 }\ndepth = 300\nstock = \"panel\"\n"
        "[door.d]\nof = \"c\"\nslab = { stock = \"oak\" }\nhung = \"" +
        hung + "\"\ngap = { all = 2 }\nhinges = { kind = \"butt\", let_in = 1.8 }\n");
    INFO(built.stops());
    check_steps(built.plan);
    int recesses = 0;
    for (const Step& step : built.plan.steps) {
      if (step.name.find("recess for hinge") == std::string::npos) continue;
      ++recesses;
      REQUIRE(step.exact.depths.size() == 1);
      CHECK(step.exact.depths.front().depth == Approx(1.8));
    }
    CHECK(recesses == 4);  // in the door's edge and on the side of the case
  }
}
