#include "joinery/dovetail.h"

#include <algorithm>
#include <cmath>

#include "joinery/fingers.h"

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

constexpr double usual_slope =
    1.0 / 7;                      // between the 1 in 6 of softwood and the 1 in 8 of hardwood
constexpr double usual_tail = 2;  // widths of a tail in thicknesses of the guest
constexpr double least_pin = 2;   // mm, where it is narrowest

}  // namespace

void DovetailKind::fields(model::FieldVisitor& visit) {
  visit.count(may("tails", "how many tails",
                  "about one for every three thicknesses of the guest, common practice"),
              tails, Range::between(1, 60));
  visit.angle(may("slope", "of a tail's sides, off the host's length",
                  "1 in 7; 1 in 6 for softwood and 1 in 8 for hardwood are common practice"),
              slope, Range::degrees(2, 20));
  visit.number(may("share", "how many times as wide as a pin a tail is, halfway along it"), share,
               Range::between(0.5, 10));
  visit.length(may("lap", "wood of the guest that covers the tails' ends; none: they come through"),
               lap, Range::allowance());
}

std::string DovetailKind::shape(parts::Builder& builder, int host, int guest) const {
  FingerCorner corner;
  if (std::string fault = find_corner(stick(builder, host), stick(builder, guest), corner);
      !fault.empty())
    return fault;
  const std::string both = corner.host.name + " and " + corner.guest.name;
  if (lap->mm > corner.guest_thickness - least_pin)
    return "A lap of " + figure(builder, lap->mm) + " leaves no room for tails between " + both +
           ".";
  const double high = corner.high - corner.low;
  const double usual = std::round(high / ((1 + usual_tail) * corner.guest_thickness));
  const double count = tails.given ? *tails : std::max(1.0, usual);
  const double pin = high / (count * share.value + count + 1), tail = pin * share.value;
  const double rise = slope.given ? std::tan(slope->rad) : usual_slope;
  const double spread = rise * (corner.guest_thickness - lap->mm) / std::sin(corner.angle);
  if (pin - spread < least_pin || tail - spread < least_pin)
    return "The pins or tails between " + both + " would be " +
           figure(builder, std::min(pin, tail) - spread) + " at their narrow end.";
  std::vector<Finger> fingers;
  for (double i = 0; i < count; ++i)
    fingers.push_back({corner.low + pin + tail / 2 + i * (pin + tail), tail});
  Draft draft(builder, "dovetail", host, guest);
  cut_fingers(corner, fingers, rise, lap->mm, "tail", draft);
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
