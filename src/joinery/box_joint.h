#pragma once

#include "joinery/kinds.h"

namespace splay::joinery {

// The ends of two boards cut into square fingers, as many as make an odd number along the corner:
// the guest has the first and the last.
struct BoxJointKind : JointKind {
  model::Given<Length> finger;
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
