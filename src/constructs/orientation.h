// Which way a straight part's show face looks, and how a line leans.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "constructs/construct.h"

namespace splay::constructs {

enum class Facing { by_itself, front, back, left, right, top, underside };

// The two fields that fix how a part lies about its length.
struct Orientation {
  model::Given<Facing> facing{Facing::by_itself};
  model::Given<Angle> roll;
  void fields(model::FieldVisitor& visit);
  // x from one point to the other, z towards the show face. Nothing when that looks along the
  // line. By itself a show face looks to the front, or up when the line runs more to the back than
  // in any other direction.
  std::optional<Rigid> place(Vec3 from, Vec3 to) const;
};

// "foot" and "head" for a line that rises steeper than 45 degrees, else "left end" and "right end",
// or "front end" and "back end" when it runs more to the back than sideways; in the line's order.
std::array<std::string, 2> end_names(Vec3 direction);

// How a line leans, all in radians. The sight angles are what the lean looks like from the front
// and from the side: tan(true)^2 = tan(front)^2 + tan(side)^2, the plan direction (the sight line)
// has tan(plan) = tan(side) / tan(front), and a line is as much longer than it is high as `factor`
// says, 1 / cos(true). Standard in chair-making texts (from memory).
struct Lean {
  double from_plumb = 0, front = 0, side = 0;  // sizes, without a sense
  double plan = 0;                             // 0 across the front, a quarter turn to the back
  double factor = 1;
};
Lean lean_of(Vec3 line);

// Named angles of the lean as each view shows it, the true one, and one remark with all of them.
// Does nothing for a plumb line.
void state_lean(parts::Builder& builder, int part, Vec3 foot, Vec3 head);

// Remark: the lines that an end cut draws on the face and on the edge, off square.
void state_end_lines(parts::Builder& builder, int part, const Plane& world, const std::string& end);

std::string degrees_of(double radians);        // "14.04°"
std::string off_square_words(double radians);  // "7.00° off square", or "square"

}  // namespace splay::constructs
