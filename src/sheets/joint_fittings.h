// Fittings that lie in a cut through a joint. Internal to src/sheets.
#pragma once

#include "sheets/joint_cut.h"

namespace splay::sheets {

// Adds those of the joint whose axis lies in the cut's plane, as wide as their diameter.
void add_fittings(const parts::Assembly& assembly, const parts::Joint& joint, JointCut& cut);

// A loose tenon is as broad as its mortise where the cut lies in its broad faces: what a fitting's
// diameter does not say the wood beside it does. Needs the cut's loops.
void widen_fittings(JointCut& cut);

}  // namespace splay::sheets
