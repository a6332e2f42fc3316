#include "joinery/box_joint.h"

#include <algorithm>
#include <cmath>

#include "joinery/fingers.h"

namespace splay::joinery {

namespace {

constexpr double least_finger = 2;  // mm: a thin kerf's width

}  // namespace

void BoxJointKind::fields(model::FieldVisitor& visit) {
  visit.length(model::may("finger",
                          "width of a finger, brought to the nearest that makes an odd number of "
                          "equal ones",
                          "as wide as the thinner board is thick, common practice"),
               finger, model::Range::size());
}

std::string BoxJointKind::shape(parts::Builder& builder, int host, int guest) const {
  FingerCorner corner;
  if (std::string fault = find_corner(stick(builder, host), stick(builder, guest), corner);
      !fault.empty())
    return fault;
  const double high = corner.high - corner.low;
  const double wanted =
      finger.given ? finger->mm : std::min(corner.host_thickness, corner.guest_thickness);
  const double pairs = std::max(1.0, std::round((high / wanted - 1) / 2));
  const double width = high / (2 * pairs + 1);
  if (width < least_finger)
    return "Fingers of " + figure(builder, width) + " at the corner of " + corner.host.name +
           " and " + corner.guest.name + " are too thin to be cut.";
  std::vector<Finger> fingers;
  for (double i = 0; i < pairs; ++i) fingers.push_back({corner.low + width * (2 * i + 1.5), width});
  Draft draft(builder, "box joint", host, guest);
  cut_fingers(corner, fingers, 0, 0, "finger", draft);
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
