// A check loop as it is measured: its outline with numbered corners, and the distances between
// them. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "drafting/kit.h"
#include "parts/part.h"

namespace splay::sheets {

// A distance between two corners (numbered from 1) as it must measure.
struct LoopMeasure {
  std::size_t from = 0, to = 0;
  double mm = 0;
  bool diagonal = false;
};
// The sides in order, then the diagonals from corner to opposite corner (for an odd number of
// corners, to both of the farthest).
std::vector<LoopMeasure> measures_of(const parts::CheckLoop& loop);

// The loop laid flat, first side level and below, in a picture of at most this size.
drafting::Picture loop_picture(const drafting::Kit& kit, const parts::CheckLoop& loop, double width,
                               double height);

}  // namespace splay::sheets
