#pragma once

#include "joinery/bed.h"

namespace splay::joinery {

// Round pins across a joint, in holes of both parts.
struct DowelKind : FastenerKind {
  DowelKind() : FastenerKind(BedOn::butt) {}
  model::Given<Length> diameter, embed;
  model::Given<Length> bottom_gap{Length::inches(1.0 / 16)};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
