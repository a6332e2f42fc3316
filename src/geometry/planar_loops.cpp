#include "geometry/planar_loops.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/index.h"
#include "geometry/polygon.h"

namespace splay {
namespace {

struct HalfEdge {
  std::int32_t from = 0, to = 0;
  int weight = 0;  // winding on the left less winding on the right
  double angle = 0;
  std::int32_t next = -1;
  bool used = false;
};

// Half edges 2i and 2i+1 are the two directions of segment i.
class Arrangement {
 public:
  Arrangement(std::span<const WeightedSegment> net, std::span<const Vec3> vertices,
              const PlaneBasis& basis) {
    for (const WeightedSegment& s : net) names_.insert(names_.end(), {s.a, s.b});
    std::sort(names_.begin(), names_.end());
    names_.erase(std::unique(names_.begin(), names_.end()), names_.end());
    for (const std::int32_t name : names_) points_.push_back(basis.flat(vertices[index(name)]));
    for (const WeightedSegment& s : net) {
      const std::int32_t a = local(s.a), b = local(s.b);
      edges_.push_back({a, b, s.weight, direction(a, b), -1, false});
      edges_.push_back({b, a, -s.weight, direction(b, a), -1, false});
    }
    link();
  }

  std::vector<PlanarCycle> cycles(int one_side) {
    std::vector<PlanarCycle> result;
    for (std::size_t start = 0; start < edges_.size(); ++start) {
      if (edges_[start].used) continue;
      std::vector<std::size_t> walk;
      for (std::size_t e = start; !edges_[e].used; e = index(edges_[e].next)) {
        edges_[e].used = true;
        walk.push_back(e);
      }
      const int winding =
          one_side != 0 ? one_sided_winding(start, one_side) : winding_left_of(longest(walk));
      add_simple_loops(walk, winding, result);
    }
    return result;
  }

 private:
  std::int32_t local(std::int32_t name) const {
    return static_cast<std::int32_t>(std::lower_bound(names_.begin(), names_.end(), name) -
                                     names_.begin());
  }
  Vec2 point(std::int32_t i) const { return points_[index(i)]; }
  double direction(std::int32_t a, std::int32_t b) const {
    const Vec2 d = point(b) - point(a);
    return std::atan2(d.y, d.x);
  }

  // After an edge into a vertex comes the first one clockwise from its way back: so the walk keeps
  // the region on its left.
  void link() {
    std::vector<std::size_t> out(edges_.size());
    for (std::size_t i = 0; i < out.size(); ++i) out[i] = i;
    std::sort(out.begin(), out.end(), [&](std::size_t i, std::size_t j) {
      const HalfEdge &e = edges_[i], &f = edges_[j];
      if (e.from != f.from) return e.from < f.from;
      return e.angle != f.angle ? e.angle < f.angle : i < j;
    });
    for (std::size_t first = 0; first < out.size();) {
      std::size_t last = first;
      while (last < out.size() && edges_[out[last]].from == edges_[out[first]].from) ++last;
      for (std::size_t k = first; k < last; ++k) {
        const std::size_t clockwise = out[k == first ? last - 1 : k - 1];
        edges_[out[k] ^ 1U].next = static_cast<std::int32_t>(clockwise);
      }
      first = last;
    }
  }

  int one_sided_winding(std::size_t e, int one_side) const {
    return edges_[e].weight * one_side > 0 ? one_side : 0;
  }

  double length(std::size_t e) const { return norm(point(edges_[e].to) - point(edges_[e].from)); }
  std::size_t longest(const std::vector<std::size_t>& walk) const {
    return *std::max_element(walk.begin(), walk.end(),
                             [&](std::size_t i, std::size_t j) { return length(i) < length(j); });
  }

  // Counts what a ray from the middle of the edge to its right crosses.
  int winding_left_of(std::size_t e) const {
    const Vec2 from = point(edges_[e].from), to = point(edges_[e].to);
    const Vec2 up = unit(to - from), middle = (from + to) * 0.5;
    const Vec2 right = -left_of(up);
    int winding = edges_[e].weight;
    for (std::size_t i = 0; i < edges_.size(); i += 2) {
      if (i == (e & ~std::size_t{1})) continue;
      const Vec2 a = point(edges_[i].from) - middle, b = point(edges_[i].to) - middle;
      const double a_up = dot(up, a), b_up = dot(up, b);
      if ((a_up <= 0) == (b_up <= 0)) continue;
      const double a_right = dot(right, a), b_right = dot(right, b);
      if (a_right - a_up * (b_right - a_right) / (b_up - a_up) < 0) continue;
      winding += b_up > a_up ? edges_[i].weight : -edges_[i].weight;
    }
    return winding;
  }

