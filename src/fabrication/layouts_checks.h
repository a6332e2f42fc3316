// What layouts and stock give reason to say (part of layouts.h).
#pragma once

#include "fabrication/plan.h"

namespace splay::fabrication {

void check_layouts(Plan& plan);

}  // namespace splay::fabrication
