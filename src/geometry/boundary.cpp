// The boundary of a solid: coplanar cell faces merged, edges paired, collinear edges joined.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <numeric>
#include <optional>
#include <stdexcept>
#include <utility>

#include "base/index.h"
#include "base/tolerance.h"
#include "geometry/cell_faces.h"
#include "geometry/solid.h"

namespace splay {
namespace {

struct IndexedFace {
  Plane plane;
  std::int32_t plane_id = 0;
  std::vector<std::vector<std::int32_t>> loops;  // anticlockwise from outside
};

// One pass of a face along an edge, from a to b.
struct Pass {
  std::int32_t a = 0, b = 0;
  std::int32_t face = 0;
  std::int32_t neighbour = -1;
};

class BoundaryBuilder {
 public:
  // merge, overlaps: see CellFaces.
  BoundaryBuilder(const Solid& solid, double merge, bool overlaps)
      : solid_(solid), cells_(solid, merge, overlaps), merge_(merge), overlaps_(overlaps) {}

  // smooth: does a plane of the table bear facets of a curved surface? smooth_pair: do two planes
  // bear facets of one? Nothing when the surface is not closed.
  template <typename Smooth, typename SmoothPair>
  std::optional<Boundary> build(Smooth smooth, SmoothPair smooth_pair) {
    for (std::size_t p = 0; p < solid_.planes().size(); ++p) {
      merge_plane(static_cast<std::int32_t>(p));
    }
    if (!pair_passes()) return std::nullopt;
    Boundary result;
    for (std::size_t f = 0; f < faces_.size(); ++f) {
      emit_face(static_cast<std::int32_t>(f), smooth(faces_[f].plane_id), result);
    }
    for (Edge& edge : result.edges) {
      edge.smooth =
          smooth_pair(faces_[index(edge.face_1)].plane_id, faces_[index(edge.face_2)].plane_id);
    }
    if (!is_closed(result)) return std::nullopt;
    return result;
  }

 private:
  void merge_plane(std::int32_t id) {
    const CellFaces::OnPlane on_plane = cells_.on_plane(id);
    if (on_plane.net.empty()) return;
    const Plane& plane = solid_.planes()[index(id)];
    const PlaneBasis basis(plane.n);
    const int one_side = overlaps_ ? 0 : (on_plane.front ? 1 : 0) - (on_plane.back ? 1 : 0);
    const auto cycles = planar_cycles(on_plane.net, cells_.vertices(), basis, one_side);
    // Cells that overlap by less than the tolerance count twice: their other sides lie on another
    // plane, and only so the surface stays closed.
    int highest = 0;
    for (const PlanarCycle& cycle : cycles) highest = std::max(highest, std::abs(cycle.winding));
    for (int winding = -highest; winding <= highest; ++winding) {
      std::vector<PlanarCycle> chosen;
      for (const PlanarCycle& cycle : cycles) {
        if (winding != 0 && cycle.winding == winding) chosen.push_back(cycle);
      }
      for (PlanarFace& face : planar_faces(std::move(chosen), cells_.vertices(), basis)) {
        if (winding < 0) {
          for (auto& loop : face.loops) std::reverse(loop.begin(), loop.end());
        }
        const IndexedFace merged{winding > 0 ? plane : plane.flipped(), id, std::move(face.loops)};
        faces_.insert(faces_.end(), static_cast<std::size_t>(std::abs(winding)), merged);
      }
    }
  }

  Vec3 at(std::int32_t v) const { return cells_.vertices()[index(v)]; }

  bool pair_passes() {
    for (std::size_t f = 0; f < faces_.size(); ++f) {
      for (const auto& loop : faces_[f].loops) {
        for (std::size_t i = 0; i < loop.size(); ++i) {
          passes_.push_back({loop[i], loop[(i + 1) % loop.size()], static_cast<std::int32_t>(f)});
        }
      }
    }
    const auto key = [](const Pass& p) { return std::minmax(p.a, p.b); };
    std::sort(passes_.begin(), passes_.end(), [&](const Pass& p, const Pass& q) {
      const std::pair<std::int32_t, std::int32_t> k = key(p), m = key(q);
      if (k != m) return k < m;
      return p.a != q.a ? p.a < q.a : p.face < q.face;
    });
    for (std::size_t first = 0; first < passes_.size();) {
      std::size_t last = first;
      while (last < passes_.size() && key(passes_[last]) == key(passes_[first])) ++last;
      if (!pair_group({passes_.data() + first, last - first})) return false;
      first = last;
    }
    return true;
  }

