// Joining the collinear lines of a view. Internal to src/geometry.
#pragma once

#include <vector>

#include "geometry/hidden_lines.h"

namespace splay {

// Visible lines on one carrier are united where they overlap (and where those of one solid touch);
// hidden lines too, less what visible ones cover. Fragments shorter than tolerance::shortest_line
// are dropped. The order of the result is that of the first line that went into each.
std::vector<ViewLine> unite_lines(const std::vector<ViewLine>& lines);

}  // namespace splay
