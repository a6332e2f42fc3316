// Each front face less what hides it. On the plane of a face, what one convex cell hides is a
// convex region of the image: inside the cell's silhouette and behind each of its front faces.
#include <algorithm>
#include <cmath>
#include <optional>

#include "base/tolerance.h"
#include "geometry/hidden_lines.h"
#include "geometry/occluders.h"
#include "geometry/tidy_loops.h"

namespace splay {
namespace {

constexpr double thinnest_tone = tolerance::shortest_line;  // mm: thinner pieces are dropped

struct FaceImage {
  std::vector<Polygon> loops;
  Vec2 low{1e300, 1e300}, high{-1e300, -1e300};
  double a = 0, b = 0, c = 0;  // depth w = a*x + b*y + c
  double furthest = 1e300;
};

FaceImage image_of(const Face& face, const View& view) {
  FaceImage image;
  const double towards = dot(face.plane.n, view.toward);
  image.a = -dot(face.plane.n, view.right) / towards;
  image.b = -dot(face.plane.n, view.up) / towards;
  image.c = face.plane.d / towards;
  for (const auto& loop : face.loops) {
    Polygon flat;
    for (const Vec3 p : loop) {
      flat.push_back(view.project(p));
      image.low = {std::min(image.low.x, flat.back().x), std::min(image.low.y, flat.back().y)};
      image.high = {std::max(image.high.x, flat.back().x), std::max(image.high.y, flat.back().y)};
      image.furthest = std::min(image.furthest, dot(p, view.toward));
    }
    image.loops.push_back(std::move(flat));
  }
  return image;
}

// The hidden region as bounds of a prism upright on the image; nothing when it is empty.
std::optional<Region> hidden_region(const FaceImage& face, std::span<const ViewBound> bounds) {
  Region region;
  for (const ViewBound& bound : bounds) {
    const Vec2 across{bound.a + bound.c * face.a, bound.b + bound.c * face.b};
    const double limit = bound.d - bound.c * face.c;
    const double size = norm(across);
    if (size < edge_on) {
      if (limit <= 0) return std::nullopt;
      continue;
    }
    region.push_back({{across.x / size, across.y / size, 0}, limit / size});
  }
  return region;
}

enum class Cover { none, part, whole };

// How a convex hidden region covers an image, as far as the outline's corners tell.
Cover cover_of(const FaceImage& image, const Region& region) {
  bool whole = true;
  for (const Plane& bound : region) {
    bool some_inside = false;
    for (const Vec2 corner : image.loops[0]) {
      const bool inside = bound.distance({corner.x, corner.y, 0}) < -tolerance::on_plane;
      some_inside = some_inside || inside;
      whole = whole && inside;
    }
    if (!some_inside) return Cover::none;
  }
  return whole ? Cover::whole : Cover::part;
}

double thickness(const Face& face) {
  double length = 0;
  for (const auto& loop : face.loops) {
    for (std::size_t i = 0; i < loop.size(); ++i)
      length += norm(loop[(i + 1) % loop.size()] - loop[i]);
  }
  return 2 * face.area / length;
}

bool is_broad(const FaceImage& image) {
  double area = 0, length = 0;
  for (const Polygon& loop : image.loops) {
    area += signed_area(loop);
    for (std::size_t i = 0; i < loop.size(); ++i)
      length += norm(loop[(i + 1) % loop.size()] - loop[i]);
  }
  return 2 * area >= thinnest_tone * length;
}

// In the sense that Solid::prism takes it in: rounding must not decide otherwise there.
bool is_simple_outline(Polygon loop) {
  if (signed_area(loop) < 0) std::reverse(loop.begin(), loop.end());
  return is_simple(loop);
}

// Makes the loops simple where they are not. False when one cannot be.
bool make_simple(FaceImage& image) {
  std::vector<Polygon> loops;
  for (const Polygon& loop : image.loops) {
    if (is_simple_outline(loop)) {
      loops.push_back(loop);
      continue;
    }
    for (Polygon& part : parted_at_touches(loop, tolerance::shortest_line / 10)) {
      if (!is_simple_outline(part)) return false;
      loops.push_back(std::move(part));
    }
  }
  image.loops = std::move(loops);
  return true;
}

// The image of a face as a slab between heights 0 and 1.
Solid slab_of(const FaceImage& image) {
  Solid slab;
  for (const Polygon& loop : image.loops) {
    if (signed_area(loop) > 0) slab.add_disjoint(Solid::prism(loop, 0, 1));
  }
  for (const Polygon& loop : image.loops) {
    if (signed_area(loop) < 0) slab.subtract(Solid::prism(loop, -1, 2));
  }
  return slab;
}

// What hides parts of a face; nothing when one cell hides all of it. Parts for which left_for_paint
// says so are not named.
template <typename LeftForPaint>
std::optional<std::vector<Region>> hidden_regions(const FaceImage& image,
                                                  const Occluders& occluders,
                                                  LeftForPaint left_for_paint) {
  std::vector<Region> result;
  for (const std::int32_t i : occluders.meeting(image.low, image.high)) {
    if (occluders[i].near <= image.furthest) break;
    auto region = hidden_region(image, occluders.bounds(occluders[i]));
    if (!region) continue;
    const Cover cover = cover_of(image, *region);
    if (cover == Cover::whole) return std::nullopt;
    if (cover == Cover::part && !left_for_paint(occluders[i])) result.push_back(std::move(*region));
  }
  return result;
}

void add_pieces(const Solid& slab, const Face& face, int solid, std::vector<ToneFace>& result) {
  for (const Face& piece : slab.boundary().faces) {
    if (piece.plane.n.z < 0.5 || thickness(piece) < thinnest_tone) continue;
    ToneFace tone{{}, face.plane.n, solid};
    for (const auto& loop : piece.loops) {
      std::vector<Vec2> flat;
      flat.reserve(loop.size());
      for (const Vec3 p : loop) flat.push_back({p.x, p.y});
      tone.loops.push_back(std::move(flat));
    }
    result.push_back(std::move(tone));
  }
}

struct Front {
  FaceImage image;
  const Face* face = nullptr;
  std::size_t solid = 0;
};

// The faces turned to the eye in the order of painting.
std::vector<Front> fronts_of(const std::vector<const Boundary*>& boundaries, const View& view) {
  std::vector<Front> fronts;
  for (std::size_t s = 0; s < boundaries.size(); ++s) {
    for (const Face& face : boundaries[s]->faces) {
      if (dot(face.plane.n, view.toward) > edge_on)
        fronts.push_back({image_of(face, view), &face, s});
    }
  }
  std::stable_sort(fronts.begin(), fronts.end(), [](const Front& f, const Front& g) {
    return f.image.furthest < g.image.furthest;
  });
  return fronts;
}

// When the first of the faces is painted that a cell has a share in, by solid and cell. At every
// point of the image the nearest face belongs to a cell that hides all faces behind it; if it is
// painted after one of them, that one needs no cut there.
class Painting {
 public:
  Painting(std::span<const Solid> solids, const std::vector<Front>& fronts, const View& view)
      : first_(solids.size()) {
    std::vector<std::vector<std::size_t>> of_solid(solids.size());
    for (std::size_t f = 0; f < fronts.size(); ++f) of_solid[fronts[f].solid].push_back(f);
    for (std::size_t s = 0; s < solids.size(); ++s) {
      for (const Cell& cell : solids[s].cells()) {
        std::size_t first = fronts.size();
        for (const CellFace& own : cell.faces) {
          const Plane& table = solids[s].planes()[static_cast<std::size_t>(own.plane)];
          const Plane plane = own.side > 0 ? table : table.flipped();
          if (dot(plane.n, view.toward) <= edge_on) continue;
          for (const std::size_t f : of_solid[s]) {
            const Plane& merged = fronts[f].face->plane;
            if (merged.n == plane.n && merged.d == plane.d) first = std::min(first, f);
          }
        }
        first_[s].push_back(first);
      }
    }
  }
  bool after(std::size_t front, const Occluder& occluder) const {
    return first_[static_cast<std::size_t>(occluder.solid)]
                 [static_cast<std::size_t>(occluder.cell)] > front;
  }

