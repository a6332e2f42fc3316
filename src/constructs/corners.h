// What an author chose for the corners of a ring, shared by cases, frames and rings.
#pragma once

#include <string>
#include <vector>

#include "constructs/ring_layout.h"
#include "model/field.h"

namespace splay::constructs {

struct CornerChoiceNamed : model::Fields {
  std::string name;  // "left-top", either order
  model::Given<CornerKind> joint{CornerKind::mitre};
  model::Given<std::string> through;
  void fields(model::FieldVisitor& visit) override;
};

// What the author chose for every corner of a ring: by name, by a list of those that run through,
// or by the general choice. `fault` takes what can't be resolved.
std::vector<RingCorner> resolve_corners(const std::vector<std::string>& sides, CornerKind general,
                                        const std::vector<std::string>& through,
                                        const model::Tables<CornerChoiceNamed>* named,
                                        std::string& fault);

// Complains ("unknown-side") when `side` is not one of the outline's.
void check_side(const std::vector<std::string>& sides, const std::string& side, SourceSpan at,
                model::Complaints& complaints);

}  // namespace splay::constructs
