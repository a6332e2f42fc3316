// Flat pieces of any outline.
#pragma once

#include <string>

#include "geometry/polygon.h"
#include "parts/builder.h"

namespace splay::constructs {

// A flat piece with the outline `polygon` (section coordinates, anticlockwise) between y_front and
// y_back; `up` is its grain. Edges are cut one by one, inside corners as notches.
struct Plate {
  std::string name, stock;
  Polygon polygon;
  double y_front = 0, y_back = 0;
  Vec2 grain{0, 1};
  parts::ShowFace show = parts::ShowFace::high_z;
  Rigid place{};  // of the section's plane in the world
};
int add_plate(parts::Builder& builder, const Plate& plate);

}  // namespace splay::constructs
