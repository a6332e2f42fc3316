#include "fabrication/settings.h"

#include <algorithm>
#include <cmath>

#include "base/parallel.h"
#include "base/tolerance.h"
#include "fabrication/chains.h"
#include "fabrication/derive.h"
#include "fabrication/proof.h"
#include "fabrication/sides.h"
#include "fabrication/steps_checks.h"

namespace splay::fabrication {

namespace {

double nearest(double value, double step) { return std::round(value / step) * step; }

double reads_to(const model::Shop& shop, Machine machine) {
  switch (machine) {
    case Machine::mitre_saw:
      return shop.mitre_saw.reads_to->rad;
    case Machine::track_saw:
      return shop.track_saw.reads_to->rad;
    default:
      return shop.saw.reads_to->rad;
  }
}

// From the way the work lay before to the way it lies now.
Turned turned_from(const Step& before, const Step& now) {
  if (!same_axis(before.face, now.face)) return Turned::another_side;
  const bool face = before.face == now.face;
  const auto runs = [](const Step& step) {
    return step.guide == Guide::gauge ? step.stopped : step.leads;
  };
  const bool same_kind = same_axis(runs(before), runs(now));
  const bool ends = same_kind ? runs(before) == runs(now) : before.against == now.against;
  if (face) return ends ? Turned::as_before : Turned::end_for_end;
  return ends ? Turned::face_for_face : Turned::over_ends;
}

bool same_setting(double a, double b) { return std::abs(a - b) < 1e-9; }

// Upright a stack makes passes side by side: one that runs out takes any width.
bool same_width(const Step& a, const Step& b) {
  return a.tool == Tool::blade || (a.runs_out && b.runs_out && a.printed.tilt == 0) ||
         same_setting(a.printed.width, b.printed.width);
}

// A wedge stays the same whichever way it is turned on the work.
bool same_gauge(const Step& a, const Step& b) {
  return (a.has(Flag::sloped_jig) && b.has(Flag::sloped_jig)) ||
         same_setting(a.printed.gauge, b.printed.gauge);
}

bool same_tool(const Step& a, const Step& b) {
  return a.machine == b.machine && a.tool == b.tool &&
         same_setting(a.printed.tilt, b.printed.tilt) && same_gauge(a, b) && same_width(a, b);
}

bool same_setting(const Step& a, const Step& b) {
  if (!same_tool(a, b) || a.guide != b.guide || a.guide == Guide::marks) return false;
  if (a.tool == Tool::edging) return false;  // nothing is set
  if (a.tool == Tool::thickness) return a.machine == Machine::planer;
  return a.reference_right == b.reference_right && a.waste_right == b.waste_right &&
         same_setting(a.printed.width, b.printed.width) &&
         same_setting(a.printed.distance, b.printed.distance) &&
         same_setting(a.printed.height, b.printed.height);
}

void give_groups(Plan& plan) {
  int groups = 0;
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    Step& step = plan.steps[i];
    step.group = -1;
    step.same_as = -1;
    for (std::size_t k = 0; k < i && step.same_as < 0; ++k) {
      if (step.group < 0 && same_tool(plan.steps[k], step)) step.group = plan.steps[k].group;
      if (same_setting(plan.steps[k], step)) step.same_as = static_cast<int>(k);
    }
    if (step.group < 0) step.group = groups++;
    if (step.same_as < 0) continue;
    step.flags.push_back(Flag::same_setting);
    Step& first = plan.steps[static_cast<std::size_t>(step.same_as)];
    if (!first.has(Flag::try_first)) first.flags.push_back(Flag::try_first);
  }
}

// Smaller than this a piece is not held by hand at a saw: common practice, no source.
constexpr double small_piece = 300;   // mm along the feed at a fence or across at a gauge
constexpr double narrow_offcut = 12;  // mm

// A piece cut right off lies between the blade and a fence or stop: the off-cut, or what is kept
// and too short to be led by the gauge alone.
bool trapped(const Step& step) {
  const bool offcut = step.reference_right == step.waste_right;
  return offcut || (step.guide == Guide::gauge && step.exact.distance < short_at_stop);
}

Derivation derive_row(const Plan& plan, int row) {
  const int first = plan.rows[static_cast<std::size_t>(row)].members.front();
  if (panel_of(plan.assembly, first) >= 0)
    return derive_strip(*plan.project, plan.sample(row), row);
  Derivation derived =
      derive_steps(*plan.project, plan.sample(row), row, edging_of(plan.assembly, first));
  // What is cut of a strip alone is no operation of the panel.
  const auto own = plan.assembly.parts[static_cast<std::size_t>(first)].operations.size();
  for (Step& step : derived.steps)
    std::erase_if(step.operations, [&](int op) { return static_cast<std::size_t>(op) >= own; });
  return derived;
}

void name_edging(const Plan& plan, Step& step) {
  const int strip = step.glued;
  step.glued = plan.row_of_part[static_cast<std::size_t>(strip)];
  step.remark =
      "Glued on longer than the finished edge, and trimmed flush with both faces when it is dry. "
      "From here on the two are one piece.";
}

void flag_dangers(const Plan& plan, Step& step) {
  const Vec3 size = plan.rows[static_cast<std::size_t>(step.row)].finished;
  const bool saw = step.machine == Machine::table_saw || step.machine == Machine::mitre_saw;
  const bool guided = saw && step.guide != Guide::marks;
  if (guided && size.x < small_piece && size.y < small_piece)
    step.flags.push_back(Flag::small_piece);
  // Rollers and cutters need a length to hold.
  if (step.tool == Tool::thickness && size.x < small_piece) step.flags.push_back(Flag::small_piece);
  if (!guided || step.tool != Tool::blade) return;
  if (step.exact.distance < narrow_offcut) step.flags.push_back(Flag::narrow_offcut);
  if (step.exact.height == 0 && trapped(step)) step.flags.push_back(Flag::stop_behind);
}

}  // namespace

