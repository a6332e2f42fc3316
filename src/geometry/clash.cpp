// Clashes: a sweep over the solids' boxes, a separation test for each pair of cells, then the
// common part itself.
#include <algorithm>

#include "base/index.h"
#include "base/tolerance.h"
#include "geometry/solid.h"

namespace splay {
namespace {

bool boxes_overlap(const Box& a, const Box& b) {
  constexpr double touch = tolerance::on_plane;
  return a.low.x < b.high.x - touch && b.low.x < a.high.x - touch && a.low.y < b.high.y - touch &&
         b.low.y < a.high.y - touch && a.low.z < b.high.z - touch && b.low.z < a.high.z - touch;
}

struct PlacedCell {
  Box box;
  const Solid* solid = nullptr;
  std::size_t cell = 0;
};

std::vector<PlacedCell> cells_of(const Solid& solid) {
  std::vector<PlacedCell> result;
  for (std::size_t i = 0; i < solid.cells().size(); ++i) {
    PlacedCell placed{{}, &solid, i};
    for (const CellFace& face : solid.cells()[i].faces) {
      for (const std::int32_t v : face.loop) placed.box.add(solid.vertices()[index(v)]);
    }
    result.push_back(placed);
  }
  return result;
}

// Does a face of `a` have all of `b` in front of it?
bool face_separates(const PlacedCell& a, const PlacedCell& b) {
  for (const CellFace& face : a.solid->cells()[a.cell].faces) {
    const Plane& table = a.solid->planes()[index(face.plane)];
    const Plane plane = face.side > 0 ? table : table.flipped();
    double least = 1e300;
    for (const CellFace& other : b.solid->cells()[b.cell].faces) {
      for (const std::int32_t v : other.loop) {
        least = std::min(least, plane.distance(b.solid->vertices()[index(v)]));
      }
    }
    if (least >= -tolerance::on_plane) return true;
  }
  return false;
}

double cell_faces_area(const Solid& solid) {
  double sum = 0;
  for (const Cell& cell : solid.cells()) {
    for (const CellFace& face : cell.faces) {
      Vec3 twice;
      const Vec3 a = solid.vertices()[index(face.loop[0])];
      for (std::size_t i = 1; i + 1 < face.loop.size(); ++i) {
        twice = twice + cross(solid.vertices()[index(face.loop[i])] - a,
                              solid.vertices()[index(face.loop[i + 1])] - a);
      }
      sum += norm(twice) / 2;
    }
  }
  return sum;
}

// The common part of two cells; empty when they only touch.
Solid common_part(const PlacedCell& a, const PlacedCell& b) {
  if (!boxes_overlap(a.box, b.box) || face_separates(a, b) || face_separates(b, a)) return {};
  Solid common = a.solid->single_cell(a.cell);
  common.keep(b.solid->cell_region(b.cell));
  return common;
}

void add_clash(int a, int b, const std::vector<PlacedCell>& cells_a,
               const std::vector<PlacedCell>& cells_b, std::vector<Clash>& result) {
  Clash clash{a, b, 0, {}};
  double area = 0, largest = 0;
  for (const PlacedCell& cell_a : cells_a) {
    for (const PlacedCell& cell_b : cells_b) {
      const Solid common = common_part(cell_a, cell_b);
      if (common.empty()) continue;
      const double volume = common.volume();
      clash.volume += volume;
      area += cell_faces_area(common);
      if (volume > largest) {
        largest = volume;
        clash.at = common.centroid();
      }
    }
  }
  // A layer of thickness h over an area A has the surface 2A and the volume A*h.
  if (clash.volume > area / 2 * tolerance::on_plane) result.push_back(clash);
}

}  // namespace

std::vector<Clash> find_clashes(std::span<const Solid> solids) {
  std::vector<Box> boxes;
  std::vector<std::vector<PlacedCell>> cells;
  std::vector<int> order;
  for (const Solid& solid : solids) {
    if (!solid.empty()) order.push_back(static_cast<int>(boxes.size()));
    boxes.push_back(solid.bounds());
    cells.push_back(cells_of(solid));
  }
  const auto box = [&](int i) -> const Box& { return boxes[index(i)]; };
  std::sort(order.begin(), order.end(), [&](int i, int j) {
    return box(i).low.x != box(j).low.x ? box(i).low.x < box(j).low.x : i < j;
  });
  std::vector<Clash> result;
  for (std::size_t i = 0; i < order.size(); ++i) {
    for (std::size_t j = i + 1; j < order.size(); ++j) {
      if (box(order[j]).low.x >= box(order[i]).high.x) break;
      if (!boxes_overlap(box(order[i]), box(order[j]))) continue;
      const auto [a, b] = std::minmax(order[i], order[j]);
      add_clash(a, b, cells[index(a)], cells[index(b)], result);
    }
  }
  std::sort(result.begin(), result.end(),
            [](const Clash& c, const Clash& d) { return c.a != d.a ? c.a < d.a : c.b < d.b; });
  return result;
}

}  // namespace splay
