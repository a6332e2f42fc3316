// Each front face less what hides it. On the plane of a face, what one convex cell hides is a
// convex region of the image: inside the cell's silhouette and behind each of its front faces.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "geometry/hidden_lines.h"
#include "geometry/occluders.h"
#include "geometry/painting_order.h"
#include "geometry/tidy_loops.h"

namespace splay {
namespace {

constexpr double thinnest_tone = tolerance::shortest_line;  // mm: thinner pieces are dropped

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

enum class Cover { none, part, whole };

// A bound on the plane of a face: the side across . p < limit of the image.
struct Bound {
  Vec2 across;
  double limit = 0;
};

Bound bound_on(const FaceImage& face, const ViewBound& bound) {
  return {{bound.a + bound.c * face.a, bound.b + bound.c * face.b}, bound.d - bound.c * face.c};
}

// How a convex cell covers an image, as far as the outline's corners tell.
Cover cover_of(const FaceImage& image, std::span<const ViewBound> bounds) {
  bool whole = true;
  for (const ViewBound& each : bounds) {
    const Bound bound = bound_on(image, each);
    const double size = std::sqrt(dot(bound.across, bound.across));
    if (size < edge_on) {
      if (bound.limit <= 0) return Cover::none;
      continue;
    }
    const double most = bound.limit - tolerance::on_plane * size;
    bool some_inside = false;
    for (const Vec2 corner : image.loops[0]) {
      const bool inside = dot(bound.across, corner) < most;
      some_inside = some_inside || inside;
      whole = whole && inside;
    }
    if (!some_inside) return Cover::none;
  }
  return whole ? Cover::whole : Cover::part;
}

// What a cell hides on the plane of a face, as bounds of a prism upright on the image.
Region hidden_region(const FaceImage& face, std::span<const ViewBound> bounds) {
  Region region;
  for (const ViewBound& each : bounds) {
    const Bound bound = bound_on(face, each);
    const double size = norm(bound.across);
    if (size < edge_on) continue;
    region.push_back({{bound.across.x / size, bound.across.y / size, 0}, bound.limit / size});
  }
  return region;
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

// The faces turned to the eye, furthest first.
std::vector<Front> fronts_of(const std::vector<const Boundary*>& boundaries, const View& view) {
  std::vector<Front> fronts;
  for (std::size_t s = 0; s < boundaries.size(); ++s) {
    for (const Face& face : boundaries[s]->faces) {
      if (dot(face.plane.n, view.toward) > edge_on)
        fronts.push_back({image_of(face, view), &face, static_cast<std::int32_t>(s), {}, false});
    }
  }
  std::stable_sort(fronts.begin(), fronts.end(), [](const Front& f, const Front& g) {
    return f.image.furthest < g.image.furthest;
  });
  return fronts;
}

// Finds for each face what hides parts of it, or that one cell hides all of it.
void find_hiders(std::vector<Front>& fronts, const Occluders& occluders) {
  std::vector<std::int32_t> near;
  for (Front& front : fronts) {
    occluders.meeting(front.image.low, front.image.high, front.image.furthest, near);
    for (const std::int32_t i : near) {
      const Cover cover = cover_of(front.image, occluders.bounds(occluders[i]));
      if (cover == Cover::part) front.hiders.push_back(i);
      front.hidden = cover == Cover::whole;
      if (front.hidden) break;
    }
  }
}

// The rest of a face, cut by those of its hiders that are not painted over it.
void add_tone(Front& front, const Occluders& occluders, std::vector<ToneFace>& result) {
  if (front.hidden || !is_broad(front.image)) return;
  // An image that is all but a line in places cannot be cut as a polygon; what hides it is drawn
  // over it.
  if (front.hiders.empty() || !make_simple(front.image)) {
    result.push_back({front.image.loops, front.face->plane.n, front.solid});
    return;
  }
  Solid slab = slab_of(front.image);
  for (const std::int32_t i : front.hiders) {
    slab.subtract(hidden_region(front.image, occluders.bounds(occluders[i])));
    if (slab.empty()) return;
  }
  add_pieces(slab, *front.face, front.solid, result);
}

}  // namespace

std::vector<ToneFace> Scene::faces(const View& view) const {
  std::vector<Front> fronts = fronts_of(boundaries_, view);
  const Occluders occluders(solids_, view);
  find_hiders(fronts, occluders);
  std::vector<ToneFace> result;
  for (Front& front : fronts) add_tone(front, occluders, result);
  return result;
}

std::vector<ToneFace> Scene::painted(const View& view) const {
  std::vector<Front> fronts = fronts_of(boundaries_, view);
  const Occluders occluders(solids_, view);
  find_hiders(fronts, occluders);
  std::vector<ToneFace> result;
  for (const std::size_t f : order_of_painting(solids_, view, occluders, fronts))
    add_tone(fronts[f], occluders, result);
  return result;
}

std::vector<ToneFace> visible_faces(std::span<const Solid> solids, const View& view) {
  return Scene(solids).faces(view);
}

std::vector<ToneFace> painted_faces(std::span<const Solid> solids, const View& view) {
  return Scene(solids).painted(view);
}

}  // namespace splay
