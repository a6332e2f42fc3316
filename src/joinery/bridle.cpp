#include "joinery/bridle.h"

namespace splay::joinery {

using model::may;
using model::Range;

void BridleKind::fields(model::FieldVisitor& visit) {
  model::choose<BridleForm, 2>(
      visit,
      may("form", "the guest's end forked over a host that runs on, or both end in a corner"), form,
      {"tee", "corner"});
  visit.number(may("share",
                   "part of the common thickness that the tongue keeps, a third by common "
                   "practice"),
               share, Range::between(0.1, 0.8));
}

std::string BridleKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Crossing crossing;
  if (std::string fault = find_crossing(h, g, crossing); !fault.empty()) return fault;
  const bool tee = form.value == BridleForm::tee;
  const Stick& tongue = tee ? h : g;
  const Stick& slotted = tee ? g : h;
  const auto [low, high] = crossing.height;
  const double middle = (low + high) / 2, half = share.value * (high - low) / 2;
  const Vec3 up = crossing.up;
  const Plane top{up, middle + half}, bottom{-up, half - middle};  // of the tongue, out of it

  Draft draft(builder, "bridle", host, guest);
  draft.dihedral(trim_ends(h, g, tee ? LapForm::tee : LapForm::corner, crossing, draft));
  const Region above = own_space(slotted, up), below = own_space(slotted, -up);
  cut_lap(tongue, slotted, top, above, draft);
  cut_lap(tongue, slotted, bottom, below, draft);
  Region slot;
  for (const Plane& side : own_space(tongue, up))
    if (dot(side.n, up) > -0.9) slot.push_back(side);
  const Region slot_walls = slot;
  slot.insert(slot.end(), {top, bottom});
  draft.remove(slotted.index, parts::OperationKind::mortise, slot, "slot for " + tongue.name);
  draft.must_meet(tongue.index, slotted.index, top, "cheeks");
  draft.must_meet(tongue.index, slotted.index, bottom, "cheeks");
  meet_walls(tongue, slotted, above, draft);
  meet_walls(slotted, tongue, slot_walls, draft);
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
