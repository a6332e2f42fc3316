// Curves in flat outlines: rounded corners and arched edges. A curve is cut as facets whose chords
// are nowhere more than 0.01 mm off it and which count as one smooth surface: views draw it without
// its facets' edges.
#pragma once

#include <string>
#include <vector>

#include "geometry/polygon.h"
#include "model/field.h"
#include "parts/builder.h"

namespace splay::constructs {

// The ends of the facets of an arc about `centre`, from the angle `from` through `turn` (radians,
// anticlockwise); their count is a multiple of `multiple`.
std::vector<Vec2> arc_points(Vec2 centre, double radius, double from, double turn,
                             int multiple = 1);

// A corner of a polygon rounded: from the tangent point on the side before it to the one after.
struct Rounding {
  Vec2 centre;
  double radius = 0, from = 0, turn = 0;
  double tangent = 0;  // from the corner to where the curve begins
};
// One for each corner of a convex anticlockwise polygon; empty when a side is too short for its two
// curves and 1 mm between them, or a corner turns inwards.
std::vector<Rounding> round_corners(const Polygon& polygon, double radius);

// Cuts the corners off the parts that reach into them. `plane` is the place of the section's plane,
// in which a polygon's (x, y) is (x, z). Says the radius in a remark on every part it cuts.
void cut_roundings(parts::Builder& builder, const std::vector<int>& parts,
                   const std::vector<Rounding>& corners, const Rigid& plane);

// An edge hollowed by a circular arc, as an author says it.
struct EdgeArch : model::Fields {
  explicit EdgeArch(Length usual_flat) : flat(usual_flat) {}
  model::Given<Length> rise{Length{0}}, flat;
  void fields(model::FieldVisitor& visit) override;
};

// The edge it is cut into.
struct ArchedEdge {
  Vec3 from, to;     // world: its ends
  Vec3 in;           // unit: from the edge into the wood, square to it
  double width = 0;  // of the wood before it is cut, mm
  std::string name;  // what the edge is called: "lower edge"
};

// The radius of the arc over chord c with rise h: (c*c/4 + h*h) / (2*h), the circular segment of
// any handbook.
double arch_radius(double chord, double rise);

// Cuts the arch and says rise, chord and radius in a remark. Nothing for one that isn't given. ""
// or why it can't be: its straight ends meet, it rises more than half its chord, or too little wood
// is left over its crown.
std::string cut_arch(parts::Builder& builder, int part, const EdgeArch& arch,
                     const ArchedEdge& edge);

}  // namespace splay::constructs
