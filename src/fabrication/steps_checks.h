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

// Adds "fence-too-near" where what is kept is too narrow beside the fence, and "fence-at-blade"
// where work stands on its end with the line of cut at the fence.
void check_fences(Plan& plan);

// Adds "too-wide-to-plane" and "too-wide-to-joint" for blanks that the machines don't take.
void check_milling(Plan& plan);

}  // namespace splay::fabrication
