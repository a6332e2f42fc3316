// What must hold of the steps of any plan.
#pragma once

#include <algorithm>

#include "support/piece.h"

namespace splay::test {

inline std::string unproven(const fabrication::Plan& plan) {
  std::string text;
  for (const fabrication::Step& step : plan.steps)
    if (!step.proven) text += step.id + " " + step.name + ": " + step.unproven_why + "\n";
  return text;
}

// No operation of a part is made twice.
inline void check_each_once(const fabrication::Plan& plan) {
  for (std::size_t row = 0; row < plan.rows.size(); ++row) {
    const parts::Part& part =
        plan.assembly.parts[static_cast<std::size_t>(plan.rows[row].members.front())];
    std::vector<int> made(part.operations.size(), 0);
    for (const fabrication::Step& step : plan.steps)
      if (step.row == static_cast<int>(row))
        for (const int op : step.operations) ++made[static_cast<std::size_t>(op)];
    INFO(part.name);
    CHECK(std::all_of(made.begin(), made.end(), [](int times) { return times <= 1; }));
  }
}

// Depths are measured where the tool goes in: on the wood, and into it.
inline void check_depths(const fabrication::Plan& plan) {
  constexpr double noise = 1e-6;  // mm
  for (const fabrication::Step& step : plan.steps) {
    if (step.exact.depths.size() < 2) continue;
    INFO(step.id << " " << step.name);
    const Vec3 blank = plan.rows[static_cast<std::size_t>(step.row)].blank;
    const double longest = std::max({blank.x, blank.y, blank.z});
    for (const fabrication::DepthMark& depth : step.exact.depths) {
      CHECK(depth.depth > -noise);
      for (const double at : {depth.at.along, depth.at.across}) {
        CHECK(at > -noise);
        CHECK(at < longest + noise);
      }
    }
  }
}

// Every operation of every row's part is made by a step, every step is proven, and the parts so cut
// close every joint.
inline void check_steps(const fabrication::Plan& plan) {
  CHECK(unproven(plan) == "");
  double deviation = 0, gap = 0;
  for (const fabrication::Step& step : plan.steps)
    deviation = std::max(deviation, step.deviation_exact);
  for (const fabrication::JointReport& joint : plan.joints) {
    INFO(joint.name);
    CHECK(joint.gap_cut >= 0);
    gap = std::max(gap, joint.gap_cut);
  }
  CHECK(deviation < 1e-6);
  CHECK(gap < 1e-6);
  check_each_once(plan);
  check_depths(plan);
}

inline std::vector<fabrication::Step> steps_of(const Built& built, const std::string& part) {
  const fabrication::PartRow& row = built.row(part);
  std::vector<fabrication::Step> steps;
  for (const fabrication::Step& step : built.plan.steps)
    if (&built.plan.rows[static_cast<std::size_t>(step.row)] == &row) steps.push_back(step);
  return steps;
}

inline fabrication::Step step_for(const Built& built, const std::string& part,
                                  const std::string& name) {
  for (const fabrication::Step& step : steps_of(built, part))
    if (step.name == name) return step;
  FAIL(part << " has no step named " << name);
  return {};
}

}  // namespace splay::test