  // The passes along one edge. With more than one either way (material touching along the edge)
  // partners have the same material between them. False when one is left without a partner.
  bool pair_group(std::span<Pass> group) {
    for (Pass& ahead : group) {
      if (ahead.a > ahead.b) break;
      Pass* best = nullptr;
      double least = 1e300;
      for (Pass& back : group) {
        if (back.a < back.b || back.neighbour >= 0) continue;
        const double turn = turn_through_material(ahead, back);
        if (turn < least) {
          least = turn;
          best = &back;
        }
      }
      if (best == nullptr) continue;
      ahead.neighbour = best->face;
      best->neighbour = ahead.face;
    }
    for (Pass& pass : group) {
      if (pass.neighbour >= 0) continue;
      const Vec3 along = at(pass.b) - at(pass.a);
      if (norm(along) > tolerance::shortest_line) return false;
      pass.neighbour = pass.face;  // a spur of the tolerance's size
    }
    return true;
  }

  double turn_through_material(const Pass& ahead, const Pass& back) const {
    const Vec3 along = at(ahead.b) - at(ahead.a);
    const Vec3 n = faces_[index(ahead.face)].plane.n;
    const Vec3 into_face = unit(cross(n, along));
    const Vec3 other = cross(faces_[index(back.face)].plane.n, -along);
    const double turn = std::atan2(dot(other, -n), dot(other, into_face));
    return turn < 0 ? turn + 2 * std::numbers::pi : turn;
  }

  std::int32_t neighbour(std::int32_t a, std::int32_t b, std::int32_t face) const {
    const auto place = std::lower_bound(
        passes_.begin(), passes_.end(), Pass{a, b, face}, [](const Pass& p, const Pass& q) {
          const std::pair<std::int32_t, std::int32_t> k = std::minmax(p.a, p.b);
          const std::pair<std::int32_t, std::int32_t> m = std::minmax(q.a, q.b);
          if (k != m) return k < m;
          return p.a != q.a ? p.a < q.a : p.face < q.face;
        });
    return place->neighbour;
  }

  void emit_face(std::int32_t f, bool smooth, Boundary& result) {
    const IndexedFace& face = faces_[index(f)];
    Face out{face.plane, {}, 0, smooth};
    for (const auto& loop : face.loops) {
      const std::size_t n = loop.size();
      if (n < 3) continue;                  // welded to nothing
      std::vector<std::int32_t> beyond(n);  // the neighbour over edge i, i to i+1
      for (std::size_t i = 0; i < n; ++i) beyond[i] = neighbour(loop[i], loop[(i + 1) % n], f);
      std::vector<std::size_t> corners;
      for (std::size_t i = 0; i < n; ++i) {
        if (is_corner(loop, beyond, i)) corners.push_back(i);
      }
      if (corners.size() < 3) {
        corners.resize(n);
        std::iota(corners.begin(), corners.end(), std::size_t{0});
      }
      std::vector<Vec3> points;
      points.reserve(corners.size());
      for (const std::size_t i : corners) points.push_back(at(loop[i]));
      for (std::size_t k = 0; k < corners.size(); ++k) {
        const std::int32_t other = beyond[corners[k]];
        if (f > other) continue;
        result.edges.push_back({points[k], points[(k + 1) % points.size()], f, other, false});
      }
      out.area += loop_area(loop, face.plane.n);
      out.loops.push_back(std::move(points));
    }
    result.faces.push_back(std::move(out));
  }

