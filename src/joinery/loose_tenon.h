#pragma once

#include "joinery/bed.h"

namespace splay::joinery {

// A separate tenon glued into a mortise of either part.
struct LooseTenonKind : FastenerKind {
  LooseTenonKind() : FastenerKind(BedOn::butt) { count.value = 1; }
  model::Given<Length> thickness, width, embed;
  model::Given<Length> bottom_gap{Length::inches(1.0 / 16)};
  model::Given<bool> round_ends{true};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
