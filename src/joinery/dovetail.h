#pragma once

#include "joinery/kinds.h"

namespace splay::joinery {

// Tails on the host's end in sockets of the guest's, which keeps the pins between them and a pin at
// either edge.
struct DovetailKind : JointKind {
  model::Given<int> tails;
  model::Given<Angle> slope;
  model::Given<double> share{2};
  model::Given<Length> lap{Length{0}};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
