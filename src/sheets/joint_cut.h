// A joint cut open: the plane that shows it, what is cut of each part, and the stretch worth
// drawing. Internal to src/sheets. View plane millimetres.
#pragma once

#include <vector>

#include "drafting/hatch.h"
#include "geometry/hidden_lines.h"
#include "parts/part.h"

namespace splay::sheets {

struct Line2 {
  Vec2 a, b;
};

// A fitting that lies in the plane.
struct CutFitting {
  const parts::Fitting* fitting = nullptr;
  Vec2 from, to;    // its axis
  double half = 0;  // of what is seen of it across its axis
};

struct JointCut {
  View view;
  Plane plane;                         // its normal is view.toward
  std::vector<int> parts;              // those that are cut, in the joint's order
  std::vector<drafting::Loops> loops;  // of each of them
  std::vector<Line2> contacts;         // where surfaces meet that must
  std::vector<CutFitting> fittings;
  ink::Rect window;
};

// Whether anything is cut or fitted for the joint: else there is nothing to draw enlarged.
bool worked(const parts::Assembly& assembly, const parts::Joint& joint);

// The cuts that show a joint. Where sheets of wood meet, one at right angles to the line in which
// they meet; where one runs into or over the other by a tenon or a lap, one in the plane of both
// their lengths and one across; where boards' ends are cut into each other at a corner, one across
// the corner and one that shows the fingers' sides, no more of them than tell the rest. Empty when
// no plane shows any surface that meets.
std::vector<JointCut> joint_cuts(const parts::Assembly& assembly, const parts::Joint& joint);

}  // namespace splay::sheets
