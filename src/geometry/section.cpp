#include <algorithm>

#include "base/tolerance.h"
#include "geometry/cell_faces.h"
#include "geometry/solid.h"
#include "geometry/solid_cutter.h"

namespace splay {
namespace {

// The points of a loop without those on a straight run.
std::vector<Vec3> corners_of(const std::vector<std::int32_t>& loop,
                             const std::vector<Vec3>& vertices) {
  std::vector<Vec3> points;
  points.reserve(loop.size());
  for (const std::int32_t v : loop) points.push_back(vertices[static_cast<std::size_t>(v)]);
  std::vector<Vec3> corners;
  const std::size_t n = points.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec3 arriving = points[i] - points[(i + n - 1) % n];
    const Vec3 whole = points[(i + 1) % n] - points[(i + n - 1) % n];
    if (norm(cross(arriving, whole)) > 4 * tolerance::weld * norm(whole)) {
      corners.push_back(points[i]);
    }
  }
  return corners;
}

double loop_area(const std::vector<Vec3>& loop, Vec3 normal) {
  Vec3 twice;
  for (std::size_t i = 1; i + 1 < loop.size(); ++i) {
    twice = twice + cross(loop[i] - loop[0], loop[i + 1] - loop[0]);
  }
  return dot(twice, normal) / 2;
}

}  // namespace

std::vector<Face> Solid::section(const Plane& plane) const {
  const auto [low, high] = extent(plane.n);
  if (low > plane.d - tolerance::on_plane || high < plane.d + tolerance::on_plane) return {};
  Solid halves = *this;
  SolidCutter cutter(halves);
  CutPlane cut = cutter.cut_plane(plane);
  // Of each cell only what lies on the plane.
  std::vector<Cell> cells;
  const auto take_faces = [&](const Cell& cell) {
    Cell on_plane;
    for (const CellFace& face : cell.faces)
      if (face.plane == cut.id) on_plane.faces.push_back(face);
    if (!on_plane.faces.empty()) cells.push_back(std::move(on_plane));
  };
  for (const Cell& cell : cells_) {
    Cell inside, outside;
    if (cutter.split(cell, cut, inside, outside) == Whereabouts::straddling) {
      take_faces(inside);
      take_faces(outside);
    } else if (cut.id >= 0) {
      take_faces(cell);
    }
  }
  if (cells.empty()) return {};
  cutter.finish(std::move(cells));
  const CellFaces faces(halves, tolerance::weld, false);
  const Vec3 normal = halves.planes()[static_cast<std::size_t>(cut.id)].n;
  const PlaneBasis basis(normal);
  std::vector<PlanarCycle> cycles =
      planar_cycles(faces.on_plane(cut.id, 1).net, faces.vertices(), basis, 0);
  // Where there is material on both sides the faces of both sides lie over one another.
  std::erase_if(cycles, [](const PlanarCycle& cycle) { return cycle.winding < 2; });
  std::vector<Face> result;
  for (const PlanarFace& merged : planar_faces(std::move(cycles), faces.vertices(), basis)) {
    Face face{cut.plane, {}, 0, false};
    for (const auto& loop : merged.loops) {
      std::vector<Vec3> corners = corners_of(loop, faces.vertices());
      if (corners.size() < 3) continue;
      if (cut.side < 0) std::reverse(corners.begin(), corners.end());
      face.area += loop_area(corners, face.plane.n);
      face.loops.push_back(std::move(corners));
    }
    if (face.area > 0) result.push_back(std::move(face));
  }
  return result;
}

}  // namespace splay
