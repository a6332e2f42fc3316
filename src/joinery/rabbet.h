#pragma once

#include "joinery/trench.h"

namespace splay::joinery {

enum class RabbetOpen { by_itself, high_face, low_face };

// A step along the host's edge that takes the guest's edge or end.
struct RabbetKind : TrenchKind {
  model::Given<Length> clearance{Length{0}};
  model::Given<RabbetOpen> open_to{RabbetOpen::by_itself};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
