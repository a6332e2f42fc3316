// What carries a level part and what stiffens it along its length. Internal to src/fabrication.
#pragma once

#include <string>
#include <vector>

#include "fabrication/bending.h"

namespace splay::fabrication {

struct Plan;

// Of a shelf with what is joined to it over its whole length: lengths in mm, E I and G J in N mm2.
// Counted are parts glued along it (a back in its rabbet too; in a groove they stand dry), screwed
// to it by screws no further apart than a quarter of the span, and what it lies on along one edge.
// Each bends for itself and only goes down with the shelf, so that screws do as well as glue; a
// board glued on its whole face is one with it.
struct ShelfSection {
  Slab slab;                           // its low edge is that of the part's own y
  std::vector<std::string> joined;     // marks of the parts that are counted
  std::vector<std::string> uncounted;  // and of those whose own stiffness isn't known
  bool known = false;                  // its own stiffness is
};

// The widest clear stretch along a part between what carries it at its ends or from below; 0 with
// fewer than two supports and where something carries it along all of its length and width.
double clear_span(const Plan& plan, int part);

ShelfSection shelf_section(const Plan& plan, int part, double span);

}  // namespace splay::fabrication
