#include "fabrication/glue_up.h"
#include "base/index.h"
#include "fabrication/glue_undone.h"

#include <algorithm>
#include <cmath>

#include "base/figure.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

std::vector<Pinned> pinned_order(Plan& plan) {
  const auto& order = plan.project->glue_up.order;
  std::vector<Pinned> pinned;
  for (const std::string& name : *order) {
    std::vector<int> parts = parts_meant(plan, name);
    if (parts.empty()) {
      plan.findings.push_back(
          {Level::caution,
           "order-unknown",
           {name},
           "[glue_up] order names \"" + name + "\", and the piece has nothing of that name.",
           "Names of parts as in the cut list, or of an item for all its parts. The pages follow "
           "the computed order.",
           order.span});
      return {};
    }
    pinned.push_back({name, std::move(parts)});
  }
  return pinned;
}

// What comes next in the author's order without touching what is there.
void judge_loose(Plan& plan, const std::vector<Pinned>& pinned) {
  std::vector<int> there;
  for (const Pinned& next : pinned) {
    const bool tied =
        there.empty() || std::ranges::any_of(plan.assembly.joints, [&](const parts::Joint& joint) {
          const auto among = [&](const std::vector<int>& parts) {
            return std::ranges::any_of(joint.between, [&](int part) {
              return std::ranges::find(parts, part) != parts.end();
            });
          };
          return among(there) && among(next.parts);
        });
    if (!tied)
      plan.findings.push_back(
          {Level::caution,
           "order-loose",
           {next.name},
           "In the order asked for " + next.name +
               " comes before anything it has a joint with: nothing holds it there.",
           "Put a part that it is joined to before it.",
           plan.project->glue_up.order.span});
    there.insert(there.end(), next.parts.begin(), next.parts.end());
  }
}

std::string minutes_text(double minutes) { return plain_number(minutes, 1) + " min"; }

// Glues that would leave the time, by the published times.
std::string slower_glues(const Plan& plan, const GlueStage& stage) {
  std::string names;
  for (int k = 0; k <= static_cast<int>(model::GlueKind::urea_formaldehyde); ++k) {
    model::GlueUp other;
    other.glue.value = static_cast<model::GlueKind>(k);
    other.temperature.value = *plan.project->glue_up.temperature;
    const model::GlueTimes times = other.times();
    if (stage.spreading > times.open || stage.minutes > times.open + times.closed) continue;
    names += (names.empty() ? "" : ", ") + std::string(model::word(*other.glue));
  }
  return names;
}

std::vector<std::string> joint_names(const Plan& plan, const std::vector<int>& joints) {
  std::vector<std::string> names;
  names.reserve(joints.size());
  for (const int joint : joints) names.push_back(plan.assembly.joints[index(joint)].name);
  return names;
}

void judge_time(Plan& plan, const GlueStage& stage, std::size_t number) {
  const model::GlueTimes& times = plan.glue_up.times;
  if (!stage.glued || (stage.spreading <= times.open && stage.minutes <= times.open + times.closed))
    return;
  const std::string slower = slower_glues(plan, stage);
  plan.findings.push_back(
      {Level::caution, "glue-too-fast", joint_names(plan, stage.joints),
       "Glue-up stage " + std::to_string(number) + " can't be divided, and takes " +
           minutes_text(stage.spreading) + " to spread and " + minutes_text(stage.minutes) +
           " to the last clamp; the glue gives " + minutes_text(times.open) + " and " +
           minutes_text(times.open + times.closed) + ".",
       (slower.empty() ? std::string("Work with a helper and spread together.")
                       : "A slower glue (" + slower + "), a helper, or a cooler room.") +
           " Practise it dry with a watch."});
}

void judge_clamps(Plan& plan, const GlueStage& stage, std::size_t number) {
  for (const Clamping& row : stage.clampings) {
    if (row.enough) continue;
    const FigureStyle figures = plan.project->job.figures();
    const model::Clamp* owned = plan.project->glue_up.clamps.find(row.clamp);
    plan.findings.push_back(
        {Level::caution, "too-few-clamps", joint_names(plan, row.joints),
         "Glue-up stage " + std::to_string(number) + " wants " + std::to_string(row.count) +
             " clamps that reach " + figures.with_unit(row.reach) +
             (owned == nullptr ? "; none in the list does."
                               : "; of \"" + row.clamp + "\" there are " +
                                     std::to_string(*owned->count) + " in all."),
         "Borrow the missing ones, press with stiff cauls that spread fewer clamps, or give the "
         "glue-up another `order`."});
  }
}

