// A straight member: a leg, a brace, an apron, a stick. It is laid out from a reference line, its
// long sides stand at stated distances from that line, and its ends are cut where the author says.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "parts/builder.h"

namespace splay::constructs {

// A plane of the finished member, in the world, normal out of the wood.
struct MemberSide {
  Plane plane;
  std::string name;  // "inner edge"
};

// An end lies on a plane, or is left square so far past the reference line's end, for a joint to
// trim.
struct MemberEnd {
  std::optional<Plane> plane;
  std::string name;
  double past = 0;
};

struct Member {
  std::string name, stock;
  Vec3 from, to;  // the reference line
  Vec3 axis;      // what the blank is ripped along: the part's x, from `from` towards `to`
  Vec3 facing;    // where the show face looks, made square to the axis
  std::vector<MemberSide> sides;
  MemberEnd from_end, to_end;
  std::array<std::string, 6> side_names;
};

// Lays down the smallest squared blank that holds the member and cuts every side that isn't one of
// the blank's own: "taper, inner edge" when it runs at an angle to the axis, "bevel, top edge" when
// it only leans about it. Taper angles are stated as named angles and remarks. Returns -1 when the
// sides and ends enclose nothing.
int add_member(parts::Builder& builder, const Member& member);

// The plane that holds the points a and b and the direction `run`, normal nearest to `out`.
Plane side_plane(Vec3 a, Vec3 b, Vec3 run, Vec3 out);

// The four sides of a section square to the reference line, by their distances from it. A side
// whose two distances differ tapers; `straight` is the length at its broader end where it doesn't.
struct SquareSection {
  struct Distance {
    double at_from = 0, at_to = 0;
  };
  Distance y_low, y_high, z_low, z_high;
  double straight = 0;
};
// `line`: origin at the reference line's start, x along it; side names in the order of parts::Side.
std::vector<MemberSide> square_sides(const Rigid& line, double length, const SquareSection& section,
                                     const std::array<std::string, 6>& names);

// A member of one rectangular section with the reference line in its middle, ends still open.
struct Bar {
  std::string name, stock;
  Vec3 from, to, facing;
  double width = 0, thickness = 0;
  std::array<std::string, 4> long_sides;  // y_low, y_high, z_low, z_high
};
Member bar_member(const Bar& bar);

}  // namespace splay::constructs
