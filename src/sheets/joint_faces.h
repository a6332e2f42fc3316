// What a cut through a joint is measured by: faces seen on edge, and where they stand along a row.
// Internal to src/sheets. View plane millimetres unless said otherwise.
#pragma once

#include <optional>
#include <vector>

#include "sheets/joint_cut.h"

namespace splay::sheets {

// Faces seen on edge that all lie square to one direction.
struct Faces {
  Vec2 along;  // a unit vector that points to the right, or straight up
  std::vector<Line2> lines;
};

// All faces that are seen in the cut's window for at least `shortest`, by the direction they are
// measured in, the directions with most of them first.
std::vector<Faces> faces_on_edge(const JointCut& cut, double shortest);

// Points on the faces in the order in which a row measures them, of each face the end that lies
// furthest along `out`; points less than `step` apart count as one. No more than `most` places;
// none when there is a single one.
std::vector<Vec2> stations(const Faces& faces, Vec2 out, double step, std::size_t most);

// How many places at least `step` apart the points have along a direction they are sorted by.
std::size_t count_apart(const std::vector<Vec2>& points, Vec2 along, double step);

// A place within the loops as far from their lines as is found on a grid of 14 steps from (0, 0) to
// `far_corner`, and over 0.3 mm away; loops and places in paper millimetres.
std::optional<Vec2> deep_inside(const std::vector<drafting::Loops>& shown, Vec2 far_corner);

}  // namespace splay::sheets
