#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "base/figure.h"
#include "fabrication/plan.h"
#include "fabrication/sound_shared.h"
#include "fabrication/soundness.h"
#include "model/movement.h"

namespace splay::fabrication {

namespace {

// Wood held over less than this width is in furniture all the time: a frame's corner, a clamp's
// end. Common practice, no source.
constexpr double stands_width = 130;
// And it takes up less movement than this by bending and crushing. Common practice, no source.
constexpr double stands_change = 1.0;

// Ways of joining that leave no play. Housings, rabbets, grooves and butts may be left dry or glued
// at one place.
constexpr std::array<std::string_view, 9> rigid{"glued",       "screw",  "mitre",
                                                "spline",      "dowel",  "mortise and tenon",
                                                "loose tenon", "bridle", "half lap"};

double coefficient(const Plan& plan, const parts::Part& part) {
  const model::Stock* stock = plan.project->stocks.find(part.stock);
  if (stock == nullptr || *stock->kind != model::StockKind::board) return 0;
  return stock->timber.across_coefficient();
}

// The other part moves along with this one when both are of solid wood and their widths run the
// same way.
bool moves_along(const Plan& plan, const parts::Part& part, const parts::Part& other) {
  const double same =
      std::abs(dot(part.place.direction({0, 1, 0}), other.place.direction({0, 1, 0})));
  return coefficient(plan, other) > 0 && same > std::cos(0.35);
}

// How far the screws of a joint reach across a part: all that holds where no glue does.
std::optional<Interval> screwed_reach(const parts::Assembly& all, const parts::Joint& joint,
                                      const parts::Part& part) {
  Interval reach{1e300, -1e300};
  for (const parts::Fitting& screw : all.fittings) {
    if (screw.joint != joint.name) continue;
    const double at = part.place.local_point(screw.at).y;
    reach = {std::min(reach.from, at - screw.diameter / 2),
             std::max(reach.to, at + screw.diameter / 2)};
  }
  if (reach.from > reach.to) return std::nullopt;
  return reach;
}

void find_holder(const Plan& plan, int index, WidthChange& change) {
  const parts::Assembly& all = plan.assembly;
  const parts::Part& part = all.parts[static_cast<std::size_t>(index)];
  const std::vector<int> undone = undone_as_asked(plan);
  for (std::size_t j = 0; j < all.joints.size(); ++j) {
    const parts::Joint& joint = all.joints[j];
    if (std::ranges::find(rigid, joint.kind) == rigid.end()) continue;
    const bool dry =
        joint.kind == "screw" && std::ranges::binary_search(undone, static_cast<int>(j));
    for (const parts::Mate& mate : joint.mates) {
      if (mate.a != index && mate.b != index) continue;
      const int other = mate.a == index ? mate.b : mate.a;
      if (moves_along(plan, part, all.parts[static_cast<std::size_t>(other)])) continue;
      const std::optional<Interval> held =
          dry ? screwed_reach(all, joint, part) : shared_reach(mate, index, {0, 1, 0}, all);
      if (!held || held->to - held->from <= change.held_width) continue;
      change.held_width = held->to - held->from;
      change.held_by = plan.mark_of(other);
    }
  }
}

void report(Plan& plan, const WidthChange& change) {
  const FigureStyle figures = plan.project->job.figures();
  const PartRow& row = plan.rows[static_cast<std::size_t>(change.row)];
  plan.findings.push_back({Level::stop,
                           "held-across-grain",
                           {row.mark, change.held_by},
                           row.mark + " (" + row.name + ") moves across its grain by " +
                               figures.with_unit(change.greatest - change.least) +
                               " in a year and is fixed to " + change.held_by + " over " +
                               figures.with_unit(change.held_width) + " of its width.",
                           "Glue or screw it at one place only and let the rest slide: slotted "
                           "holes, clips, buttons or a tongue. A joint of screws under `undone` in "
                           "[glue_up] is not glued, and holds from its first screw to its last."});
}

// What is screwed on without places of its own, a runner or the packing under it, may have slots
// for all of its screws but one.
void check_screwed(Plan& plan, int index, double over, const std::string& what) {
  const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
  const Soundness& sound = plan.soundness;
  const double points = std::max({sound.made - sound.driest, sound.dampest - sound.made, 0.0});
  const double moved = model::movement(over, coefficient(plan, part), 0, points);
  if (over <= stands_width || moved <= stands_change) return;
  const FigureStyle figures = plan.project->job.figures();
  const std::string& mark = plan.mark_of(index);
  Finding finding{Level::caution,
                  "screws-need-slots",
                  {mark},
                  what + " is screwed across the grain of " + mark + " over " +
                      figures.with_unit(over) + ", which moves " + figures.with_unit(moved) +
                      " to one side there.",
                  "One screw fast, at the front; the others in the middle of slots along it, at "
                  "the far end longer than the screw by " +
                      figures.with_unit(2 * moved) + "."};
  const bool known = std::ranges::any_of(plan.findings, [&](const Finding& each) {
    return each.code == finding.code && each.text == finding.text;
  });
  if (!known) plan.findings.push_back(std::move(finding));
}

void check_runners(Plan& plan) {
  const parts::Assembly& all = plan.assembly;
  for (const parts::Fitting& fitting : all.fittings) {
    if (!fitting.kind.ends_with("runner")) continue;
    for (const int index : fitting.parts) {
      const parts::Part& part = all.parts[static_cast<std::size_t>(index)];
      if (std::abs(dot(fitting.axis, part.place.ey)) > std::cos(0.35))
        check_screwed(plan, index, fitting.length, "A " + fitting.kind);
    }
  }
}

void check_screwed_parts(Plan& plan) {
  const parts::Assembly& all = plan.assembly;
  for (const parts::Joint& joint : all.joints) {
    if (joint.kind != "screwed") continue;
    for (const parts::Mate& mate : joint.mates)
      for (const int index : {mate.a, mate.b}) {
        const int other = index == mate.a ? mate.b : mate.a;
        const parts::Part& part = all.parts[static_cast<std::size_t>(index)];
        if (moves_along(plan, part, all.parts[static_cast<std::size_t>(other)])) continue;
        if (const auto held = shared_reach(mate, index, {0, 1, 0}, all))
          check_screwed(
              plan, index, held->to - held->from,
              plan.mark_of(other) + " (" + all.parts[static_cast<std::size_t>(other)].name + ")");
      }
  }
}

}  // namespace

void judge_movement(Plan& plan) {
  Soundness& sound = plan.soundness;
  const model::Moistures moistures = model::moistures(plan.project->room);
  sound.made = moistures.made;
  sound.driest = moistures.driest;
  sound.dampest = moistures.dampest;
  for (std::size_t r = 0; r < plan.rows.size(); ++r) {
    const int index = plan.rows[r].members.front();
    const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
    const double per_point = coefficient(plan, part);
    if (per_point <= 0) continue;
    WidthChange change;
    change.row = static_cast<int>(r);
    change.width = part.size.y;
    change.least = model::movement(part.size.y, per_point, sound.made, sound.driest);
    change.greatest = model::movement(part.size.y, per_point, sound.made, sound.dampest);
    for (const int member : plan.rows[r].members) find_holder(plan, member, change);
    const double held = change.width <= 0 ? 0 : change.held_width / change.width;
    change.stops =
        change.held_width > stands_width && held * (change.greatest - change.least) > stands_change;
    if (change.stops) report(plan, change);
    sound.changes.push_back(std::move(change));
  }
  check_runners(plan);
  check_screwed_parts(plan);
}

}  // namespace splay::fabrication
