#include "joinery/butt.h"

#include "joinery/bases.h"
#include "joinery/joint.h"

namespace splay::joinery {

void butt(parts::Builder& builder, const Butt& joint) {
  const std::string name = joint_name(builder, joint.guest, joint.host);
  builder.cut_end(joint.guest, joint.face.flipped(), "end against " + builder.part(joint.host).name,
                  name);
  builder.add_joint({name,
                     "butt",
                     {joint.guest, joint.host},
                     joint.dihedral,
                     {{joint.host, joint.guest, joint.face}}});
}

std::string lay_butt(const Stick& host, const Stick& guest, Draft& draft, Plane& plane) {
  Meeting meeting;
  if (std::string fault = find_meeting(host, guest, Lines::length_or_width, meeting);
      !fault.empty())
    return fault;
  plane = meeting.face;
  if (!whole_behind(guest, plane.flipped(), meeting.in))
    return guest.name + " does not reach " + host.name + " with its whole section.";
  if (meeting.along)
    draft.cut_end(guest.index, plane.flipped(), "end against " + host.name);
  else
    draft.cut_edge(guest.index, plane.flipped(), "edge against " + host.name);
  draft.must_meet(host.index, guest.index, plane, "faces");
  draft.dihedral(crossing_angle(host.along, meeting.in));
  return "";
}

void ButtKind::fields(model::FieldVisitor&) {}

std::string ButtKind::shape(parts::Builder& builder, int host, int guest) const {
  Draft draft(builder, "butt", host, guest);
  Plane plane;
  const std::string fault = lay_butt(stick(builder, host), stick(builder, guest), draft, plane);
  return fault.empty() ? draft.carry_out(builder) : fault;
}

}  // namespace splay::joinery
