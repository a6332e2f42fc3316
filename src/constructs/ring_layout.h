// A ring: members laid round a polygon, each with its own breadth inwards, joined at the corners.
//
// One mechanism for the panels of a case (breadth = thickness, running deep) and the members of a
// face frame (breadth = width, running thin). Everything here is in the polygon's plane.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/polygon.h"

namespace splay::constructs {

enum class CornerKind { mitre, butt };

struct RingCorner {
  CornerKind kind = CornerKind::mitre;
  bool before_through = true;  // butt: the side before the corner runs through, else the one after
};

// A line in the polygon's plane with its normal: the points p with dot(n, p) == d.
struct Line2 {
  Vec2 n;
  double d = 0;
};

struct RingMember {
  Vec2 outer_1, outer_2;  // the outside edge, anticlockwise
  Vec2 inner_1, inner_2;  // the inside edge, same sense
  Vec2 direction;         // unit, from 1 to 2
  Vec2 out;               // unit, outwards
  Line2 outside, inside;  // normals outwards and inwards
  // Between the lines before and after the trimming of corners, the furthest any end reaches.
  double from = 0, to = 0;  // along direction, measured from outer_1
  double corner_angle = 0;  // inside angle at corner 2, radians
};

struct Ring {
  std::vector<RingMember> members;
  Polygon outer, inner;
};

// Corner i stands at the start of side i, between side i-1 and side i. Nothing when the breadths
// leave no inside.
std::optional<Ring> lay_ring(const Polygon& outer, const std::vector<double>& breadths);

// The line of the mitre at corner i, normal pointing from side i-1 into side i.
Line2 mitre_line(const Ring& ring, std::size_t corner);

}  // namespace splay::constructs
