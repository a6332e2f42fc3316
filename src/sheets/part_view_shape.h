// The shape of a part as its views need it: surfaces that cuts left, corners to measure from, what
// is worked into which side. All in the part frame.
#pragma once

#include <optional>
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

// The largest piece of a trench's own floor, between its walls and stops: other trenches of one
// depth lie in the same plane. Null when nothing is left of it.
const Face* floor_of(const Boundary& boundary, const parts::Trench& trench);
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

// How a trench lies in its side: the axis square to its run, and its walls towards the low and the
// high end of that axis. One wall only: it stands open at the other. A wall that bounds its ends is
// not among them.
struct Trough {
  Vec3 axis;  // x for a housing, y or z for a groove
  std::optional<Plane> low, high;
  bool along_length() const { return axis.x == 0; }
  std::vector<Plane> walls() const;
};
Trough trough_of(const parts::Operation& trench);

}  // namespace splay::sheets
