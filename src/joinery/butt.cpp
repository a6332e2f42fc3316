#include "joinery/butt.h"

#include "joinery/draft.h"
#include "joinery/joint.h"
#include "joinery/stick.h"

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

void glued(parts::Builder& builder, int a, int b, const Plane& face, std::string_view kind) {
  builder.add_joint({joint_name(builder, b, a), std::string(kind), {b, a}, 0, {{a, b, face}}});
}

void ButtKind::fields(model::FieldVisitor&) {}

std::string ButtKind::make(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Meeting meeting;
  if (std::string fault = find_meeting(h, g, Lines::length_or_width, meeting); !fault.empty())
    return fault;
  Draft draft(builder, "butt", host, guest);
  const Plane cut = meeting.face.flipped();
  if (meeting.along)
    draft.cut_end(guest, cut, "end against " + h.name);
  else
    draft.cut_edge(guest, cut, "edge against " + h.name);
  draft.must_meet(host, guest, meeting.face, "faces");
  draft.dihedral(crossing_angle(h.along, meeting.in));
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
