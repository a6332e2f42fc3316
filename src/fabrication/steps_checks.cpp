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

void check_fences(Plan& plan) {
  const FigureStyle style = plan.project->job.figures();
  std::vector<std::string> at_blade;
  for (const Step& step : plan.steps) {
    const std::string& mark = plan.rows[static_cast<std::size_t>(step.row)].mark;
    if (step.position() == Position::on_end && step.guide == Guide::fence &&
        step.has(Flag::sacrificial) && (at_blade.empty() || at_blade.back() != mark))
      at_blade.push_back(mark);
    if (!too_near_fence(step)) continue;
    plan.findings.push_back(
        {Level::caution,
         "fence-too-near",
         {mark},
         mark + ", " + step.name + ": the fence would stand " +
             style.with_unit(step.exact.distance) + " from the line of cut; less than " +
             style.with_unit(least_at_fence) + " can't be pushed through beside a blade.",
         "Cut it off a wider piece with the strip on the far side of the blade, fix it to a "
         "carrier board that runs along the fence, or plane it to the line by hand."});
  }
  if (at_blade.empty()) return;
  std::string marks;
  for (const std::string& mark : at_blade) marks += (marks.empty() ? "" : ", ") + mark;
  plan.findings.push_back(
      {Level::note, "fence-at-blade", at_blade,
       marks + ": stood on the end, the line of cut is at the fence itself.",
       "Clamp a waste board to the tall fence and let the blade cut into it, or leave the work "
       "proud of the line and plane the last of it by hand."});
}

void check_milling(Plan& plan) {
  const FigureStyle style = plan.project->job.figures();
  const model::Shop& shop = plan.project->shop;
  const auto say = [&](const PartRow& row, const char* code, const std::string& what, double widest,
                       const std::string& way) {
    if (row.blank.y <= widest + 1e-6) return;
    plan.findings.push_back({Level::caution,
                             code,
                             {row.mark},
                             row.mark + ": its blank is " + style.with_unit(row.blank.y) +
                                 " wide; the " + what + " takes " + style.with_unit(widest) + ".",
                             way});
  };
  for (const Step& step : plan.steps) {
    if (step.machine != Machine::planer) continue;
    const PartRow& row = plan.rows[static_cast<std::size_t>(step.row)];
    say(row, "too-wide-to-plane", "planer", shop.planer.widest->mm,
        "Rip it, plane the halves and glue them; plane it by hand to a gauged line; or have it "
        "sanded to thickness on a wide machine.");
    say(row, "too-wide-to-joint", "jointer", shop.jointer.widest->mm,
        "Flatten its first face by hand with winding sticks, or carry it through the planer on a "
        "flat board with wedges under the hollows; or rip it, joint the halves and glue them.");
  }
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
