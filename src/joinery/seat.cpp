#include "joinery/joint.h"

namespace splay::joinery {

void seat(parts::Builder& builder, const Seat& joint) {
  const std::string name = joint_name(builder, joint.guest, joint.host);
  parts::Trench trench;
  trench.open = nearest_side(builder.part(joint.host), joint.floor.n);
  trench.floor = joint.floor;
  trench.walls = {joint.seat};
  trench.stops = joint.stops;
  trench.shallow = trench.deep = joint.depth;
  Region removed = {joint.floor.flipped(), joint.seat.flipped()};
  if (joint.groove) {
    trench.walls.push_back(joint.other_wall);
    removed.push_back(joint.other_wall.flipped());
  }
  for (const Plane& stop : joint.stops) removed.push_back(stop.flipped());
  const std::string kind = joint.groove ? "groove" : "rabbet";
  builder.cut_trench(joint.host,
                     joint.groove ? parts::OperationKind::groove : parts::OperationKind::rabbet,
                     removed, trench, kind + " for " + builder.part(joint.guest).name, name);
  builder.add_joint(
      {name, kind, {joint.guest, joint.host}, 0, {{joint.host, joint.guest, joint.seat}}});
}

}  // namespace splay::joinery
