// What holds a top to its rails has to let it move.
#include <algorithm>
#include <cmath>

#include "base/figure.h"
#include "fabrication/hardware.h"
#include "fabrication/hardware_judges.h"
#include "fabrication/plan.h"
#include "model/movement.h"

namespace splay::fabrication {

namespace {

constexpr double between_holes = 15.9;    // mm, of a figure-8: 5/8 in; measure the one in hand
constexpr double play = 0.5;              // mm that any fastener gives; common practice, no source
constexpr double spare_room = 25.4 / 32;  // mm more than the movement; common practice, no source
constexpr double least_tongue = 3;        // mm of a tongue that still hold; common practice
// Figure-8 fasteners are for tops narrower than this: woodcraft.com, "Joinery class: attaching
// tabletops".
constexpr double widest_for_eights = 457;  // mm: 18 in

bool is_eight(const std::string& kind) { return kind == "figure-8 fastener"; }
bool slides(const std::string& kind) { return kind == "table clip" || kind == "slotted block"; }

const parts::Part& part_of(const Plan& plan, int index) {
  return plan.assembly.parts[static_cast<std::size_t>(index)];
}

// One fastener by itself.
TopFastening fastening(const Plan& plan, const parts::Fitting& fitting) {
  TopFastening one{fitting.parts.front(), fitting.parts.back(), fitting.kind, 1};
  const parts::Part &rail = part_of(plan, one.rail), &top = part_of(plan, one.top);
  one.along_rail = std::abs(dot(rail.place.ex, top.place.ey)) > 0.7;
  const double off = top.place.local_point(fitting.at).y - top.size.y / 2;
  const model::Stock* stock = plan.project->stocks.find(top.stock);
  const bool moves = stock != nullptr && *stock->kind == model::StockKind::board;
  const double rate = moves ? stock->timber.across_coefficient() : 0;
  const Soundness& sound = plan.soundness;
  one.shrinks = model::movement(std::abs(off), rate, 0, std::max(0.0, sound.made - sound.driest));
  one.swells = model::movement(std::abs(off), rate, 0, std::max(0.0, sound.dampest - sound.made));
  if (!slides(one.kind)) return one;
  const Vec3 inside = fitting.at + fitting.axis * (fitting.length / 2), along = rail.place.ex;
  one.slot = free_run(rail.world, inside, along) + free_run(rail.world, inside, -along);
  const double moved = std::max(one.shrinks, one.swells);
  if (one.along_rail)
    one.needs = native_length(fitting.size) + 2 * moved;
  else
    // Swelling drives what points away from the top's middle into the rail.
    one.set_back =
        (dot(fitting.axis, top.place.ey) * off > 0 ? one.swells : one.shrinks) + spare_room;
  return one;
}

void check_eight(Plan& plan, const TopFastening& one) {
  const FigureStyle figures = plan.project->job.figures();
  const std::string &rail = plan.mark_of(one.rail), &top = plan.mark_of(one.top);
  const double moved = std::max(one.shrinks, one.swells);
  // It stands square to its rail and swings along it.
  const double may = one.along_rail ? figure_eight_swing(between_holes) : play;
  if (moved > may)
    plan.findings.push_back({Level::stop,
                             "fastener-held",
                             {rail, top},
                             "A " + one.kind + " on " + rail + " lets " + top + " move " +
                                 figures.with_unit(may) + " there; it moves " +
                                 figures.with_unit(moved) + " to one side" +
                                 (one.along_rail ? "." : ", along the fastener's arm."),
                             "Clips or slotted blocks on this rail; figure-8 fasteners only on "
                             "rails across the top's grain."});
  else if (moved > 0 && part_of(plan, one.top).size.y > widest_for_eights)
    plan.findings.push_back({Level::caution,
                             "fastener-too-small",
                             {rail, top},
                             "Figure-8 fasteners are used for tops under " +
                                 figures.with_unit(widest_for_eights) + " wide; " + top + " is " +
                                 figures.with_unit(part_of(plan, one.top).size.y) +
                                 " wide and moves " + figures.with_unit(moved) + " there.",
                             "Clips or slotted blocks give more room."});
}

void check_slot(Plan& plan, const TopFastening& one, double deep) {
  const FigureStyle figures = plan.project->job.figures();
  const std::string &rail = plan.mark_of(one.rail), &top = plan.mark_of(one.top);
  if (one.along_rail && one.needs > one.slot + 2 * play)
    plan.findings.push_back({Level::stop,
                             "fastener-held",
                             {rail, top},
                             "A slot for a " + one.kind + " in " + rail + " is " +
                                 figures.with_unit(one.slot) + " long; " + top +
                                 " moves there along the rail, and it has to be " +
                                 figures.with_unit(one.needs) + ".",
                             "Longer slots on rails across the top's grain."});
  const double pulled = std::max(one.shrinks, one.swells);
  if (!one.along_rail && deep - one.set_back - pulled < least_tongue)
    plan.findings.push_back({Level::caution,
                             "fastener-lets-go",
                             {rail, top},
                             "A " + one.kind + " in " + rail + " reaches " +
                                 figures.with_unit(deep) + " into its slot at the most; with " +
                                 figures.with_unit(one.set_back) + " of room before the rail and " +
                                 figures.with_unit(pulled) + " drawn out by " + top +
                                 " little is left.",
                             "Slotted blocks with a longer tongue in a deeper slot."});
}

// A board or sheet that lies on others and that nothing but its weight keeps there.
bool lies_loose(const Plan& plan, int index) {
  const parts::Assembly& all = plan.assembly;
  bool lies = false;
  for (const parts::Joint& joint : all.joints) {
    if (std::ranges::find(joint.between, index) == joint.between.end()) continue;
    // The upper one is named first.
    if (joint.kind != "resting" || joint.between.front() != index) return false;
    lies = true;
  }
  const auto& added = plan.project->hardware;
  for (std::size_t i = 0; i < added.size(); ++i)
    if (std::ranges::find(*added[i].on, all.parts[static_cast<std::size_t>(index)].name) !=
        added[i].on->end())
      return false;
  return lies;
}

void check_loose(Plan& plan, int index) {
  const parts::Part& part = part_of(plan, index);
  const model::Stock* stock = plan.project->stocks.find(part.stock);
  const bool solid = stock != nullptr && *stock->kind == model::StockKind::board;
  const std::string& mark = plan.mark_of(index);
  plan.findings.push_back(
      {Level::caution,
       "top-lies-loose",
       {mark},
       mark + " (" + part.name + ") only lies on what is under it: nothing in the file holds it." +
           (solid ? " Of solid wood, it must not be glued or screwed fast across its grain." : ""),
       "Fasteners in the top's table (figure-8, clip or slotted block), which let it move, or what "
       "holds it under [hardware] with its name in `on`."});
}

}  // namespace

double figure_eight_swing(double holes) {
  const double drawn_in = 25.4 / 64;
  return holes * std::sin(std::acos(1 - drawn_in / holes));
}

std::vector<TopFastening> top_fastenings(const Plan& plan) {
  std::vector<TopFastening> all;
  for (const parts::Fitting& fitting : plan.assembly.fittings) {
    if ((!is_eight(fitting.kind) && !slides(fitting.kind)) || fitting.parts.size() < 2) continue;
    const TopFastening one = fastening(plan, fitting);
    const auto same = std::ranges::find_if(all, [&](const TopFastening& each) {
      return plan.mark_of(each.rail) == plan.mark_of(one.rail) && each.top == one.top &&
             each.kind == one.kind;
    });
    if (same == all.end()) {
      all.push_back(one);
      continue;
    }
    ++same->count;
    same->shrinks = std::max(same->shrinks, one.shrinks);
    same->swells = std::max(same->swells, one.swells);
    same->slot = std::min(same->slot, one.slot);
    same->needs = std::max(same->needs, one.needs);
    same->set_back = std::max(same->set_back, one.set_back);
  }
  return all;
}

void judge_fastenings(Plan& plan) {
  for (std::size_t i = 0; i < plan.assembly.parts.size(); ++i)
    if (lies_loose(plan, static_cast<int>(i))) check_loose(plan, static_cast<int>(i));
  const std::vector<parts::Fitting> fittings = plan.assembly.fittings;
  for (const parts::Fitting& fitting : fittings) {
    if (fitting.parts.size() < 2) continue;
    if (is_eight(fitting.kind)) check_eight(plan, fastening(plan, fitting));
    if (slides(fitting.kind)) check_slot(plan, fastening(plan, fitting), fitting.length);
  }
}

}  // namespace splay::fabrication