 private:
  std::vector<std::vector<std::size_t>> first_;
};

// left_for_paint(front, occluder): see hidden_regions().
template <typename LeftForPaint>
std::vector<ToneFace> tones(std::vector<Front>& fronts, const Occluders& occluders,
                            LeftForPaint left_for_paint) {
  std::vector<ToneFace> result;
  for (std::size_t f = 0; f < fronts.size(); ++f) {
    Front& front = fronts[f];
    const int solid = static_cast<int>(front.solid);
    const auto hidden = hidden_regions(front.image, occluders, [&](const Occluder& occluder) {
      return left_for_paint(f, occluder);
    });
    if (!hidden || !is_broad(front.image)) continue;
    // An image that is all but a line in places cannot be cut as a polygon; what hides it is drawn
    // over it.
    if (hidden->empty() || !make_simple(front.image)) {
      result.push_back({front.image.loops, front.face->plane.n, solid});
      continue;
    }
    Solid slab = slab_of(front.image);
    for (const Region& region : *hidden) slab.subtract(region);
    if (!slab.empty()) add_pieces(slab, *front.face, solid, result);
  }
  return result;
}

}  // namespace

std::vector<ToneFace> Scene::faces(const View& view) const {
  std::vector<Front> fronts = fronts_of(boundaries_, view);
  return tones(fronts, Occluders(solids_, view),
               [](std::size_t, const Occluder&) { return false; });
}

std::vector<ToneFace> Scene::painted(const View& view) const {
  std::vector<Front> fronts = fronts_of(boundaries_, view);
  const Painting painting(solids_, fronts, view);
  return tones(fronts, Occluders(solids_, view), [&](std::size_t front, const Occluder& occluder) {
    return painting.after(front, occluder);
  });
}

std::vector<ToneFace> visible_faces(std::span<const Solid> solids, const View& view) {
  return Scene(solids).faces(view);
}

std::vector<ToneFace> painted_faces(std::span<const Solid> solids, const View& view) {
  return Scene(solids).painted(view);
}

}  // namespace splay
