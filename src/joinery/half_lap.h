#pragma once

#include "joinery/kinds.h"
#include "joinery/lapping.h"

namespace splay::joinery {

enum class LapFrom { by_itself, high_side, low_side };

// Two parts that cross in the same space, each cut away on the plane between them.
struct HalfLapKind : JointKind {
  model::Given<LapForm> form{LapForm::cross};
  model::Given<double> share{0.5};
  model::Given<LapFrom> from{LapFrom::by_itself};
  model::Given<LapWalls> walls{LapWalls::other_part};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
