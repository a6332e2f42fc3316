#pragma once

#include "joinery/bed.h"

namespace splay::joinery {

// A thin strip in a slot along the joint, half in either part.
struct SplineKind : FastenerKind {
  SplineKind() : FastenerKind(BedOn::mitre) {}
  model::Given<Length> thickness, width, stopped;
  model::Given<Length> bottom_gap{Length::inches(1.0 / 32)};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
