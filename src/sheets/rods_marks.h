// What a setting-out strip (the joiner's rod) carries. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "sheets/part_view_facts.h"

namespace splay::sheets {

// What is at a mark: "housing J, inside", and in which parts, by their marks.
struct RodName {
  std::string what;
  std::vector<std::string> of;
};

// A line squared over a strip at its running length. Where a cut crosses the part at an angle, its
// ends on the front and on the back edge are two marks.
struct RodMark {
  double at = 0;  // mm from the strip's datum
  std::vector<RodName> names;
  bool centre = false;
  // "housing J"; with the parts in front where they aren't all of the strip's.
  std::string text(const std::vector<std::string>& all) const;
};

struct Rod {
  std::string name;             // "left panel", "Heights"; of the first part
  std::vector<std::string> of;  // marks of the parts it is for; none: for the whole piece
  std::string along;            // what the datum is: "from the foot"
  std::string on;               // the one side that is worked into, "" when more or the show face
  double length = 0;
  bool needed = false;         // it says what no gauge set from an end does
  std::vector<RodMark> marks;  // ascending, those at one place joined
};

// Shoulders, walls of housings and laps, mortises and holes along the part's length, measured on
// the side they are worked into; ends on the show face and where a bevel makes the other face
// differ. Without marks when there is nothing between the ends.
Rod rod_of(const PartSheet& sheet);
// Undersides and tops of all parts that lie level, plumb above the lowest point of the piece.
Rod heights_of(const Context& context);
// Parts of one length, measured from the same end, on one strip, as long as its marks stay apart.
std::vector<Rod> shared(std::vector<Rod> rods);

// Where a rod that takes several lengths begins, is joined and ends, mm: about equal lengths of at
// most `each`, and where no mark stands in the way of the join's own sign, if there is such a place
// near by.
std::vector<double> joins_of(const Rod& rod, int count, double each);

}  // namespace splay::sheets
