// Shared by the geometry tests.
#pragma once

#include "geometry/solid.h"

inline splay::Region box_region(splay::Vec3 low, splay::Vec3 high) {
  return {{{1, 0, 0}, high.x},  {{-1, 0, 0}, -low.x}, {{0, 1, 0}, high.y},
          {{0, -1, 0}, -low.y}, {{0, 0, 1}, high.z},  {{0, 0, -1}, -low.z}};
}
