// The joints of a piece by what they are, and what is said beside a drawing of one. Internal to
// src/sheets.
#pragma once

#include <string>
#include <vector>

#include "sheets/sheet.h"

namespace splay::sheets {

// Joints that are alike or mirror images: kind, angle, and what is cut of parts of the same
// section.
struct JointGroup {
  std::vector<const parts::Joint*> joints;  // the first is drawn
};
struct JointGroups {
  std::vector<JointGroup> drawn;
  std::vector<std::string> plain;  // "glued: edge band to panel and 3 alike"
};
JointGroups joint_groups(const fabrication::Plan& plan);

// Which parts it joins and where else; what is cut of each with settings, depths and lengths; how
// well it closes.
std::vector<std::string> joint_words(const Context& context, const JointGroup& group);

}  // namespace splay::sheets
