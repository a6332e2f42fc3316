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

void glued(parts::Builder& builder, int a, int b, const Plane& face, std::string_view kind) {
  builder.add_joint({joint_name(builder, b, a), std::string(kind), {b, a}, 0, {{a, b, face}}});
}

}  // namespace splay::joinery
