#pragma once

#include "joinery/kinds.h"

namespace splay::joinery {

// The guest ends on the host's face, square or not.
struct ButtKind : JointKind {
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