void judge_cold(Plan& plan) {
  const model::GlueUp& asked = plan.project->glue_up;
  const double coldest = plan.glue_up.times.coldest;
  if (*asked.temperature >= coldest) return;
  plan.findings.push_back(
      {Level::caution,
       "too-cold-for-glue",
       {},
       "At " + plain_number(*asked.temperature, 1) + " °C " +
           std::string(model::word(*asked.glue)) + " glue dries to chalk: it wants " +
           plain_number(coldest, 0) + " °C or more.",
       "Warm glue, wood and room; the data sheet of the glue in hand comes before this figure.",
       asked.temperature.span});
}

// Edging is glued to its panel first. Then what is glued is made up before anything is fitted to
// it, drawers and doors come after that, and what comes apart again is joined last; within that the
// author's order holds, and before it where both don't go together.
void find_order(Plan& plan, const std::vector<Pinned>& pinned) {
  GlueUpPlan& glue_up = plan.glue_up;
  const std::vector<int> unedged = all_but_edging(plan.assembly, pinned);
  const auto found = [&](const std::vector<std::vector<int>>& left_out) {
    std::optional<AssemblyOrder> order = order_in_pieces(plan.assembly, left_out, pinned);
    if (order) glue_up.order = std::move(*order);
    return order.has_value();
  };
  const auto take = [&](const std::vector<std::vector<int>>& left_out) {
    std::vector<std::vector<int>> edged{unedged};
    edged.insert(edged.end(), left_out.begin(), left_out.end());
    return (!unedged.empty() && found(edged)) || (!left_out.empty() && found(left_out));
  };
  const std::vector<int> later = fitted_or_undone(plan);
  if (!later.empty() &&
      (take({later, moving_or_undone(plan), glue_up.undone}) || take({later, glue_up.undone})))
    return;
  if (!glue_up.undone.empty()) {
    if (take({glue_up.undone})) return;
    plan.findings.push_back(
        {Level::caution, "undone-closed", joint_names(plan, glue_up.undone),
         "With the joints left that come apart again, what the others hold together can't be made "
         "up by itself and brought together along straight lines.",
         "Let other joints come apart, or more of them. The pages follow the order of a piece that "
         "is put together once.",
         plan.project->glue_up.undone.span});
  }
  if (!take({})) glue_up.order = order_of_assembly(plan.assembly, pinned);
}

}  // namespace

std::vector<int> parts_meant(const Plan& plan, const std::string& name) {
  std::vector<int> found;
  for (std::size_t p = 0; p < plan.assembly.parts.size(); ++p) {
    const parts::Part& part = plan.assembly.parts[p];
    if (part.name == name) return {static_cast<int>(p)};
    const auto item = static_cast<std::size_t>(part.item);
    if (item < plan.project->items.size() && plan.project->items[item]->name == name)
      found.push_back(static_cast<int>(p));
  }
  return found;
}

void plan_glue_up(Plan& plan) {
  judge_undone(plan);
  const std::vector<Pinned> pinned = pinned_order(plan);
  judge_loose(plan, pinned);
  GlueUpPlan& glue_up = plan.glue_up;
  glue_up.undone = undone_joints(plan);
  find_order(plan, pinned);
  bring_the_lighter(plan.assembly, glue_up.order);
  for (Finding finding : glue_up.order.findings) {
    if (finding.code == "order-closed") finding.span = plan.project->glue_up.order.span;
    plan.findings.push_back(std::move(finding));
  }
  glue_up.times = plan.project->glue_up.times();
  const std::vector<JointWork> work = work_of_joints(plan, glue_up.order);
  glue_up.stages = stages_of(plan, glue_up.order, work);
  find_wet_checks(plan, work, glue_up.stages);
  find_out_of_reach(plan, glue_up.stages);
  for (std::size_t s = 0; s < glue_up.stages.size(); ++s) {
    judge_time(plan, glue_up.stages[s], s + 1);
    judge_clamps(plan, glue_up.stages[s], s + 1);
  }
  if (std::ranges::any_of(glue_up.stages, &GlueStage::glued)) judge_cold(plan);
}

}  // namespace splay::fabrication
