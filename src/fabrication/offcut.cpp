// What a kerf cuts free.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "fabrication/simulate.h"

namespace splay::fabrication {

namespace {

constexpr double least_area = 1e-4;  // mm2: less than this holds nothing

// The two coordinates in which a plane is seen largest.
Polygon flat(const Solid& solid, const CellFace& face) {
  const Vec3 n = solid.planes()[static_cast<std::size_t>(face.plane)].n;
  const double x = std::abs(n.x), y = std::abs(n.y), z = std::abs(n.z);
  Polygon outline;
  for (const std::int32_t v : face.loop) {
    const Vec3 p = solid.vertices()[static_cast<std::size_t>(v)];
    outline.push_back(z >= x && z >= y ? Vec2{p.x, p.y} : x >= y ? Vec2{p.y, p.z} : Vec2{p.x, p.z});
  }
  if (signed_area(outline) < 0) std::reverse(outline.begin(), outline.end());
  return outline;
}

bool touch(const Solid& solid, const Cell& a, const Cell& b) {
  for (const CellFace& one : a.faces)
    for (const CellFace& other : b.faces) {
      if (one.plane != other.plane || one.side == other.side) continue;
      if (shared_area(flat(solid, one), flat(solid, other)) > least_area) return true;
    }
  return false;
}

bool beyond(const Solid& solid, const Cell& cell, const Plane& waste) {
  for (const CellFace& face : cell.faces)
    for (const std::int32_t v : face.loop)
      if (waste.distance(solid.vertices()[static_cast<std::size_t>(v)]) < -1e-6) return false;
  return true;
}

}  // namespace

void drop_offcuts(Solid& work, const Plane& waste) {
  const std::vector<Cell>& cells = work.cells();
  std::vector<std::size_t> root(cells.size());
  std::iota(root.begin(), root.end(), std::size_t{0});
  const auto top = [&root](std::size_t i) {
    while (root[i] != i) i = root[i];
    return i;
  };
  for (std::size_t i = 0; i < cells.size(); ++i)
    for (std::size_t k = i + 1; k < cells.size(); ++k)
      if (top(i) != top(k) && touch(work, cells[i], cells[k])) root[top(k)] = top(i);
  std::vector<bool> held(cells.size(), false);
  for (std::size_t i = 0; i < cells.size(); ++i)
    if (!beyond(work, cells[i], waste)) held[top(i)] = true;
  Solid free_pieces;
  for (std::size_t i = 0; i < cells.size(); ++i)
    if (!held[top(i)]) free_pieces.add_disjoint(work.single_cell(i));
  if (!free_pieces.empty()) work.subtract(free_pieces);
}

}  // namespace splay::fabrication
