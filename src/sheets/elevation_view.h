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

struct Elevation {
  std::string title;
  View view;
  std::vector<ViewLine> lines;  // empty for a section
  std::optional<drafting::SectionCut> section;
  ink::Rect box;  // view plane
  std::vector<drafting::Row> below, above, left, right;
  std::vector<Sloped> sloped;
  std::vector<parts::NamedAngle> angles;
  std::optional<CutLine> cut_line;
  bool with_hidden = true;
};

struct DrawnElevation {
  drafting::Items items;
  drafting::Placement placement;
  ink::Rect extent;  // of everything, title included
};
// Drawn with the view plane's origin at the paper's.
DrawnElevation draw(const Context& context, const Elevation& elevation, drafting::Scale scale);

// Front, plan, side and the section that crosses most parts, every length and angle of the assembly
// given to the first of them in which it is true; overall sizes where the assembly names none.
struct ElevationSet {
  Elevation front, plan, side, section;
  std::vector<parts::NamedAngle> untrue;  // angles that no view shows in their true size
};
ElevationSet elevations_of(const Context& context);

}  // namespace splay::sheets
