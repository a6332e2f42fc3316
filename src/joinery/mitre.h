#pragma once

#include "joinery/kinds.h"

namespace splay::joinery {

// Two ends on the plane from the outer corner to the inner one: it halves the corner when the
// members are of equal width.
struct MitreKind : JointKind {
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
