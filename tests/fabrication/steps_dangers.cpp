// What to mind at the machines, and the ways round what they can't do.
#include "fabrication/settings.h"
#include "fabrication/steps_check.h"

using namespace splay;
using namespace splay::fabrication;
using test::check_steps;

namespace {

std::string piece(const std::string& length, const std::string& width, const std::string& more = "",
                  const std::string& shop = "", const std::string& thick = "20") {
  return test::job("mm") + shop + test::board("oak", thick) +
         "[board.b]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = " + length + "\nwidth = " + width +
         "\n" + more;
}

bool any(const Plan& plan, Flag flag) {
  return std::any_of(plan.steps.begin(), plan.steps.end(),
                     [&](const Step& step) { return step.has(flag); });
}

// A rip with the fence to the right, 100 mm from the line, as flags see it.
Step rip() {
  Step step;
  step.machine = Machine::table_saw;
  step.guide = Guide::fence;
  step.reference_right = true;
  step.exact.distance = 100;
  step.exact.width = 3;
  return step;
}

std::vector<Flag> flags_of(Step step) {
  const test::Built built = test::build(piece("600", "80"));
  Plan plan = built.plan;
  step.printed = step.exact;
  step.flags.clear();
  plan.steps = {step};
  finish_steps(plan);
  return plan.steps.front().flags;
}

bool has(const std::vector<Flag>& flags, Flag flag) {
  return std::find(flags.begin(), flags.end(), flag) != flags.end();
}

}  // namespace

// Common practice, no source: an off-cut between fence and blade is thrown back; a short piece
// between a stop that stays and the blade jams; a strip under half an inch is pushed with a stick.
TEST_CASE("wood that is trapped, narrow or short is flagged") {
  Step step = rip();
  CHECK_FALSE(has(flags_of(step), Flag::stop_behind));
  CHECK_FALSE(has(flags_of(step), Flag::narrow_offcut));
  step.waste_right = true;  // the off-cut is on the fence's side
  CHECK(has(flags_of(step), Flag::stop_behind));
  step.exact.height = 10;  // a trench frees nothing
  CHECK_FALSE(has(flags_of(step), Flag::stop_behind));
  step = rip();
  step.guide = Guide::gauge;
  CHECK_FALSE(has(flags_of(step), Flag::narrow_offcut));
  step.exact.distance = 8;
  CHECK(has(flags_of(step), Flag::narrow_offcut));
  CHECK(has(flags_of(step), Flag::stop_behind));
  step.machine = Machine::mitre_saw;
  CHECK(has(flags_of(step), Flag::narrow_offcut));
}

TEST_CASE("a short piece cut at a stop is named in a whole plan") {
  CHECK(any(test::build(piece("60", "40")).plan, Flag::stop_behind));
  CHECK_FALSE(any(test::build(piece("600", "80")).plan, Flag::stop_behind));
}

// A board whose wide bevel leaves 3 mm at its foot: standing on that edge against the fence nothing
// would hold it, so it stands on the other, where the strip is wider by its width times the tangent
// (plain trigonometry: 4 + 50 tan 6).
TEST_CASE("a strip too narrow beside the fence is cut the other way up") {
  const test::Built built = test::build(piece("400", "3", "", "[shop.saw]\ntilts = \"left\"\n"));
  REQUIRE(built.stops() == "");
  check_steps(built.plan);
  // A strip of 3 mm has no other way up: it is cut off at the blade, with a way round, or not
  // there.
  bool near = false;
  for (const Step& step : built.plan.steps)
    near = near || (step.guide == Guide::fence && step.tool == Tool::blade &&
                    step.machine == Machine::table_saw && step.exact.distance < 6);
  CHECK(built.found("fence-too-near") == near);
  const test::Built wide = test::build(piece("400", "30"));
  CHECK_FALSE(wide.found("fence-too-near"));
}

TEST_CASE("no fence stands beyond the line of cut") {
  for (const char* bevel : {"57 deg", "70 deg"}) {
    const test::Built built =
        test::build(piece("500", "90",
                          std::string("[board.b.cut.head]\ncut = \"angles\"\nbevel = \"") + bevel +
                              "\"\nalong = 460\n",
                          "[shop.saw]\ngauge = \"50 deg\"\n"));
    REQUIRE(built.stops() == "");
    check_steps(built.plan);
    for (const Step& step : built.plan.steps)
      if (step.guide == Guide::fence) CHECK(step.exact.distance > -1e-6);
  }
}

// Sides that lean 15 degrees have corners of 75: the mitre of 52.5 stands on its end with its long
// point at the fence.
TEST_CASE("work that stands with the line of cut at the fence gets a way round") {
  const auto made = [](const char* lean) {
    return test::build(test::job() + test::sheet("panel", "0.713") +
                       "[case.body]\noutline = { bottom = 30, height = 20, lean_in = [\"" + lean +
                       "\", \"" + lean +
                       "\"] }\ndepth = 12\nstock = \"panel\"\ncorners = \"mitre\"\n");
  };
  const test::Built leaning = made("15 deg"), upright = made("0 deg");
  check_steps(leaning.plan);
  CHECK(leaning.found("fence-at-blade"));
  CHECK_FALSE(upright.found("fence-at-blade"));
}

TEST_CASE("blanks too wide for planer and jointer get a way round") {
  const std::string shop = "[shop.planer]\nwidest = 300\n[shop.jointer]\nwidest = 150\n";
  const std::string thin = "finished_thickness = 18\n";
  const auto made = [&](const char* width) {
    return test::build(
        test::job("mm") + shop + test::board("oak", "25") +
        "[board.b]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 700\nthickness = 20\nwidth = " +
        width + "\n");
  };
  const test::Built narrow = made("120"), middle = made("200"), wide = made("320");
  CHECK_FALSE(narrow.found("too-wide-to-joint"));
  CHECK_FALSE(narrow.found("too-wide-to-plane"));
  CHECK(middle.found("too-wide-to-joint"));
  CHECK_FALSE(middle.found("too-wide-to-plane"));
  CHECK(wide.found("too-wide-to-plane"));
  for (const test::Built* each : {&narrow, &middle, &wide}) check_steps(each->plan);
}
