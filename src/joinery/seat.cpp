#include "joinery/trench.h"

namespace splay::joinery {

void seat(parts::Builder& builder, const Seat& joint) {
  const std::string kind = joint.groove ? "groove" : "rabbet";
  Draft draft(builder, kind, joint.host, joint.guest);
  TrenchCut trench;
  trench.kind = joint.groove ? parts::OperationKind::groove : parts::OperationKind::rabbet;
  trench.name = kind + " for " + builder.part(joint.guest).name;
  trench.floor = joint.floor;
  trench.face = {joint.floor.n, joint.floor.d + joint.depth};
  trench.walls = {joint.seat};
  if (joint.groove) trench.walls.push_back(joint.other_wall);
  trench.stops = joint.stops;
  cut_trench(builder, joint.host, trench, draft);
  draft.must_meet(joint.host, joint.guest, joint.seat, "wall");
  draft.carry_out_untried(builder);
}

}  // namespace splay::joinery
