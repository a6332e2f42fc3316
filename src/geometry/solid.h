// Solids: disjoint convex cells with a canonical table of planes.
//
// A solid is built in the part's own frame (millimetres) by starting from a box, prism or convex
// region and cutting; it is placed afterwards by transformed(). Cuts keep one table of planes, so
// that coplanar faces are found by comparing integers. After every operation the sum of normal
// times area over the boundary is zero; boundary() checks it and throws std::logic_error otherwise.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "geometry/plane.h"
#include "geometry/polygon.h"
#include "geometry/short_list.h"

namespace splay {

struct Box {
  Vec3 low{1e300, 1e300, 1e300}, high{-1e300, -1e300, -1e300};
  void add(Vec3 p);
  bool empty() const { return low.x > high.x; }
  Vec3 size() const { return high - low; }
};
// Boxes that only touch count as apart: nothing has its inside on its own border.
bool apart(const Box& a, const Box& b);
// Some point of one is within `reach` of the other along every axis.
bool near(const Box& a, const Box& b, double reach);

// A face of the boundary: coplanar faces of the cells merged. The first loop is the outline,
// anticlockwise seen from outside; the others are holes, clockwise.
struct Face {
  Plane plane;  // normal points out of the solid
  std::vector<std::vector<Vec3>> loops;
  double area = 0;
  bool smooth = false;  // a facet of a curved surface (see Solid::mark_smooth)
};

// An edge where two faces of the boundary meet. Faces are indices into Boundary::faces.
struct Edge {
  Vec3 a, b;
  int face_1 = -1, face_2 = -1;
  bool smooth = false;  // between two facets of one curved surface: drawn only as a silhouette
};

struct Boundary {
  std::vector<Face> faces;
  std::vector<Edge> edges;
};

// A convex cell: faces are loops of vertex indices (anticlockwise from outside) on a plane of the
// solid's table; side +1 when the table's normal points out of the cell, -1 when into it.
struct CellFace {
  ShortList<std::int32_t, 8> loop;
  std::int32_t plane = 0;
  std::int32_t side = 1;
};
struct Cell {
  std::vector<CellFace> faces;
};

class Solid {
 public:
  Solid() = default;
  static Solid box(Vec3 low, Vec3 high);
  // A simple polygon in local x, y (either sense) between two heights z.
  static Solid prism(std::span<const Vec2> outline, double z_low, double z_high);
  // The region cut to a cube of half side `bound`; empty when nothing is left.
  static Solid convex(const Region& region, double bound = 1e5);

  void subtract(const Region& cutter);  // remove what is inside every plane of the cutter
  void keep(const Region& region);      // remove what is outside any plane of the region
  void keep(const Plane& plane) { keep(Region{plane}); }
  void subtract(const Solid& other);
  void intersect(const Solid& other);
  void add_disjoint(const Solid& other);  // the caller knows that the insides do not overlap

  // The faces on `facets` are facets of one curved surface: their common edges are marked smooth.
  // One call for each curved surface; a facet may be named before or after it is cut, either side.
  void mark_smooth(std::span<const Plane> facets);

  bool empty() const { return cells_.empty(); }
  double volume() const;
  double area() const;    // of the boundary
  Vec3 centroid() const;  // by volume
  Box bounds() const;
  // Found once and kept until the solid is cut; copies share it, moved ones move it along. Not to
  // be asked of one solid by two threads at once.
  const Boundary& boundary() const&;
  Boundary boundary() const&& { return static_cast<const Solid&>(*this).boundary(); }
  // The merged cut faces where the plane crosses the solid; empty when it only touches.
  std::vector<Face> section(const Plane& plane) const;
  // Furthest extent along a direction: {least, greatest} of dot(direction, p).
  std::array<double, 2> extent(Vec3 direction) const;

  Solid transformed(const Rigid& motion) const;
  Solid shifted(Vec3 by) const;
  Solid mirrored_x() const;  // x to -x, faces turned right again

  const std::vector<Vec3>& vertices() const { return vertices_; }
  const std::vector<Plane>& planes() const { return planes_; }
  const std::vector<Cell>& cells() const { return cells_; }
  // Each cell as a region of planes with outward normals.
  Region cell_region(std::size_t cell) const;
  Solid single_cell(std::size_t cell) const;

 private:
  friend class SolidCutter;
  struct SmoothPlane {
    std::int32_t plane = 0, surface = 0;
  };
  std::vector<Vec3> vertices_;
  std::vector<Plane> planes_;
  std::vector<Cell> cells_;
  std::vector<SmoothPlane> smooth_planes_;
  std::int32_t smooth_surfaces_ = 0;
  mutable std::shared_ptr<const Boundary> boundary_;  // none: not asked for yet
};

// Volume common to two solids, mm³, and the common part itself.
double overlap_volume(const Solid& a, const Solid& b);

// Volume of what is in one but not in both, mm³: zero for equal solids.
double difference_volume(const Solid& a, const Solid& b);

struct Clash {
  int a = 0, b = 0;   // indices into the list given, a < b
  double volume = 0;  // mm³
  Vec3 at;            // a point inside the clash
};
// Every pair whose common volume is more than area-of-contact times the tolerance (touching parts
// do not clash).
std::vector<Clash> find_clashes(std::span<const Solid> solids);

}  // namespace splay
