// Standard scales.
//
// Millimetre jobs: ISO 5455:1979 (from memory): 1:1, 1:2, 1:5, 1:10, 1:20, 1:50 ... and 2:1, 5:1,
// 10:1; and 1:25, which is on every scale rule and bridges the wide step to 1:50. Inch jobs: full
// size, half, quarter and eighth size, then 1, 3/4, 1/2, 3/8, 1/4, 1/8 inch to the foot (common
// practice, no source).
#pragma once

#include <string>

#include "base/figure.h"

namespace splay::drafting {

struct Scale {
  int paper = 1, real = 1;  // 1:10 is paper 1, real 10
  double ratio() const { return static_cast<double>(paper) / real; }
  bool operator==(const Scale&) const = default;
};

// "1:10"; for inch jobs also in the shop's words: "1:1 (full size)", "1:16 (3/4 in = 1 ft)".
std::string text(Scale scale, Unit unit);
std::string short_text(Scale scale);  // "1:16"

// The largest standard scale at which `width` x `height` (real mm) fits into the room (paper mm).
// Enlargement only when asked for. When even the smallest is too large, the smallest.
struct Room2 {
  double width = 0, height = 0;
};
Scale largest_scale(Unit unit, Room2 real, Room2 paper, bool may_enlarge = false);

// The next smaller standard scale; the same when there is none.
Scale next_smaller(Scale scale, Unit unit);

}  // namespace splay::drafting
