// Two plans of one piece laid side by side: which parts are not as they were, and in what.
#pragma once

#include <string>
#include <vector>

#include "fabrication/plan.h"

namespace splay::fabrication {

// A kind of part that changed, came or went. Parts are matched by their names, whatever their
// marks.
struct PartChange {
  std::string mark, mark_before;  // "" where there is none
  std::string name;               // of the parts, with commas
  bool is_new = false, is_gone = false;
  std::vector<std::string> what;   // "length 48 to 50 in"
  std::vector<std::string> steps;  // ids of the new plan's steps that are set otherwise
};

// One entry for each row of the new plan that changed, then one for each that is gone. Lengths are
// compared to 1e-6 mm and solids by volume to 1e-3 mm3, steps by their printed settings; a new mark
// alone is a change too, since the old pages show the old one.
std::vector<PartChange> part_changes(const Plan& before, const Plan& now);

}  // namespace splay::fabrication
