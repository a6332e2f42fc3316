// What there is to say of a plan's steps.
#pragma once

#include "fabrication/derive.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

// "no-saw-position" for every cut of a row that no position on the saw makes, with the way taken
// instead and the others there are.
void check_positions(Plan& plan, const Derivation& derived);

// "unproven-steps", level stop: parts whose steps the proof does not bear out.
void check_proofs(Plan& plan);

}  // namespace splay::fabrication
