#pragma once

#include "joinery/trench.h"

namespace splay::joinery {

enum class HousingEnds { run_out, fit };

// A trench across the host's face that takes the guest's end.
struct HousingKind : TrenchKind {
  model::Given<HousingFloor> floor{HousingFloor::parallel_to_face};
  model::Given<HousingEnds> ends{HousingEnds::run_out};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
