#pragma once

#include "joinery/kinds.h"
#include "joinery/lapping.h"

namespace splay::joinery {

enum class BridleForm { tee, corner };

// A tongue of full width in an open slot. In a tee the guest's end is forked and straddles the
// host; in a corner the host's end is slotted and the guest's end is the tongue.
struct BridleKind : JointKind {
  model::Given<BridleForm> form{BridleForm::corner};
  model::Given<double> share{1.0 / 3};
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