Setting printed_setting(const model::Project& project, const Step& step) {
  const FigureStyle style = project.job.figures();
  const double angle = reads_to(project.shop, step.machine);
  const auto length = [&](double mm) { return style.mm(style.round(mm)); };
  const auto mark = [&](const Mark& m) { return Mark{length(m.along), length(m.across)}; };
  Setting set = step.exact;
  set.tilt = nearest(set.tilt, angle);
  set.gauge = nearest(set.gauge, angle);
  set.distance = length(set.distance);
  // A height that rounds to nothing would say "right through".
  if (set.height > 0) set.height = std::max(length(set.height), style.step_mm());
  set.jig_offset = length(set.jig_offset);
  if (step.tool == Tool::thickness) set.width = length(set.width);
  for (Mark& each : set.marks) each = mark(each);
  for (Line& line : set.lines) line = {mark(line.a), mark(line.b), nearest(line.lean, angle)};
  for (DepthMark& depth : set.depths) depth = {mark(depth.at), length(depth.depth)};
  return set;
}

void finish_steps(Plan& plan) {
  int row = -1, place = 0;
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    Step& step = plan.steps[i];
    const bool first = step.row != row;
    place = first ? 1 : place + 1;
    row = step.row;
    step.id = plan.rows[static_cast<std::size_t>(row)].mark + "." + std::to_string(place);
    step.turned = first ? Turned::first : turned_from(plan.steps[i - 1], step);
    flag_dangers(plan, step);
  }
  give_groups(plan);
}

void plan_steps(Plan& plan) {
  std::vector<Derivation> derivations(plan.rows.size());
  in_parallel(plan.rows.size(),
              [&](std::size_t row) { derivations[row] = derive_row(plan, static_cast<int>(row)); });
  for (Derivation& derived : derivations) {
    for (Step& step : derived.steps) {
      step.printed = printed_setting(*plan.project, step);
      if (step.glued >= 0) name_edging(plan, step);
      plan.steps.push_back(std::move(step));
    }
    check_positions(plan, derived);
  }
  finish_steps(plan);
  prove(plan);
  check_proofs(plan);
  check_fences(plan);
  check_milling(plan);
  report_chains(plan);
}

}  // namespace splay::fabrication
