// Measuring how mated surfaces meet.
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "base/tolerance.h"
#include "parts/audit.h"

namespace splay::parts {

namespace {

constexpr double least_area = 1e-3;  // mm2: surfaces that only share an edge, up to noise

// The mate's plane as a sheet of paper with a height above it.
struct Sheet {
  Rigid frame;
  explicit Sheet(const Plane& plane) {
    frame = splay::frame(plane.n * plane.d, square_to(plane.n), plane.n);
  }
  Vec2 flat(Vec3 p) const {
    const Vec3 local = frame.local_point(p);
    return {local.x, local.y};
  }
};

// A convex surface piece: its outline on the sheet, and the height of its plane over the sheet as
// base + slope . (x, y).
struct Patch {
  Polygon outline;
  Vec2 low{1e300, 1e300}, high{-1e300, -1e300};  // of the outline
  double base = 0;
  Vec2 slope;
  std::int32_t plane = 0;  // of the solid's table
  double height(Vec2 p) const { return base + dot(slope, p); }
};

Patch make_patch(const Solid& solid, const CellFace& face, const Sheet& sheet) {
  Patch patch;
  for (const std::int32_t v : face.loop)
    patch.outline.push_back(sheet.flat(solid.vertices()[static_cast<std::size_t>(v)]));
  for (const Vec2 p : patch.outline) {
    patch.low = {std::min(patch.low.x, p.x), std::min(patch.low.y, p.y)};
    patch.high = {std::max(patch.high.x, p.x), std::max(patch.high.y, p.y)};
  }
  if (signed_area(patch.outline) < 0) std::reverse(patch.outline.begin(), patch.outline.end());
  const Plane local = sheet.frame.local_plane(solid.planes()[static_cast<std::size_t>(face.plane)]);
  patch.base = local.d / local.n.z;
  patch.slope = {-local.n.x / local.n.z, -local.n.y / local.n.z};
  patch.plane = face.plane;
  return patch;
}

// The cell faces near the plane that look along its normal (sense 1) or against it (-1). Some lie
// inside the solid, between two cells: see buried().
std::vector<Patch> patches(const Solid& solid, const Plane& plane, double sense, const Sheet& sheet,
                           const Search& search) {
  std::vector<Patch> result;
  for (const Cell& cell : solid.cells()) {
    for (const CellFace& face : cell.faces) {
      const Vec3 n = solid.planes()[static_cast<std::size_t>(face.plane)].n * face.side;
      if (dot(n, plane.n) * sense < search.cosine) continue;
      const bool near = std::all_of(face.loop.begin(), face.loop.end(), [&](std::int32_t v) {
        return std::abs(plane.distance(solid.vertices()[static_cast<std::size_t>(v)])) <
               search.reach;
      });
      if (near) result.push_back(make_patch(solid, face, sheet));
    }
  }
  return result;
}

// What of `subject` lies inside the convex anticlockwise `window`.
Polygon clip_convex(Polygon subject, const Polygon& window) {
  Polygon kept;
  for (std::size_t i = 0; i < window.size() && !subject.empty(); ++i) {
    const Vec2 at = window[i];
    const Vec2 edge = window[(i + 1) % window.size()] - at;
    kept.clear();
    for (std::size_t k = 0; k < subject.size(); ++k) {
      const Vec2 p = subject[k], q = subject[(k + 1) % subject.size()];
      const double dp = cross(edge, p - at), dq = cross(edge, q - at);
      if (dp >= 0) kept.push_back(p);
      if ((dp > 0 && dq < 0) || (dp < 0 && dq > 0)) kept.push_back(p + (q - p) * (dp / (dp - dq)));
    }
    std::swap(subject, kept);
  }
  return subject;
}

double area_of(const Polygon& polygon) { return polygon.size() < 3 ? 0 : signed_area(polygon); }

bool apart(const Patch& a, const Patch& b) {
  return a.low.x >= b.high.x || b.low.x >= a.high.x || a.low.y >= b.high.y || b.low.y >= a.high.y;
}

// How much of `outline` lies between two cells of the solid that `patch` belongs to: the twins are
// the solid's faces that look the other way.
double buried(const Polygon& outline, const Patch& patch, const std::vector<Patch>& twins) {
  double area = 0;
  for (const Patch& twin : twins)
    if (twin.plane == patch.plane && !apart(patch, twin))
      area += area_of(clip_convex(outline, twin.outline));
  return area;
}

// Calls visit(polygon, area, gap) for every piece of surface in common.
template <typename Visit>
void for_each_piece(const Mate& mate, const Solid& a, const Solid& b, const Sheet& sheet,
                    const Search& search, Visit visit) {
  const std::vector<Patch> ones = patches(a, mate.plane, 1, sheet, search);
  const std::vector<Patch> others = patches(b, mate.plane, -1, sheet, search);
  const std::vector<Patch> one_twins = patches(a, mate.plane, -1, sheet, search);
  const std::vector<Patch> other_twins = patches(b, mate.plane, 1, sheet, search);
  for (const Patch& one : ones) {
    for (const Patch& other : others) {
      if (apart(one, other)) continue;
      const Polygon common = clip_convex(one.outline, other.outline);
      if (area_of(common) < least_area) continue;
      const double hidden =
          std::max(buried(common, one, one_twins), buried(common, other, other_twins));
      const double area = area_of(common) - hidden;
      if (area < least_area) continue;
      double gap = 0;
      for (const Vec2 p : common) gap = std::max(gap, std::abs(one.height(p) - other.height(p)));
      visit(common, area, gap);
    }
  }
}

}  // namespace

MateMeasure measure(const Mate& mate, const Solid& a, const Solid& b, const Search& search) {
  MateMeasure result{0, 0};
  for_each_piece(mate, a, b, Sheet(mate.plane), search,
                 [&](const Polygon&, double area, double gap) {
                   result.area += area;
                   result.gap = std::max(result.gap, gap);
                 });
  if (result.area == 0) result.gap = std::numeric_limits<double>::infinity();
  return result;
}

Contact contact(const Mate& mate, const Solid& a, const Solid& b) {
  const Sheet sheet(mate.plane);
  Contact result{sheet.frame, {}};
  for_each_piece(mate, a, b, sheet, {},
                 [&](const Polygon& piece, double, double) { result.pieces.push_back(piece); });
  return result;
}

double joint_gap(const Joint& joint, const Assembly& assembly, const Search& search) {
  double gap = 0;
  for (const Mate& mate : joint.mates) {
    const Solid& a = assembly.parts[static_cast<std::size_t>(mate.a)].world;
    const Solid& b = assembly.parts[static_cast<std::size_t>(mate.b)].world;
    double found = measure(mate, a, b).gap;
    if (!std::isfinite(found)) found = measure(mate, a, b, search).gap;
    gap = std::max(gap, found);
  }
  return gap;
}

}  // namespace splay::parts
