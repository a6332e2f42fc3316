#pragma once

#include "joinery/trench.h"

namespace splay::joinery {

// A trench along the host that takes the guest's edge or end, with room at the bottom.
struct GrooveKind : TrenchKind {
  model::Given<Length> clearance{Length::inches(1.0 / 16)};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
