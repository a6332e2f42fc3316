// One elevation, plan or section of the whole piece with what is measured in it. Internal to
// src/sheets.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/dimension.h"
#include "drafting/hatch.h"
#include "drafting/scale.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// A line across a view where a section is taken, and the direction its eye looks.
struct CutLine {
  Vec2 a, b;  // view plane
  Vec2 looking;
  std::string letter;
};

struct Sloped {
  Vec2 a, b;  // view plane
};

// A door as it hangs: the middle of its hinge side and its two far corners, view plane.
struct DoorLines {
  Vec2 hinge, upper, lower;
};

// A door whose line stands along the line of sight: the corner of its leaf that comes out furthest,
// how it turns (anticlockwise positive), and the leaf stood open. View plane.
struct DoorSwing {
  Vec2 hinge, tip;
  double radians = 0;
  std::vector<Vec2> open;  // outline
};

struct Elevation {
  std::string title;
  View view;
  std::vector<ViewLine> lines;  // empty for a section
  std::optional<drafting::SectionCut> section;
  ink::Rect box;  // view plane
  std::vector<drafting::Row> below, above, left, right;
  std::vector<Sloped> sloped;
  std::vector<parts::NamedAngle> angles;
  std::vector<CutLine> cut_lines;
  std::vector<DoorLines> doors;
  std::vector<DoorSwing> swings;
  std::vector<ink::Rect> drawers;  // their fronts, view plane
  bool with_hidden = true;
};

struct DrawnElevation {
  drafting::Items items;
  drafting::Placement placement;
  ink::Rect extent;  // of everything, title included
};
// Drawn with the view plane's origin at the paper's.
DrawnElevation draw(const Context& context, const Elevation& elevation, drafting::Scale scale);

// Front, plan, side and two sections: A–A seen as the front is, B–B as the side. Every length and
// angle of the assembly is given to one of them in which it is true; overall sizes are added where
// the assembly names none.
struct ElevationSet {
  Elevation front, plan, side, section_a, section_b;
};
ElevationSet elevations_of(const Context& context);

// A right angle is drawn as one and needs no figure (general drawing practice).
bool is_square(const parts::NamedAngle& angle);

}  // namespace splay::sheets
