#include "joinery/kinds.h"

namespace splay::joinery {

std::string JointKind::make(parts::Builder& builder, int host, int guest) const {
  std::string fault = shape(builder, host, guest);
  if (!fault.empty()) builder.leave_apart(host, guest);
  return fault;
}

}  // namespace splay::joinery
