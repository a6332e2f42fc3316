// Pins in slots: has the slot the room that the wood's movement takes?
#include <algorithm>
#include <array>
#include <cmath>

#include "base/figure.h"
#include "fabrication/hardware.h"
#include "fabrication/plan.h"
#include "fabrication/soundness.h"
#include "model/movement.h"

namespace splay::fabrication {

namespace {

constexpr double no_wall = 1000;  // mm: nothing of the part is beside the pin there
constexpr double snug = 0.1;      // mm: a hole that fits its pin

// From a pin's middle line to the nearest wood on one side, over all of its length.
double free_beside(const Solid& body, const parts::Fitting& pin, Vec3 way) {
  constexpr int places = 16;
  double least = 1e9;
  for (int i = 0; i < places; ++i)
    least =
        std::min(least, free_run(body, pin.at + pin.axis * (pin.length * (i + 0.5) / places), way));
  return least;
}

// The slot of one of a pin's parts; `length` 0 where it has none.
PinSlot slot_in(const Plan& plan, const parts::Fitting& pin, int index, double rate) {
  const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
  const Vec3 across = part.place.direction({0, 1, 0});
  PinSlot slot;
  slot.row = plan.row_of_part[static_cast<std::size_t>(index)];
  const double low = free_beside(part.world, pin, -across),
               high = free_beside(part.world, pin, across);
  const double room = std::min(low, high) - pin.diameter / 2;
  if (std::abs(dot(pin.axis, across)) > 0.7 || low > no_wall || high > no_wall ||
      std::max(low, high) - pin.diameter / 2 < snug)
    return slot;
  slot.off = std::abs(part.place.local_point(pin.at).y - part.size.y / 2);
  slot.pin = pin.diameter;
  slot.length = pin.diameter + 2 * std::max(0.0, room);
  const Soundness& sound = plan.soundness;
  const double points = std::max({sound.made - sound.driest, sound.dampest - sound.made, 0.0});
  slot.needs = pin.diameter + 2 * model::movement(slot.off, rate, 0, points);
  return slot;
}

// Of a row's slots the one that lacks most, or has least to spare.
void keep_worst(std::vector<PinSlot>& all, const PinSlot& slot) {
  const auto same = std::ranges::find(all, slot.row, &PinSlot::row);
  if (same == all.end())
    all.push_back(slot);
  else if (slot.length - slot.needs < same->length - same->needs)
    *same = slot;
}

void report(Plan& plan, const PinSlot& slot) {
  const FigureStyle figures = plan.project->job.figures();
  const PartRow& row = plan.rows[static_cast<std::size_t>(slot.row)];
  plan.findings.push_back(
      {Level::stop,
       "slot-too-short",
       {row.mark, slot.pin_in},
       "A pin of " + slot.pin_in + ", " + figures.with_unit(slot.off) + " from the middle of " +
           row.mark + " (" + row.name + "), runs in a slot " + figures.with_unit(slot.length) +
           " long; the wood moves there, and it has to be " + figures.with_unit(slot.needs) +
           ": it is held and splits.",
       "A longer slot: more `movement`, or none stated, so that it follows from the wood and the "
       "room."});
}

}  // namespace

void judge_slots(Plan& plan) {
  std::vector<PinSlot>& all = plan.soundness.slots;
  for (const parts::Fitting& pin : plan.assembly.fittings) {
    if (pin.kind != "dowel" || pin.parts.size() < 2) continue;
    for (const int index : pin.parts) {
      const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
      const model::Stock* stock = plan.project->stocks.find(part.stock);
      if (stock == nullptr || *stock->kind != model::StockKind::board) continue;
      PinSlot slot = slot_in(plan, pin, index, stock->timber.across_coefficient());
      if (slot.length <= 0) continue;
      slot.pin_in = plan.mark_of(pin.parts.front() == index ? pin.parts.back() : pin.parts.front());
      keep_worst(all, slot);
    }
  }
  const std::vector<PinSlot> slots = all;
  for (const PinSlot& slot : slots)
    if (!slot.enough()) report(plan, slot);
}

}  // namespace splay::fabrication
