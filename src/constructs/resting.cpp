#include "constructs/resting.h"

#include "joinery/joint.h"
#include "parts/audit.h"

namespace splay::constructs {

bool rest(parts::Builder& builder, int lower, int upper, double level) {
  constexpr double least = 1;  // mm2: less is an edge that touches
  const Plane plane{{0, 0, 1}, level};
  const auto world = [&builder](int index) {
    return builder.part(index).body.transformed(builder.part(index).place);
  };
  if (parts::measure({lower, upper, plane}, world(lower), world(upper)).area < least) return false;
  joinery::glued(builder, lower, upper, plane, "resting");
  return true;
}

}  // namespace splay::constructs
