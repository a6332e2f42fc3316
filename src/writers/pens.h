// What every writer must draw alike: dashes, caps, the check before drawing.
#pragma once

#include <vector>

#include "ink/ink.h"

namespace splay::writers {

// Lengths of dash, gap, dash, ... in mm; empty for a continuous line. ISO 128-2 gives them in line
// widths (from memory: dash 12, gap 3, long dash 24, dot 0.5).
std::vector<double> dash_lengths(const ink::Pen& pen);

// Joins are round everywhere. Ends are round on continuous lines, so that lines drawn one by one
// meet in a closed corner, and square cut on dashes, so that a gap is as long as it says.
inline bool round_ends(const ink::Pen& pen) { return pen.dash == ink::Dash::continuous; }

// Throws std::invalid_argument for the first item of the page that can't be drawn, and for a page
// without a size.
void require_sound(const ink::Page& page);

}  // namespace splay::writers
