#include "fabrication/steps_checks.h"

#include <cmath>

namespace splay::fabrication {

namespace {

std::string why_none(const Plan& plan, const PartRow& row) {
  const model::Saw& saw = plan.project->shop.saw;
  const FigureStyle style = plan.project->job.figures();
  if (row.finished.x > saw.longest_on_end->mm)
    return "flat it is past the saw's tilt or its gauge, and " + style.with_unit(row.finished.x) +
           " is longer than the " + style.with_unit(saw.longest_on_end->mm) +
           " that can stand on end";
  if (row.finished.y > saw.widest_on_end->mm)
    return "flat it is past the saw's tilt or its gauge, and " + style.with_unit(row.finished.y) +
           " is wider than the " + style.with_unit(saw.widest_on_end->mm) +
           " that can stand on end";
  return "its angles or its size are past what the saw's tilt, gauge and height allow, or no flat "
         "side is left to lie on";
}

}  // namespace

void check_positions(Plan& plan, const Derivation& derived) {
  if (*plan.project->shop.saw.beyond == model::Beyond::hand) return;
  const PartRow& row = plan.rows[static_cast<std::size_t>(derived.row)];
  for (const std::string& name : derived.without)
    plan.findings.push_back(
        {Level::caution,
         "no-saw-position",
         {row.mark},
         row.mark + ", " + name + ": no position on the saw makes this cut: " +
             why_none(plan, row) + ". It is planned by hand, to lines on the wood.",
         "Or give a [shop.track_saw] that reaches it, make the part of two lengths with "
         "saw.beyond = \"split\", or accept the hand with saw.beyond = \"hand\"."});
}

void check_proofs(Plan& plan) {
  int told = -1;
  for (const Step& step : plan.steps) {
    if (step.proven || step.row == told) continue;
    told = step.row;
    const std::string& mark = plan.rows[static_cast<std::size_t>(step.row)].mark;
    plan.findings.push_back(
        {Level::stop,
         "unproven-steps",
         {mark},
         mark + ": its steps could not be proven by cutting it: " + step.unproven_why,
         "Simplify the cut named, or choose other machines in [shop]."});
  }
}

}  // namespace splay::fabrication