  // Cuts a walk at vertices it passes twice.
  void add_simple_loops(const std::vector<std::size_t>& walk, int winding,
                        std::vector<PlanarCycle>& result) const {
    std::vector<std::int32_t> path;
    const auto emit = [&](std::vector<std::int32_t> loop) {
      if (loop.size() < 3) return;
      Polygon flat;
      for (std::int32_t& v : loop) {
        flat.push_back(point(v));
        v = names_[index(v)];
      }
      result.push_back({std::move(loop), winding, signed_area(flat)});
    };
    for (const std::size_t e : walk) {
      const std::int32_t v = edges_[e].from;
      const auto seen = std::find(path.begin(), path.end(), v);
      if (seen != path.end()) {
        emit({seen, path.end()});
        path.erase(seen, path.end());
      }
      path.push_back(v);
    }
    emit(std::move(path));
  }

  std::vector<std::int32_t> names_;
  std::vector<Vec2> points_;
  std::vector<HalfEdge> edges_;
};

Polygon flat_loop(const std::vector<std::int32_t>& loop, std::span<const Vec3> vertices,
                  const PlaneBasis& basis) {
  Polygon result;
  for (const std::int32_t v : loop) result.push_back(basis.flat(vertices[index(v)]));
  return result;
}

// The middle of a loop's longest edge: clear of the loop's touching points.
Vec2 point_on(const Polygon& loop) {
  std::size_t best = 0;
  double longest = -1;
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const double length = norm(loop[(i + 1) % loop.size()] - loop[i]);
    if (length > longest) {
      longest = length;
      best = i;
    }
  }
  return (loop[best] + loop[(best + 1) % loop.size()]) * 0.5;
}

}  // namespace

PlaneBasis::PlaneBasis(Vec3 normal) {
  const Vec3 helper = std::abs(normal.x) < 0.6 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  y = unit(cross(normal, helper));
  x = cross(y, normal);
}

std::vector<WeightedSegment> net_segments(std::vector<WeightedSegment> segments) {
  for (WeightedSegment& s : segments) {
    if (s.a > s.b) s = {s.b, s.a, -s.weight};
  }
  std::sort(segments.begin(), segments.end(),
            [](const auto& s, const auto& t) { return s.a != t.a ? s.a < t.a : s.b < t.b; });
  std::vector<WeightedSegment> net;
  for (const WeightedSegment& s : segments) {
    if (!net.empty() && net.back().a == s.a && net.back().b == s.b) {
      net.back().weight += s.weight;
    } else {
      net.push_back(s);
    }
  }
  std::erase_if(net, [](const auto& s) { return s.weight == 0 || s.a == s.b; });
  return net;
}

std::vector<PlanarCycle> planar_cycles(std::span<const WeightedSegment> net,
                                       std::span<const Vec3> vertices, const PlaneBasis& basis,
                                       int one_side) {
  return Arrangement(net, vertices, basis).cycles(one_side);
}

std::vector<PlanarFace> planar_faces(std::vector<PlanarCycle> cycles,
                                     std::span<const Vec3> vertices, const PlaneBasis& basis) {
  struct Outline {
    Polygon flat;
    double area = 0;
  };
  std::vector<PlanarFace> faces;
  std::vector<Outline> outlines;
  for (PlanarCycle& cycle : cycles) {
    if (cycle.area <= 0) continue;
    outlines.push_back({flat_loop(cycle.loop, vertices, basis), cycle.area});
    faces.push_back({{std::move(cycle.loop)}});
  }
  for (PlanarCycle& cycle : cycles) {
    if (cycle.area > 0 || faces.empty()) continue;
    std::size_t home = 0;
    if (faces.size() > 1) {
      const Vec2 inside = point_on(flat_loop(cycle.loop, vertices, basis));
      double least = 1e300;
      for (std::size_t i = 0; i < outlines.size(); ++i) {
        if (outlines[i].area < least && contains(outlines[i].flat, inside)) {
          least = outlines[i].area;
          home = i;
        }
      }
    }
    faces[home].loops.push_back(std::move(cycle.loop));
  }
  return faces;
}

}  // namespace splay
