#include "joinery/glued.h"

#include "base/tolerance.h"
#include "joinery/bases.h"
#include "joinery/joint.h"
#include "parts/audit.h"

namespace splay::joinery {

void glued(parts::Builder& builder, int a, int b, const Plane& face, std::string_view kind,
           parts::Made made) {
  builder.add_joint(
      {joint_name(builder, b, a), std::string(kind), {b, a}, 0, {{a, b, face}}, made});
}

std::string lay_contact(const Stick& host, const Stick& guest, Draft& draft, Plane& plane) {
  double largest = 0;
  const std::vector<Face> others = guest.body.boundary().faces;
  for (const Face& one : host.body.boundary().faces) {
    for (const Face& other : others) {
      if (dot(one.plane.n, other.plane.n) > -1 + 1e-12) continue;
      if (std::abs(one.plane.d + other.plane.d) > tolerance::gap) continue;
      const double area =
          parts::measure({host.index, guest.index, one.plane}, host.body, guest.body).area;
      if (area <= largest + 1e-6) continue;
      largest = area;
      plane = one.plane;
    }
  }
  if (largest == 0) return guest.name + " and " + host.name + " have no surface in common.";
  draft.must_meet(host.index, guest.index, plane, "faces");
  return "";
}

void GluedKind::fields(model::FieldVisitor& visit) {
  model::choose<parts::Made, 3>(
      visit, model::may("made", "when it is glued: edging goes on its panel first"), made,
      parts::made_words);
}

std::string GluedKind::shape(parts::Builder& builder, int host, int guest) const {
  Draft draft(builder, "glued", host, guest);
  Plane plane;
  const std::string fault = lay_contact(stick(builder, host), stick(builder, guest), draft, plane);
  draft.made(*made);
  return fault.empty() ? draft.carry_out(builder) : fault;
}

}  // namespace splay::joinery
