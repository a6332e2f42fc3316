// The shape of a part as its views need it: surfaces that cuts left, corners to measure from, what
// is worked into which side. All in the part frame.
#pragma once

#include "sheets/part_view_facts.h"

namespace splay::sheets {

// A flat surface across or along the board that a cut left and that is still there, with how it
// reads on the saw: end and edge cuts, shoulders of tenons, the slant of a corner cut off.
struct Cut {
  const parts::Operation* operation = nullptr;
  bool end = true;  // across the board, else along it
  Plane plane;
  fabrication::CutReport report;
  Box of;                 // round the largest piece of the surface
  bool bevelled = false;  // the blade is tilted
  bool mitred = false;    // the gauge is turned
  Vec3 middle() const { return (of.low + of.high) * 0.5; }
};
std::vector<Cut> standing_cuts(const PartSheet& sheet);

// The largest face of the boundary that lies on the plane, whichever way it faces; null when none
// does.
const Face* face_on(const Boundary& boundary, const Plane& plane);
Box box_of(const Face& face);

// The side of the box that is seen against a direction.
parts::Side side_seen(Vec3 toward);

// Corners of the surfaces that make up a side of the board, its tapers included; not those of what
// is worked into it, except where that breaks the side, and none on curves.
std::vector<Vec3> corners_on(const PartSheet& sheet, parts::Side side);

// What is worked into a side: housings, grooves, rabbets, laps and mortises.
struct Opening {
  const parts::Operation* operation = nullptr;
  Vec3 at;  // its middle
};
std::vector<Opening> openings_on(const PartSheet& sheet, parts::Side side);

// Those of them that have walls and a floor, so that a section shows them.
std::vector<const parts::Operation*> trenches_on(const PartSheet& sheet, parts::Side side);
bool along_length(const parts::Operation& trench);  // its walls run along x, not across
Vec3 across_axis(const parts::Operation& trench);   // square to its walls in the side: x, y or z

}  // namespace splay::sheets
