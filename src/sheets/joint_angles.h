// The angles that a cut through a joint shows true. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "sheets/joint_cut.h"
#include "sheets/sheet.h"

namespace splay::sheets {

struct JointAngle {
  std::string name;   // "corner", "bevel of A"
  Vec2 at, from, to;  // view plane; two directions
  double radians = 0;
};

// Measured in the cut itself: the corner in which the parts' faces meet at the end of the longest
// line of contact, and what this line is off square to each part's face. Square ones are left out.
std::vector<JointAngle> joint_angles(const Context& context, const JointCut& cut);

}  // namespace splay::sheets
