#include "geometry/cell_faces.h"

#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "geometry/edge_split.h"

namespace splay {
namespace {

// Where two segments cross, further than `band` from the ends of both.
bool crossing(Vec2 a, Vec2 b, Vec2 c, Vec2 d, double band, double& along_first) {
  const Vec2 ab = b - a, cd = d - c;
  const double c_off = cross(ab, c - a), d_off = cross(ab, d - a);
  const double a_off = cross(cd, a - c), b_off = cross(cd, b - c);
  const double ab_band = band * norm(ab), cd_band = band * norm(cd);
  const auto apart = [](double p, double q, double least) {
    return (p > least && q < -least) || (p < -least && q > least);
  };
  if (!apart(c_off, d_off, ab_band) || !apart(a_off, b_off, cd_band)) return false;
  along_first = a_off / (a_off - b_off);
  return true;
}

}  // namespace

CellFaces::CellFaces(const Solid& solid, double merge, bool overlaps)
    : vertices_(solid.vertices()), first_crossing_(vertices_.size()), merge_(merge) {
  gather(solid);
  split_edges();
  // Faces of cells on the two sides of a plane may overlap in part; their edges then cross.
  if (add_crossings(solid, overlaps)) split_edges();
}

void CellFaces::gather(const Solid& solid) {
  const std::vector<std::int32_t> same = weld(vertices_, merge_);
  by_plane_.resize(solid.planes().size());
  for (const Cell& cell : solid.cells()) {
    for (const CellFace& face : cell.faces) {
      const auto first = static_cast<std::int32_t>(loops_.size());
      for (const std::int32_t v : face.loop) {
        const std::int32_t name = same[index(v)];
        if (loops_.size() == index(first) || loops_.back() != name) loops_.push_back(name);
      }
      while (loops_.size() > index(first) + 1 && loops_.back() == loops_[index(first)]) {
        loops_.pop_back();
      }
      if (loops_.size() < index(first) + 3) {
        loops_.resize(index(first));
        continue;
      }
      by_plane_[index(face.plane)].push_back(
          {face.side, first, static_cast<std::int32_t>(loops_.size())});
    }
  }
}

void CellFaces::split_edges() {
  std::vector<std::int32_t> used = loops_;
  std::sort(used.begin(), used.end());
  used.erase(std::unique(used.begin(), used.end()), used.end());
  // Crossings are in no loop yet.
  for (std::size_t v = first_crossing_; v < vertices_.size(); ++v) {
    used.push_back(static_cast<std::int32_t>(v));
  }
  std::vector<std::pair<std::int32_t, std::int32_t>> edges;
  const auto for_each_edge = [&](const Ref& ref, auto visit) {
    for (std::int32_t i = ref.first; i < ref.end; ++i) {
      visit(loops_[index(i)], loops_[index(i + 1 == ref.end ? ref.first : i + 1)]);
    }
  };
  for (const auto& refs : by_plane_) {
    for (const Ref& ref : refs) {
      for_each_edge(ref, [&](std::int32_t a, std::int32_t b) { edges.emplace_back(a, b); });
    }
  }
  EdgeSplitter splitter(vertices_, used, merge_);
  splitter.split(std::move(edges));
  std::vector<std::int32_t> loops;
  for (auto& refs : by_plane_) {
    for (Ref& ref : refs) {
      const auto first = static_cast<std::int32_t>(loops.size());
      for_each_edge(ref, [&](std::int32_t a, std::int32_t b) {
        loops.push_back(a);
        splitter.append_chain(a, b, loops);
      });
      ref.first = first;
      ref.end = static_cast<std::int32_t>(loops.size());
    }
  }
  loops_ = std::move(loops);
}

CellFaces::OnPlane CellFaces::on_plane(std::int32_t plane, int opposite) const {
  OnPlane result;
  std::vector<WeightedSegment> segments;
  for (const Ref& ref : by_plane_[index(plane)]) {
    // A loop on the back runs clockwise about the table's normal: its winding is -1 as it stands.
    const int weight = ref.side > 0 ? 1 : -opposite;
    (ref.side > 0 ? result.front : result.back) = true;
    for (std::int32_t i = ref.first; i < ref.end; ++i) {
      const std::int32_t next = i + 1 == ref.end ? ref.first : i + 1;
      segments.push_back({loops_[index(i)], loops_[index(next)], weight});
    }
  }
  result.net = net_segments(std::move(segments));
  return result;
}

bool CellFaces::add_crossings(const Solid& solid, bool overlaps) {
  std::vector<Vec3> found;
  for (std::size_t plane = 0; plane < by_plane_.size(); ++plane) {
    OnPlane faces = on_plane(static_cast<std::int32_t>(plane), 1);
    if (overlaps || (faces.front && faces.back)) {
      add_crossings_on(solid.planes()[plane], std::move(faces.net), found);
    }
  }
  if (found.empty()) return false;
  const std::vector<std::int32_t> same = weld(found, merge_);
  for (std::size_t i = 0; i < found.size(); ++i) {
    if (index(same[i]) == i) vertices_.push_back(found[i]);
  }
  return true;
}

void CellFaces::add_crossings_on(const Plane& plane, std::vector<WeightedSegment> net,
                                 std::vector<Vec3>& found) const {
  const PlaneBasis basis(plane.n);
  struct Flat {
    Vec2 a, b;
    double low = 0, high = 0;
    std::size_t segment = 0;
  };
  std::vector<Flat> flats;
  for (std::size_t i = 0; i < net.size(); ++i) {
    const Vec2 a = basis.flat(vertices_[index(net[i].a)]);
    const Vec2 b = basis.flat(vertices_[index(net[i].b)]);
    flats.push_back({a, b, std::min(a.x, b.x), std::max(a.x, b.x), i});
  }
  std::sort(flats.begin(), flats.end(), [](const Flat& f, const Flat& g) {
    return f.low != g.low ? f.low < g.low : f.segment < g.segment;
  });
  for (std::size_t i = 0; i < flats.size(); ++i) {
    for (std::size_t j = i + 1; j < flats.size() && flats[j].low <= flats[i].high; ++j) {
      double t = 0;
      if (!crossing(flats[i].a, flats[i].b, flats[j].a, flats[j].b, merge_, t)) continue;
      const WeightedSegment& s = net[flats[i].segment];
      const Vec3 from = vertices_[index(s.a)], to = vertices_[index(s.b)];
      found.push_back(from + (to - from) * t);
    }
  }
}

}  // namespace splay
