#pragma once

#include "joinery/kinds.h"

namespace splay::joinery {

// Two parts that touch already, glued as they lie on the largest surface they have in common.
struct GluedKind : JointKind {
  model::Given<parts::Made> made{parts::Made::in_turn};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
