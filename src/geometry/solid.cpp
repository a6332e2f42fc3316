#include "geometry/solid.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "base/index.h"
#include "base/tolerance.h"
#include "geometry/solid_cutter.h"

namespace splay {
namespace {

// Corners nearer than the weld distance to the one before them are left out.
Polygon anticlockwise_without_repeats(std::span<const Vec2> outline) {
  Polygon result;
  for (const Vec2 corner : outline) {
    if (result.empty() || norm(corner - result.back()) > tolerance::weld) result.push_back(corner);
  }
  while (result.size() > 1 && norm(result.front() - result.back()) <= tolerance::weld) {
    result.pop_back();
  }
  if (signed_area(result) < 0) std::reverse(result.begin(), result.end());
  return result;
}

// Calls visit(a, b, c) for the triangles of a cell's faces, anticlockwise from outside.
template <typename Visit>
void for_each_triangle(const Cell& cell, const std::vector<Vec3>& vertices, Visit visit) {
  for (const CellFace& face : cell.faces) {
    const Vec3 a = vertices[index(face.loop[0])];
    for (std::size_t i = 1; i + 1 < face.loop.size(); ++i) {
      visit(a, vertices[index(face.loop[i])], vertices[index(face.loop[i + 1])]);
    }
  }
}

// The place of `old` in `names`, entered when it is new.
std::int32_t renamed(std::vector<std::int32_t>& names, std::int32_t old) {
  const auto found = std::find(names.begin(), names.end(), old);
  const auto place = static_cast<std::int32_t>(found - names.begin());
  if (found == names.end()) names.push_back(old);
  return place;
}

// A cell with its box: most pairs of two solids' cells are told apart by their boxes.
struct Boxed {
  Cell cell;
  Box box;
};

Box box_of(const Cell& cell, const std::vector<Vec3>& vertices) {
  Box box;
  for (const CellFace& face : cell.faces)
    for (const std::int32_t v : face.loop) box.add(vertices[index(v)]);
  return box;
}

std::vector<Boxed> boxed(const std::vector<Cell>& cells, const std::vector<Vec3>& vertices) {
  std::vector<Boxed> result;
  result.reserve(cells.size());
  for (const Cell& cell : cells) result.push_back({cell, box_of(cell, vertices)});
  return result;
}

}  // namespace

bool apart(const Box& a, const Box& b) {
  return a.high.x <= b.low.x || b.high.x <= a.low.x || a.high.y <= b.low.y || b.high.y <= a.low.y ||
         a.high.z <= b.low.z || b.high.z <= a.low.z;
}

bool near(const Box& a, const Box& b, double reach) {
  return a.low.x <= b.high.x + reach && b.low.x <= a.high.x + reach &&
         a.low.y <= b.high.y + reach && b.low.y <= a.high.y + reach &&
         a.low.z <= b.high.z + reach && b.low.z <= a.high.z + reach;
}

void Box::add(Vec3 p) {
  low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
  high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
}

Solid Solid::box(Vec3 low, Vec3 high) {
  const Polygon outline = {{low.x, low.y}, {high.x, low.y}, {high.x, high.y}, {low.x, high.y}};
  if (!(high.x - low.x > tolerance::weld && high.y - low.y > tolerance::weld)) return {};
  return prism(outline, low.z, high.z);
}

Solid Solid::prism(std::span<const Vec2> outline, double z_low, double z_high) {
  const Polygon corners = anticlockwise_without_repeats(outline);
  if (!(z_high - z_low > tolerance::weld)) return {};
  if (!is_simple(corners)) throw std::invalid_argument("Solid::prism: the outline crosses itself");
  Solid solid;
  for (const double z : {z_low, z_high}) {
    for (const Vec2 c : corners) solid.vertices_.push_back({c.x, c.y, z});
  }
  SolidCutter cutter(solid);
  const auto face_on = [&](const Plane& plane, const std::vector<std::int32_t>& loop) {
    CutPlane cut = cutter.cut_plane(plane);
    const std::int32_t id = cutter.listed(cut);
    return CellFace{{loop.begin(), loop.end()}, id, cut.side};
  };
  const auto n = static_cast<std::int32_t>(corners.size());
  const auto vertex_at = [&](Vec2 corner) {
    return static_cast<std::int32_t>(std::find(corners.begin(), corners.end(), corner) -
                                     corners.begin());
  };
  for (const Polygon& piece : convex_pieces(corners)) {
    std::vector<std::int32_t> bottom, top;
    for (const Vec2 corner : piece) bottom.push_back(vertex_at(corner));
    for (const std::int32_t v : bottom) top.push_back(v + n);
    Cell cell;
    for (std::size_t i = 0; i < bottom.size(); ++i) {
      const std::size_t j = (i + 1) % bottom.size();
      const Vec3 from = solid.vertices_[index(bottom[i])], to = solid.vertices_[index(bottom[j])];
      cell.faces.push_back(face_on(Plane::through(from, cross(to - from, {0, 0, 1})),
                                   {bottom[i], bottom[j], top[j], top[i]}));
    }
    cell.faces.push_back(face_on({{0, 0, 1}, z_high}, top));
    std::reverse(bottom.begin(), bottom.end());
    cell.faces.push_back(face_on({{0, 0, -1}, -z_low}, bottom));
    solid.cells_.push_back(std::move(cell));
  }
  return solid;
}

Solid Solid::convex(const Region& region, double bound) {
  Solid rough = box({-bound, -bound, -bound}, {bound, bound, bound});
  rough.keep(region);
  if (rough.empty()) return rough;
  // Once more from a box of the right size: the corners of the great cube are rounded coarsely. Odd
  // margins, so that no corner of the box falls on a plane of the region by round figures.
  const Box near = rough.bounds();
  const auto below = [&](double x, double margin) { return std::max(-bound, x - margin); };
  const auto above = [&](double x, double margin) { return std::min(bound, x + margin); };
  Solid solid =
      box({below(near.low.x, 0.7193), below(near.low.y, 0.8377), below(near.low.z, 1.1291)},
          {above(near.high.x, 0.9391), above(near.high.y, 1.2713), above(near.high.z, 0.6737)});
  solid.keep(region);
  return solid;
}

void Solid::subtract(const Region& cutter) {
  SolidCutter tool(*this);
  std::vector<CutPlane> planes = tool.cut_planes(cutter);
  std::vector<Cell> rest;
  for (const Cell& cell : cells_) tool.subtract(cell, planes, rest);
  tool.finish(std::move(rest));
}

void Solid::keep(const Region& region) {
  SolidCutter tool(*this);
  std::vector<CutPlane> planes = tool.cut_planes(region);
  std::vector<Cell> rest;
  for (const Cell& cell : cells_) tool.keep(cell, planes, rest);
  tool.finish(std::move(rest));
}

void Solid::subtract(const Solid& other) {
  SolidCutter tool(*this);
  std::vector<Boxed> rest = boxed(cells_, vertices_);
  std::vector<Cell> pieces;
  for (std::size_t i = 0; i < other.cells_.size() && !rest.empty(); ++i) {
    const Box reach = box_of(other.cells_[i], other.vertices_);
    const auto met = std::partition(rest.begin(), rest.end(),
                                    [&](const Boxed& each) { return apart(each.box, reach); });
    if (met == rest.end()) continue;
    std::vector<CutPlane> planes = tool.cut_planes(other.cell_region(i));
    pieces.clear();
    for (auto each = met; each != rest.end(); ++each) tool.subtract(each->cell, planes, pieces);
    rest.erase(met, rest.end());
    for (Boxed& piece : boxed(pieces, vertices_)) rest.push_back(std::move(piece));
  }
  std::vector<Cell> left;
  left.reserve(rest.size());
  for (Boxed& each : rest) left.push_back(std::move(each.cell));
  tool.finish(std::move(left));
}

void Solid::intersect(const Solid& other) {
  SolidCutter tool(*this);
  const std::vector<Boxed> own = boxed(cells_, vertices_);
  std::vector<Cell> common;
  for (std::size_t i = 0; i < other.cells_.size(); ++i) {
    const Box reach = box_of(other.cells_[i], other.vertices_);
    std::vector<CutPlane> planes;
    for (const Boxed& each : own) {
      if (apart(each.box, reach)) continue;
      if (planes.empty()) planes = tool.cut_planes(other.cell_region(i));
      tool.keep(each.cell, planes, common);
    }
  }
  tool.finish(std::move(common));
}

void Solid::add_disjoint(const Solid& other) { SolidCutter(*this).append(other); }

void Solid::mark_smooth(std::span<const Plane> facets) {
  SolidCutter tool(*this);
  const std::int32_t surface = smooth_surfaces_++;
  for (const Plane& facet : facets) {
    CutPlane plane = tool.cut_plane(facet);
    smooth_planes_.push_back({tool.listed(plane), surface});
  }
}

double Solid::volume() const {
  double six_times = 0;
  for (const Cell& cell : cells_) {
    const Vec3 origin = vertices_[index(cell.faces[0].loop[0])];
    for_each_triangle(cell, vertices_, [&](Vec3 a, Vec3 b, Vec3 c) {
      six_times += dot(a - origin, cross(b - origin, c - origin));
    });
  }
  return six_times / 6;
}

double Solid::area() const {
  double sum = 0;
  for (const Face& face : boundary().faces) sum += face.area;
  return sum;
}

Vec3 Solid::centroid() const {
  if (empty()) return {};
  const Vec3 origin = vertices_[0];
  double volume = 0;
  Vec3 moment;
  for (const Cell& cell : cells_) {
    for_each_triangle(cell, vertices_, [&](Vec3 a, Vec3 b, Vec3 c) {
      const double part = dot(a - origin, cross(b - origin, c - origin));
      volume += part;
      moment = moment + (a + b + c - origin * 3) * (part / 4);
    });
  }
  return origin + moment * (1 / volume);
}

Box Solid::bounds() const {
  Box box;
  for (const Vec3 v : vertices_) box.add(v);
  return box;
}

std::array<double, 2> Solid::extent(Vec3 direction) const {
  std::array<double, 2> range = {1e300, -1e300};
  for (const Vec3 v : vertices_) {
    range[0] = std::min(range[0], dot(direction, v));
    range[1] = std::max(range[1], dot(direction, v));
  }
  return range;
}

Solid Solid::mirrored_x() const {
  Solid mirrored = *this;
  mirrored.boundary_.reset();
  for (Vec3& v : mirrored.vertices_) v.x = -v.x;
  for (Plane& p : mirrored.planes_) p.n.x = -p.n.x;
  for (Cell& cell : mirrored.cells_) {
    for (CellFace& face : cell.faces) std::reverse(face.loop.begin(), face.loop.end());
  }
  return mirrored;
}

Region Solid::cell_region(std::size_t cell) const {
  Region region;
  for (const CellFace& face : cells_[cell].faces) {
    const Plane& plane = planes_[index(face.plane)];
    region.push_back(face.side > 0 ? plane : plane.flipped());
  }
  return region;
}

Solid Solid::single_cell(std::size_t cell) const {
  // Only what the cell uses: the tables of a part with many holes are long.
  Solid alone;
  alone.cells_ = {cells_[cell]};
  std::vector<std::int32_t> corners, planes;
  for (CellFace& face : alone.cells_.front().faces) {
    for (std::int32_t& v : face.loop) v = renamed(corners, v);
    face.plane = renamed(planes, face.plane);
  }
  for (const std::int32_t v : corners) alone.vertices_.push_back(vertices_[index(v)]);
  for (const std::int32_t p : planes) alone.planes_.push_back(planes_[index(p)]);
  for (const SmoothPlane& smooth : smooth_planes_) {
    const auto used = std::find(planes.begin(), planes.end(), smooth.plane);
    if (used == planes.end()) continue;
    alone.smooth_planes_.push_back(
        {static_cast<std::int32_t>(used - planes.begin()), smooth.surface});
  }
  alone.smooth_surfaces_ = smooth_surfaces_;
  return alone;
}

}  // namespace splay
