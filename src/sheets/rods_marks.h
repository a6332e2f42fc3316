// What a setting-out strip (the joiner's rod) carries. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "sheets/part_view_facts.h"

namespace splay::sheets {

// A line squared over a strip at its running length. Where a cut crosses the part at an angle, its
// ends on the front and on the back edge are two marks.
struct RodMark {
  double at = 0;     // mm from the strip's datum
  std::string name;  // "housing for long shelf, front"
  bool centre = false;
};

struct Rod {
  std::string title;   // "B-L left panel", "Heights"
  std::string along;   // what the datum is: "from the foot"
  std::string anchor;  // of its part's page, ""
  double length = 0;
  std::vector<RodMark> marks;  // ascending, those at one place joined
};

// Shoulders, walls of housings and laps, mortises and holes along the part's length, measured on
// the side they are worked into; ends on the show face and where a bevel makes the other face
// differ. Empty when there is nothing between the ends.
Rod rod_of(const PartSheet& sheet);
// Undersides and tops of all parts that lie level, plumb above the lowest point of the piece.
Rod heights_of(const Context& context);

}  // namespace splay::sheets
