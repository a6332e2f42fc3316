// The cell faces of a solid as segments that meet vertex to vertex, plane by plane. Internal to
// src/geometry.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "geometry/planar_loops.h"
#include "geometry/solid.h"

namespace splay {

class CellFaces {
 public:
  // Vertices within `merge` mm of one another are one, and lie on edges within as much. overlaps:
  // expect faces of one side to overlap, as cells may within the tolerance.
  CellFaces(const Solid& solid, double merge, bool overlaps);

  // Net segments of the plane with weight +1 on the left of faces whose normal is the table's and
  // -1 for the others (`opposite` = +1 gives those +1 too: faces on either side counted alike).
  struct OnPlane {
    std::vector<WeightedSegment> net;
    bool front = false, back = false;  // are there faces of either side
  };
  OnPlane on_plane(std::int32_t plane, int opposite = -1) const;

  const std::vector<Vec3>& vertices() const { return vertices_; }

 private:
  struct Ref {
    std::int32_t side = 0, first = 0, end = 0;  // a loop in loops_
  };
  void gather(const Solid& solid);
  void split_edges();
  bool add_crossings(const Solid& solid, bool overlaps);
  void add_crossings_on(const Plane& plane, std::vector<WeightedSegment> net,
                        std::vector<Vec3>& found) const;

  std::vector<Vec3> vertices_;  // the solid's, then crossings
  std::size_t first_crossing_ = 0;
  double merge_ = 0;
  std::vector<std::int32_t> loops_;
  std::vector<std::vector<Ref>> by_plane_;
};

}  // namespace splay
