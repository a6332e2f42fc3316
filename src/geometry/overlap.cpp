#include <algorithm>

#include "base/index.h"
#include "base/tolerance.h"
#include "geometry/solid.h"

namespace splay {
namespace {

Box box_of(const Solid& solid, const Cell& cell) {
  Box box;
  for (const CellFace& face : cell.faces)
    for (const std::int32_t v : face.loop) box.add(solid.vertices()[index(v)]);
  return box;
}

// Does a face of `other` have all of `cell` in front of it? Then a cut leaves nothing of it inside.
bool parted(const Solid& solid, const Cell& cell, const Solid& others, const Cell& other) {
  return std::ranges::any_of(other.faces, [&](const CellFace& border) {
    const Plane& table = others.planes()[index(border.plane)];
    const Plane plane = border.side > 0 ? table : table.flipped();
    for (const CellFace& face : cell.faces)
      for (const std::int32_t v : face.loop)
        if (plane.distance(solid.vertices()[index(v)]) < -tolerance::on_plane) return false;
    return true;
  });
}

// False for most pairs that only come near each other, and found much sooner than what they share.
bool may_overlap(const Solid& a, const Solid& b) {
  std::vector<Box> boxes;
  boxes.reserve(b.cells().size());
  for (const Cell& cell : b.cells()) boxes.push_back(box_of(b, cell));
  for (const Cell& one : a.cells()) {
    const Box box = box_of(a, one);
    for (std::size_t i = 0; i < boxes.size(); ++i)
      if (!apart(box, boxes[i]) && !parted(a, one, b, b.cells()[i])) return true;
  }
  return false;
}

}  // namespace

double overlap_volume(const Solid& a, const Solid& b) {
  if (!may_overlap(a, b)) return 0;
  Solid common = a;
  common.intersect(b);
  return common.volume();
}

double difference_volume(const Solid& a, const Solid& b) {
  Solid only_a = a, only_b = b;
  only_a.subtract(b);
  only_b.subtract(a);
  return only_a.volume() + only_b.volume();
}

}  // namespace splay
