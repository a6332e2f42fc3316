#include "fabrication/checks.h"

#include "fabrication/finish.h"
#include "fabrication/hardware.h"
#include "fabrication/soundness.h"

namespace splay::fabrication {

namespace {

void check_any_parts(Plan& plan) {
  if (plan.assembly.parts.empty() && !plan.stopped())
    plan.findings.push_back({Level::stop,
                             "nothing-to-build",
                             {},
                             "The project has nothing to build.",
                             "Add a construct, for instance a [case.NAME] table."});
}

}  // namespace

void check_plan(Plan& plan) {
  check_any_parts(plan);
  judge_movement(plan);
  judge_panels(plan);
  judge_slots(plan);
  judge_balance(plan);
  judge_passage(plan);
  judge_shelves(plan);
  judge_openings(plan);
  judge_play(plan);
  judge_finish(plan);
  judge_hardware(plan);
}

}  // namespace splay::fabrication
