// The order in which the faces of a toned picture are painted, each over those before it. Internal
// to src/geometry.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "geometry/occluders.h"
#include "geometry/polygon.h"

namespace splay {

struct FaceImage {
  std::vector<Polygon> loops;
  Vec2 low{1e300, 1e300}, high{-1e300, -1e300};
  double a = 0, b = 0, c = 0;  // depth w = a*x + b*y + c
  double furthest = 1e300;
};

// A face turned to the eye.
struct Front {
  FaceImage image;
  const Face* face = nullptr;
  std::int32_t solid = 0;
  std::vector<std::int32_t> hiders;  // occluders that hide parts of it
  bool hidden = false;               // one cell hides all of it
};

// Indices of the faces that are not hidden, in an order in which as few as may be are painted after
// what hides them; of each only those hiders are left that must be cut out of it. At every point of
// the image the nearest face belongs to a cell that hides all faces behind it; where it is painted
// after one of them, that one needs no cut. `fronts`: furthest first.
std::vector<std::size_t> order_of_painting(std::span<const Solid> solids, const View& view,
                                           const Occluders& occluders, std::vector<Front>& fronts);

}  // namespace splay
