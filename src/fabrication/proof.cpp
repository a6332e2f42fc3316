#include "fabrication/proof.h"

#include <algorithm>
#include <cmath>

#include "fabrication/derive.h"
#include "fabrication/hands.h"
#include "fabrication/simulate.h"
#include "parts/audit.h"

namespace splay::fabrication {

namespace {

// How far a point is outside of a solid, at least.
double outside(const Solid& solid, Vec3 p) {
  double nearest = 1e300;
  for (const Cell& cell : solid.cells()) {
    double out = 0;
    for (const CellFace& face : cell.faces) {
      const Plane& plane = solid.planes()[static_cast<std::size_t>(face.plane)];
      out = std::max(out, plane.distance(p) * face.side);
      if (out >= nearest) break;
    }
    nearest = std::min(nearest, out);
    if (nearest <= 0) break;
  }
  return nearest;
}

void add_surplus(const Solid& more, const Solid& less, Comparison& result) {
  Solid rest = more;
  rest.subtract(less);
  if (rest.empty()) return;
  result.volume += rest.volume();
  for (const Vec3& p : rest.vertices())
    result.deviation = std::max(result.deviation, outside(less, p));
}

// How far the corners of either are off the other: what rounded settings make of a part, where a
// volume says little.
double corner_deviation(const Solid& a, const Solid& b) {
  double most = 0;
  for (const Vec3& p : a.vertices()) most = std::max(most, outside(b, p));
  for (const Vec3& p : b.vertices()) most = std::max(most, outside(a, p));
  return most;
}

double box_area(Vec3 size) { return size.x * size.y + size.y * size.z + size.z * size.x; }

struct CutParts {
  std::vector<Solid> exact, printed;  // by row
  std::vector<bool> sound;            // all its steps could be carried out
};

std::span<Step> steps_of(Plan& plan, int row) {
  const auto first = std::find_if(plan.steps.begin(), plan.steps.end(),
                                  [&](const Step& step) { return step.row == row; });
  const auto last =
      std::find_if(first, plan.steps.end(), [&](const Step& step) { return step.row != row; });
  return {first, last};
}

void prove_row(Plan& plan, int row, CutParts& cut) {
  const PartRow& about = plan.rows[static_cast<std::size_t>(row)];
  const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(about.members.front())];
  const std::span<Step> steps = steps_of(plan, row);
  Solid exact = blank_of(*plan.project, part), printed = exact;
  std::string why = cut_part(steps, false, exact);
  for (const Step& step : steps)
    if (why.empty() && !step.unproven_why.empty()) why = step.name + ": " + step.unproven_why;
  const bool carried_out = why.empty();
  const bool printed_out = cut_part(steps, true, printed).empty();
  Comparison plain;
  if (carried_out) plain = compare(exact, part.body);
  if (carried_out && !plain.equal(box_area(part.size)))
    why = "Cut so, the part is off by " + plain_number(plain.deviation, 6) + " mm.";
  const double rounded = printed_out ? corner_deviation(printed, part.body) : 0;
  for (Step& step : steps) {
    step.proven = why.empty();
    step.unproven_why = why;
    step.deviation_exact = plain.deviation;
    step.deviation_printed = rounded;
    step.volume_difference = plain.volume;
  }
  cut.sound[static_cast<std::size_t>(row)] = carried_out && printed_out;
  cut.exact[static_cast<std::size_t>(row)] = std::move(exact);
  cut.printed[static_cast<std::size_t>(row)] = std::move(printed);
}

// The parts as cut, where the designed ones stood.
void put_together(const Plan& plan, const CutParts& cut, parts::Assembly& exact,
                  parts::Assembly& printed) {
  for (std::size_t i = 0; i < plan.assembly.parts.size(); ++i) {
    const parts::Part& part = plan.assembly.parts[i];
    const auto row = static_cast<std::size_t>(plan.row_of_part[i]);
    const parts::Part& first =
        plan.assembly.parts[static_cast<std::size_t>(plan.rows[row].members.front())];
    const std::optional<Rigid> turn =
        &first == &part ? std::optional(Rigid{}) : turn_onto(first, part);
    const Rigid place = part.place * turn.value_or(Rigid{});
    for (const bool rounded : {false, true}) {
      parts::Part made;
      made.world = (rounded ? cut.printed : cut.exact)[row].transformed(place);
      (rounded ? printed : exact).parts.push_back(std::move(made));
    }
  }
}

void measure_joints(Plan& plan, const CutParts& cut) {
  parts::Assembly exact, printed;
  put_together(plan, cut, exact, printed);
  for (std::size_t i = 0; i < plan.joints.size(); ++i) {
    const parts::Joint& joint = plan.assembly.joints[i];
    const bool sound = std::all_of(joint.between.begin(), joint.between.end(), [&](int part) {
      return cut.sound[static_cast<std::size_t>(plan.row_of_part[static_cast<std::size_t>(part)])];
    });
    if (!sound) continue;
    plan.joints[i].gap_cut = parts::joint_gap(joint, exact);
    plan.joints[i].gap_printed = parts::joint_gap(joint, printed);
  }
}

}  // namespace

Comparison compare(const Solid& made, const Solid& wanted) {
  Comparison result;
  add_surplus(made, wanted, result);
  add_surplus(wanted, made, result);
  return result;
}

std::string cut_part(std::span<const Step> steps, bool printed, Solid& work) {
  for (const Step& step : steps) {
    const std::string why = carry_out(step, printed ? step.printed : step.exact, work);
    if (!why.empty()) return step.name + ": " + why + ".";
  }
  work = work.transformed({{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, -work.bounds().low});
  return "";
}

void prove(Plan& plan) {
  CutParts cut;
  cut.exact.resize(plan.rows.size());
  cut.printed.resize(plan.rows.size());
  cut.sound.assign(plan.rows.size(), false);
  for (std::size_t row = 0; row < plan.rows.size(); ++row)
    prove_row(plan, static_cast<int>(row), cut);
  measure_joints(plan, cut);
}

}  // namespace splay::fabrication
