// Which parts are alike, and which are mirror images.
//
// Two parts are alike when a turn that keeps the grain axis and the show face brings one onto the
// other. A part has a hand when no such turn brings its mirror image onto it.
#pragma once

#include <optional>

#include "parts/part.h"

namespace splay::fabrication {

bool alike(const parts::Part& a, const parts::Part& b);
bool mirrored(const parts::Part& a, const parts::Part& b);  // b is a's mirror image
// The turn that brings a, in its own frame, onto the part b that is alike, in b's.
std::optional<Rigid> turn_onto(const parts::Part& a, const parts::Part& b);
bool handed(const parts::Part& part);

}  // namespace splay::fabrication