  // False where the edge runs straight on between the same two faces.
  bool is_corner(const std::vector<std::int32_t>& loop, const std::vector<std::int32_t>& beyond,
                 std::size_t i) const {
    const std::size_t n = loop.size(), before = (i + n - 1) % n;
    if (beyond[before] != beyond[i]) return true;
    const Vec3 arriving = at(loop[i]) - at(loop[before]);
    const Vec3 leaving = at(loop[(i + 1) % n]) - at(loop[i]);
    if (dot(arriving, leaving) <= 0) return true;
    const Vec3 whole = arriving + leaving;
    return norm(cross(arriving, whole)) > 4 * tolerance::weld * norm(whole);
  }

  double loop_area(const std::vector<std::int32_t>& loop, Vec3 normal) {
    Vec3 twice;
    const Vec3 origin = at(loop[0]);
    for (std::size_t i = 1; i + 1 < loop.size(); ++i) {
      twice = twice + cross(at(loop[i]) - origin, at(loop[i + 1]) - origin);
    }
    for (std::size_t i = 0; i < loop.size(); ++i) {
      length_ += norm(at(loop[(i + 1) % loop.size()]) - at(loop[i]));
    }
    return dot(twice, normal) / 2;
  }

  // Vertices may lie off their planes by the tolerance, which no area sum can see past.
  bool is_closed(const Boundary& result) const {
    Vec3 sum;
    double area = 0;
    for (const Face& face : result.faces) {
      sum = sum + face.plane.n * face.area;
      area += face.area;
    }
    return norm(sum) <= 1e-9 * area + merge_ * length_;
  }

  const Solid& solid_;
  CellFaces cells_;
  double merge_ = 0;
  bool overlaps_ = false;
  std::vector<IndexedFace> faces_;
  std::vector<Pass> passes_;
  double length_ = 0;
};

Boundary moved_by(const Rigid& motion, Boundary boundary) {
  for (Face& face : boundary.faces) {
    face.plane = motion.plane(face.plane);
    for (std::vector<Vec3>& loop : face.loops)
      for (Vec3& p : loop) p = motion.point(p);
  }
  for (Edge& edge : boundary.edges) {
    edge.a = motion.point(edge.a);
    edge.b = motion.point(edge.b);
  }
  return boundary;
}

}  // namespace

const Boundary& Solid::boundary() const& {
  if (boundary_) return *boundary_;
  const auto smooth = [&](std::int32_t plane) {
    return std::any_of(smooth_planes_.begin(), smooth_planes_.end(),
                       [&](const SmoothPlane& s) { return s.plane == plane; });
  };
  const auto smooth_pair = [&](std::int32_t p, std::int32_t q) {
    return std::any_of(smooth_planes_.begin(), smooth_planes_.end(), [&](const SmoothPlane& s) {
      return s.plane == p &&
             std::any_of(smooth_planes_.begin(), smooth_planes_.end(), [&](const SmoothPlane& t) {
               return t.plane == q && t.surface == s.surface;
             });
    });
  };
  // Slivers of about the tolerance can leave faces that overlap by less than their noise; looked at
  // closely or merged from a little further off they do no harm.
  for (int widening = 0; widening < 6; ++widening) {
    const double merge = std::ldexp(tolerance::weld, 2 * widening);
    for (const bool overlaps : {false, true}) {
      auto result = BoundaryBuilder(*this, merge, overlaps).build(smooth, smooth_pair);
      if (!result) continue;
      boundary_ = std::make_shared<const Boundary>(std::move(*result));
      return *boundary_;
    }
  }
  throw std::logic_error("Solid::boundary: the surface is not closed");
}

Solid Solid::shifted(Vec3 by) const {
  Rigid motion;
  motion.origin = by;
  return transformed(motion);
}

Solid Solid::transformed(const Rigid& motion) const {
  Solid moved = *this;
  if (boundary_) moved.boundary_ = std::make_shared<const Boundary>(moved_by(motion, *boundary_));
  for (Vec3& v : moved.vertices_) v = motion.point(v);
  for (Plane& p : moved.planes_) p = motion.plane(p);
  return moved;
}

}  // namespace splay
