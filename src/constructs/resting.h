// Parts that stand or lie on one another without a joint of their own.
#pragma once

#include <vector>

#include "parts/builder.h"

namespace splay::constructs {

// Records that `upper` rests on `lower` at a level: true when they have surface in common there.
bool rest(parts::Builder& builder, int lower, int upper, double level);

}  // namespace splay::constructs
