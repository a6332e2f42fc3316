// Closed chains of mitred parts, and what small errors of their settings make of the last joint.
//
// Every cut of a chain is made again in the simulator with its angle off by a little; the turn this
// gives the joint is added up round the chain, each cut in the sense that opens the last joint
// most. For an upright ring of N parts that is 2N times the error of one cut.
#pragma once

#include "fabrication/plan.h"

namespace splay::fabrication {

// Fills Plan::chains; the steps must be proven. Findings: "ring-settings" when half a division of
// the scale at every cut opens the last joint further than the shop allows, "ring-open" when the
// printed settings themselves do.
void report_chains(Plan& plan);

}  // namespace splay::fabrication
