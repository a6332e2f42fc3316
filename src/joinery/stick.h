// A straight part as a joint sees it: its body in the world, its centre line and its long sides;
// and how two of them meet. Lengths in mm, everything in the world unless said otherwise.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "parts/builder.h"

namespace splay::joinery {

struct Stick {
  int index = 0;
  std::string name;
  Rigid place;
  Solid body;
  Vec3 centre;               // of the body's bounding box in the part frame
  Vec3 along;                // the part frame's x
  std::vector<Plane> hull;   // the planes that bear a face and have the whole body inside
  std::vector<Plane> sides;  // those of them that run along the length
};
Stick stick(const parts::Builder& builder, int part);

// The side (of the hull: the plane) that looks most nearly along `direction`.
const Plane& side_towards(const Stick& stick, Vec3 direction);
// The same at one place: where a side changes its slope on the way, as a taper that ends does, the
// part of it that a line from `at` along `direction` meets.
const Plane& side_at(const Stick& stick, Vec3 at, Vec3 direction);
const Plane& hull_towards(const Stick& stick, Vec3 direction);

// Where the centre line of the guest enters the host.
struct Meeting {
  Plane face;         // of the host, out of it
  Plane far_face;     // where the line leaves the host again
  Vec3 at;            // on the face
  Vec3 in;            // unit, along the line into the host
  double room = 0;    // along the line from face to far face
  double reach = 0;   // how far the guest goes on past the face, along the line
  bool along = true;  // the line is the guest's length; false: across its width
};
enum class Lines { length_only, length_or_width };
// "" and the meeting, or a sentence that says why there is none.
std::string find_meeting(const Stick& host, const Stick& guest, Lines lines, Meeting& meeting);

// The angle between a line and a plane's surface, radians, 0 to half pi.
double angle_to_surface(Vec3 line, const Plane& plane);

// The angle at which two lines cross, radians, 0 to half pi.
double crossing_angle(Vec3 a, Vec3 b);

// Least and greatest extent of the guest's section by a plane, along a direction; {0, 0} when the
// plane misses it.
std::array<double, 2> section_extent(const Stick& guest, const Plane& plane, Vec3 direction);

// Is there wood all over the stick's section right behind the cut? `line` is the direction that the
// section is across of.
bool whole_behind(const Stick& stick, const Plane& cut, Vec3 line);

// Where a line through a point inside a body leaves it in the direction `way`: the distance and the
// plane there.
struct Exit {
  double distance = 0;
  Plane plane;
};
Exit way_out(const Solid& body, Vec3 at, Vec3 way);

// How much of a bounded region is not wood of the body, mm3.
double volume_outside(const Region& region, const Solid& body);

}  // namespace splay::joinery
