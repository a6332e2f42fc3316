// The checks a plan goes through. Each is one function in checks.cpp's list; it appends findings.
#pragma once

#include "fabrication/plan.h"

namespace splay::fabrication {

// "past-saw-tilt": a bevel that the saw can't tilt to with the board flat. "nothing-to-build".
void check_plan(Plan& plan);

}  // namespace splay::fabrication
