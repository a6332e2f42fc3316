// A part as the lines that stand on a flat drawing of it at its true size, found from its solid.
//
// The part's own frame: millimetres, x along the length, y across, seen from the show face, whose
// height is 0; heights below it are negative.
#pragma once

#include <vector>

#include "geometry/hidden_lines.h"
#include "geometry/polygon.h"
#include "parts/part.h"

namespace splay::writers {

enum class LoopKind { show_face, back_face, floor_from_show, floor_from_back };

// One closed loop of a flat face square to the thickness.
struct Loop {
  LoopKind kind = LoopKind::show_face;
  double height = 0;  // of the face: 0 on the show face, minus the thickness on the back
  Polygon corners;
};

// A loop that is a circle.
struct Round {
  LoopKind kind = LoopKind::show_face;
  bool hole = false;  // its mouth or its floor; else the outline of a round face
  double height = 0;
  Vec2 centre;
  double radius = 0;
};

struct PartOutline {
  std::vector<Loop> loops;
  std::vector<Round> rounds;
  std::vector<ViewLine> lines;  // every edge, as the show face is seen: visible and hidden
  Vec2 size;                    // length and width; the low corner is the origin
};

PartOutline outline_of(const parts::Part& part);

}  // namespace splay::writers
