// Parts too long for the only position that makes one of their cuts, made of two lengths.
#pragma once

#include "fabrication/plan.h"

namespace splay::fabrication {

// Where the shop's file says so (saw.beyond = "split"): the part becomes two, glued end to end at a
// square seam. The seam lies in a housing where one is near enough, else in the middle. Findings:
// "split", which names the seam; "split-still-too-long" when two lengths do not help.
void split_long_parts(Plan& plan);

}  // namespace splay::fabrication
