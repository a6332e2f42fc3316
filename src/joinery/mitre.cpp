#include "joinery/joint.h"

namespace splay::joinery {

void mitre(parts::Builder& builder, const Mitre& joint) {
  const std::string name = joint_name(builder, joint.a, joint.b);
  builder.cut_end(joint.a, joint.plane, "mitre to " + builder.part(joint.b).name, name);
  builder.cut_end(joint.b, joint.plane.flipped(), "mitre to " + builder.part(joint.a).name, name);
  builder.add_joint(
      {name, "mitre", {joint.a, joint.b}, joint.dihedral, {{joint.a, joint.b, joint.plane}}});
}

}  // namespace splay::joinery
