// WAIST 1: what was built. Parts, their operations and their joints, with nothing left of what they
// were built for: after this header nobody asks whether a part is a shelf.
//
// World frame of a piece: x to the right and z up as the front is seen, y from the front to the
// back; millimetres.
// Part frame: x along the length (and the grain, where the stock has one), y across the width,
// z through the thickness. The finished part's bounding box has its low corner at the origin. The
// face z = size.z is the show face.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.h"
#include "geometry/solid.h"

namespace splay::parts {

// The six sides of the bounding box.
enum class Side { x_low, x_high, y_low, y_high, z_low, z_high };

enum class OperationKind {
  end_cut,   // one plane across the length: square, mitred, bevelled or compound
  edge_cut,  // one plane along the length
  housing,   // trench across a face, takes another part's end
  rabbet,    // step along an edge
  groove,    // trench along a face, takes another part's edge
  notch,     // open corner or lap
  shoulder,  // wood beside a tenon, down to one plane across the part (`cut`)
  mortise,   // a pocket or slot with straight walls
  hole,
  outline  // inside corner or curve in the flat outline
};

// A trench's own surfaces, in the part frame. All normals point out of the wood that stays, into
// the trench.
struct Trench {
  Side open = Side::z_low;  // the face it is cut from
  Plane floor;
  std::vector<Plane> walls;  // one for a rabbet, two for a housing or groove
  std::vector<Plane> stops;  // ends that don't run out
  double shallow = 0;        // depth square to the open face at its shallower wall
  double deep = 0;           // and at its deeper one
};

// One act of shaping: the wood inside `removed` goes. An end or edge cut removes what is outside
// one plane, so `removed` is that plane flipped and `cut` is the surface it leaves.
struct Operation {
  OperationKind kind = OperationKind::end_cut;
  std::string name;   // "mitre to top", "housing for upper shelf"
  std::string joint;  // the joint it belongs to, or ""
  Region removed;     // part frame
  Plane cut;          // end_cut, edge_cut, shoulder: normal out of the wood that stays
  Trench trench;      // housing, rabbet, groove, notch
};

enum class ShowFace { high_z, either };  // either: both faces may be seen, the part may be turned
enum class Grain { along_x, none };

// A length of a part that a maker measures and that no bounding box shows: "outside, top edge".
struct Measure {
  std::string name;
  double mm = 0;
};

struct Part {
  std::string name;  // unique in the assembly
  std::string stock;
  int item = 0;  // index of the project's item it came from
  Vec3 size;     // finished bounding box: length, width, thickness
  Solid body;    // part frame
  Solid world;   // the same, placed
  Rigid place;   // part frame to world
  ShowFace show = ShowFace::high_z;
  Grain grain = Grain::along_x;
  // What a maker calls each side, in the order of Side: {"foot", "head", "front edge", ...}.
  std::array<std::string, 6> side_names;
  std::vector<Operation> operations;
  std::vector<Measure> measures;
  std::vector<std::string> remarks;  // for the part view and the cut list
};

// Two surfaces that must meet: the plane they share, in the world.
struct Mate {
  int a = 0, b = 0;  // indices into Assembly::parts
  Plane plane;       // normal out of a, into b
};

// When a joint is made: in its turn as the piece goes together, or before any of that, as edging is
// glued to its panel, whose ends are cut through both or were cut before.
enum class Made { in_turn, before_cuts, before_assembly };
inline constexpr std::array<std::string_view, 3> made_words{"in its turn", "before the cuts",
                                                            "before assembly"};

struct Joint {
  std::string name;  // unique in the assembly: "left to top"
  std::string kind;  // the joint's word: "mitre", "butt", "housing", ...
  std::vector<int> between;
  double dihedral = 0;  // radians, between the show sides or along the members; 0 when not meant
  std::vector<Mate> mates;
  Made made = Made::in_turn;  // of edging the first of `between` is the strip
};

// A face of the piece whose corners can be measured on the finished work: the check of squareness
// or lean after assembly.
struct CheckLoop {
  std::string name;           // "front of body, outside"
  std::vector<Vec3> corners;  // world, in order
};

// A named angle of the design, for elevations: where it is seen and between which two directions.
struct NamedAngle {
  std::string name;   // "lean", "corner"
  Vec3 at, from, to;  // world point and two directions
  double radians = 0;
};

// A length of the design worth dimensioning in an elevation; sheets choose the view it is true in.
struct KeyLength {
  std::string name;   // "width at the foot"
  Vec3 from, to;      // world
  std::string chain;  // those of one chain are drawn in one row
  bool overall = false;
};

// Something bought or made loose that holds parts together or lets them move, with its place.
struct Fitting {
  std::string kind;  // "dowel", "loose tenon", "spline", "screw", "hinge", ...
  std::string size;  // as it is bought, in its native unit: "8 x 40 mm", "#8 x 1 1/4 in"
  Vec3 at, axis;     // world: where it enters, and the direction it goes
  double diameter = 0, length = 0;  // mm
  std::vector<int> parts;           // that it touches, the one it enters first in front
  std::string joint;                // the joint it belongs to, or ""
};

// Parts that turn together about a line: a door about its hinges. Drawn and cut closed.
struct Swing {
  std::string name;        // of the door
  std::vector<int> parts;  // the one that carries the hinges first
  Vec3 at, axis;           // world: a point of the line and its direction, upwards
  bool clockwise = false;  // opens so as seen against the axis (from above when it is plumb)
  double opens = 0;        // radians: how far it has to turn
  SourceSpan span{};       // where the author asked for it
  // How its parts move when it is opened by so many radians.
  Rigid motion(double open) const { return turn_about(at, axis, clockwise ? -open : open); }
};

// Parts that run in and out together: a drawer. Drawn and cut shut.
struct Slide {
  std::string name;        // of the drawer
  std::vector<int> parts;  // all that move
  Vec3 way;                // world, unit: how it comes out
  double travel = 0;       // mm: how far it has to come out
  SourceSpan span{};       // where the author asked for it
};

struct Assembly {
  std::vector<Part> parts;
  std::vector<Fitting> fittings;
  std::vector<Swing> swings;
  std::vector<Slide> slides;
  std::vector<Joint> joints;
  std::vector<CheckLoop> loops;
  std::vector<NamedAngle> angles;
  std::vector<KeyLength> lengths;
  // Parts that were to be joined and could not be, as a finding says: what overlaps or floats there
  // follows from that.
  std::vector<int> left_apart;
  std::vector<Finding> findings;  // what the constructs and the audit had to say
};

// The box round all parts, in the world; empty when there are none.
Box bounds(const Assembly& assembly);

// Directions of the world in a part's frame: which local axis faces the front, the top.
Vec3 local_front(const Part& part);
Vec3 local_up(const Part& part);
const std::string& side_name(const Part& part, Side side);
Side opposite(Side side);
Vec3 outward(Side side);
// The side of the bounding box that looks to the front of the piece when one does, else y_low.
Side front_edge(const Part& part);
// The sides that figures on a side are measured from: along it, then across it. They are two of the
// low end of the length, the front edge and the show face.
std::array<Side, 2> datums(const Part& part, Side side);

}  // namespace splay::parts
