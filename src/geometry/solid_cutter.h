// Cutting the cells of a solid by planes. Internal to src/geometry.
//
// Vertices within tolerance::on_plane of a cutting plane count as on it and are not moved; a
// cutting plane that deviates from one of the solid's planes by less than that over the solid's
// extent is that plane. What is known of the solid's boundary is forgotten.
#pragma once

#include <cstdint>
#include <span>
#include <unordered_map>
#include <utility>
#include <vector>

#include "geometry/solid.h"

namespace splay {

enum class Whereabouts { inside, outside, straddling };

// A cutting plane: `plane` points out of what is kept inside. id < 0: not in the table yet.
struct CutPlane {
  Plane plane;
  std::int32_t id = -1;
  std::int32_t side = 1;  // +1 when the table's normal is plane.n
  std::unordered_map<std::uint64_t, std::int32_t> crossings;  // vertex by the edge it splits
};

class SolidCutter {
 public:
  explicit SolidCutter(Solid& solid);

  std::vector<CutPlane> cut_planes(std::span<const Plane> region) const;
  // The solid's plane that deviates least, within tolerance; otherwise an unlisted one.
  CutPlane cut_plane(const Plane& plane) const;
  std::int32_t listed(CutPlane& plane);  // its id, entered in the table when it is new

  // Each adds the cells that are left to `result`.
  void subtract(const Cell& cell, std::span<CutPlane> region, std::vector<Cell>& result);
  void keep(const Cell& cell, std::span<CutPlane> region, std::vector<Cell>& result);
  // Parts of a cell on both sides of a plane; a cell is empty (no faces) where nothing is.
  Whereabouts split(const Cell& cell, CutPlane& plane, Cell& inside, Cell& outside);

  // Replaces the cells and drops the vertices that no cell uses.
  void finish(std::vector<Cell> cells);
  // Adds another solid's cells as they are.
  void append(const Solid& other);

 private:
  Whereabouts classify(const Cell& cell, const Plane& plane, double tolerance);
  bool misses(const Cell& cell, std::span<const CutPlane> region) const;
  bool try_split(const Cell& cell, CutPlane& plane, Cell& inside, Cell& outside);
  bool split_face(const CellFace& face, CutPlane& plane, Cell& inside, Cell& outside);
  bool close_with_cap(CutPlane& plane, Cell& inside, Cell& outside);
  std::int32_t crossing(CutPlane& plane, std::int32_t a, std::int32_t b);

  Solid& solid_;
  Vec3 centre_, half_size_;
  std::vector<double> distance_;    // by vertex, for the plane in hand
  std::vector<std::int8_t> class_;  // by vertex: -1 inside, 0 on, +1 outside
  std::vector<std::pair<std::int32_t, std::int32_t>> on_plane_, open_;  // edges of the cap in hand
};

}  // namespace splay
