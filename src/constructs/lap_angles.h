// What a maker sets a lap out by: the angle of its walls on the face, off square and off each edge.
#pragma once

#include <string>
#include <vector>

#include "parts/builder.h"

namespace splay::constructs {

// One edge of the face that a lap is cut from. `taper`: its angle to the part's length;
// `off_square`: how far the lap's walls are from square to it. Radians, 0 to half pi.
struct LapEdge {
  std::string name;
  double taper = 0, off_square = 0;
  bool straight() const { return taper < 1e-9; }
};

struct LapLines {
  double off_square = 0;  // to the part's length
  std::vector<LapEdge> edges;
  bool parallel = true;  // both walls run alike
};

// Of a lap: a notch with walls in its trench (part frame).
LapLines lap_lines(const parts::Part& part, const parts::Operation& lap);

// Remark and measures for the lap of `part` that takes `other`: its angles, the edge to set it out
// from, and how far its walls are along that edge.
void state_lap(parts::Builder& builder, int part, int other);

}  // namespace splay::constructs
