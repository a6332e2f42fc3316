// Closed polygons in the plane, given by their corners; the last corner joins the first.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "geometry/vec.h"

namespace splay {

using Polygon = std::vector<Vec2>;

double signed_area(std::span<const Vec2> polygon);  // positive when anticlockwise
bool is_simple(std::span<const Vec2> polygon);      // no edge touches another but its neighbours
bool contains(std::span<const Vec2> polygon, Vec2 point);

// Where the endless lines a + s*da and b + t*db meet; nothing when they are parallel.
std::optional<Vec2> meet(Vec2 a, Vec2 da, Vec2 b, Vec2 db);

// Each edge i (corner i to i+1) moved to its left by distances[i] (inwards for an anticlockwise
// polygon when positive) and met with its neighbours again. Nothing when neighbouring edges are
// parallel or an edge would vanish or turn round.
std::optional<Polygon> offset_edges(std::span<const Vec2> polygon,
                                    std::span<const double> distances);

// The convex hull, anticlockwise from the lowest x (A.M. Andrew, "Another efficient algorithm for
// convex hulls in two dimensions", Information Processing Letters 9, 1979). A corner stays when the
// parallelogram of the sides beside it is larger than `straight`.
Polygon convex_hull(std::vector<Vec2> points, double straight = 0);

// A simple anticlockwise polygon as convex pieces that share whole edges, each anticlockwise.
std::vector<Polygon> convex_pieces(std::span<const Vec2> polygon);

// What of a polygon lies where dot(inward, p) >= at (Sutherland and Hodgman, 1974). Of one that
// isn't convex the pieces hang together by edges along the border.
Polygon clipped(std::span<const Vec2> polygon, Vec2 inward, double at);

// How much of the convex `subject` lies in the convex anticlockwise `window`; never negative.
double shared_area(Polygon subject, const Polygon& window);

// The part of a segment a..b inside the polygon, as parameter intervals of [0,1], ascending.
struct Interval {
  double from = 0, to = 0;
};
std::vector<Interval> clip_segment(std::span<const Vec2> polygon, Vec2 a, Vec2 b);

}  // namespace splay
