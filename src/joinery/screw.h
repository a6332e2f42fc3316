#pragma once

#include "joinery/bed.h"

namespace splay::joinery {

enum class ScrewThrough { host, guest };

// Screws through one part into the other: a clearance hole in the first, a pilot hole in the
// second.
struct ScrewKind : FastenerKind {
  ScrewKind() : FastenerKind(BedOn::butt) {}
  model::Given<ScrewThrough> through{ScrewThrough::host};
  model::Given<int> gauge{8};
  model::Given<Length> length, clearance, pilot, counterbore;
  model::Given<bool> countersink{true};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
