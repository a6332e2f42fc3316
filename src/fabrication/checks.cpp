#include "fabrication/checks.h"

#include <cmath>
#include <numbers>

#include "base/figure.h"
#include "fabrication/finish.h"
#include "fabrication/hardware.h"
#include "fabrication/soundness.h"

namespace splay::fabrication {

namespace {

std::string angle_text(double radians) { return degrees_text(Angle{radians}.degrees()); }

void check_any_parts(Plan& plan) {
  if (plan.assembly.parts.empty() && !plan.stopped())
    plan.findings.push_back({Level::stop,
                             "nothing-to-build",
                             {},
                             "The project has nothing to build.",
                             "Add a construct, for instance a [case.NAME] table."});
}

void check_tilts(Plan& plan) {
  const Angle limit = *plan.project->shop.saw.tilt;
  for (const PartRow& row : plan.rows) {
    for (const CutReport& cut : row.cuts) {
      if (cut.bevel <= limit.rad + 1e-9) continue;
      plan.findings.push_back(
          {Level::caution,
           "past-saw-tilt",
           {row.mark},
           row.mark + ", " + cut.name + ": a bevel of " + angle_text(cut.bevel) +
               " is past the saw's " + angle_text(limit.rad) + " with the board flat.",
           "Stand the board on its end against a tall fence and tilt to the complement, " +
               angle_text(std::numbers::pi / 2 - cut.bevel) + "."});
    }
  }
}

}  // namespace

void check_plan(Plan& plan) {
  check_any_parts(plan);
  check_tilts(plan);
  judge_movement(plan);
  judge_shelves(plan);
  judge_balance(plan);
  judge_passage(plan);
  judge_openings(plan);
  judge_play(plan);
  judge_finish(plan);
  judge_hardware(plan);
}

}  // namespace splay::fabrication
