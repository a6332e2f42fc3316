#include "joinery/joint.h"

namespace splay::joinery {

parts::Side nearest_side(const parts::Part& part, Vec3 world_direction) {
  const Vec3 local = part.place.local_direction(world_direction);
  parts::Side best = parts::Side::x_low;
  for (int i = 1; i < 6; ++i) {
    const auto side = static_cast<parts::Side>(i);
    if (dot(parts::outward(side), local) > dot(parts::outward(best), local)) best = side;
  }
  return best;
}

std::string joint_name(const parts::Builder& builder, int a, int b) {
  return builder.part(a).name + " to " + builder.part(b).name;
}

}  // namespace splay::joinery
