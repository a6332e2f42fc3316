// Hardware at the places that the author gives: [hardware.NAME] with `at`.
#pragma once

#include "parts/builder.h"

namespace splay::joinery {

// Drills what is to be drilled and records a fitting at every place. Called when every part has its
// final shape. Findings of level stop: "unknown-part", "unknown-face", "off-the-face" (a place with
// no wood behind it), "hole-breaks-out" (of a side or, with a depth, of the other face).
void place_hardware(parts::Builder& builder);

}  // namespace splay::joinery
