// What one set of lines covers of another. Written apart from the kernel's own joining of lines, so
// that neither hides the other's faults.
#pragma once

#include <vector>

#include "geometry/hidden_lines.h"

namespace oracle {

std::vector<splay::ViewLine> visible_ones(const std::vector<splay::ViewLine>& lines);

// The length of the longest piece of `lines` that no line of `by` runs beside within `aside` mm.
double longest_uncovered(const std::vector<splay::ViewLine>& lines,
                         const std::vector<splay::ViewLine>& by, double aside);

// The length of the longest piece of a line that another line of the same set runs along.
double longest_repeated(const std::vector<splay::ViewLine>& lines, double aside);

}  // namespace oracle
