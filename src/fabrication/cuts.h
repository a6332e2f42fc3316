// How a plane through a board reads on a saw.
#pragma once

#include "fabrication/plan.h"

namespace splay::fabrication {

// Face angle = atan(|ny| / |nx|), bevel = asin(|nz|) for an end whose surface has the unit normal n
// in the part frame (x along, y across, z through the board); for an edge x and y change places,
// and for the taper of a face (z) the board lies on its edge.
CutReport read_cut(const parts::Operation& operation, const parts::Part& part);

// Greatest and least length along x between the two ends, over the part's body.
struct Points {
  double long_point = 0, short_point = 0;
};
Points point_lengths(const parts::Part& part);

}  // namespace splay::fabrication
