// The checks a plan goes through. Each is one function in checks.cpp's list; it appends findings.
#pragma once

#include "fabrication/plan.h"

namespace splay::fabrication {

// "nothing-to-build", and what the judgements of soundness.h, finish.h and hardware.h say. What the
// saws can't do is said with the steps (steps_checks.h).
void check_plan(Plan& plan);

}  // namespace splay::fabrication
