// Loops that touch themselves, made simple. Internal to src/geometry.
#pragma once

#include <vector>

#include "geometry/polygon.h"

namespace splay {

// The loop without corners that stand out by less than `speck` mm, parted where it comes within
// that of itself. Parts keep their sense: a clockwise part of an anticlockwise loop is a hole.
std::vector<Polygon> parted_at_touches(Polygon loop, double speck);

}  // namespace splay
