// The maker's own signs as drafting draws them.
#pragma once

#include "drafting/kit.h"
#include "model/style.h"

namespace splay::sheets {

// About the middle of the view box, whose longer side becomes 1; y up.
drafting::Symbols symbols_of(const model::Symbols& symbols);

}  // namespace splay::sheets
