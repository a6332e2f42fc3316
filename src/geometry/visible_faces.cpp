// Each front face less what hides it. On the plane of a face, what one convex cell hides is a
// convex region of the image: inside the cell's silhouette and behind each of its front faces.
#include <algorithm>
#include <cmath>
#include <optional>

#include "base/tolerance.h"
#include "geometry/hidden_lines.h"
#include "geometry/occluders.h"

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

double thickness(const Face& face) {
  double length = 0;
  for (const auto& loop : face.loops) {
    for (std::size_t i = 0; i < loop.size(); ++i)
      length += norm(loop[(i + 1) % loop.size()] - loop[i]);
  }
  return 2 * face.area / length;
}

// The image of a face as a slab between heights 0 and 1. A face seen all but edge-on, whose image
// is too thin to be a polygon, is empty.
Solid slab_of(const FaceImage& image) {
  const double width = std::min(image.high.x - image.low.x, image.high.y - image.low.y);
  if (width < thinnest_tone || !is_simple(image.loops[0])) return {};
  Solid slab = Solid::prism(image.loops[0], 0, 1);
  for (std::size_t i = 1; i < image.loops.size(); ++i) {
    if (is_simple(image.loops[i])) slab.subtract(Solid::prism(image.loops[i], -1, 2));
  }
  return slab;
}

void add_pieces(const Solid& slab, const Face& face, int solid, std::vector<ToneFace>& result) {
  for (const Face& piece : slab.boundary().faces) {
    if (piece.plane.n.z < 0.5 || thickness(piece) < thinnest_tone) continue;
    ToneFace tone{{}, face.plane.n, solid};
    for (const auto& loop : piece.loops) {
      std::vector<Vec2> flat;
      for (const Vec3 p : loop) flat.push_back({p.x, p.y});
      tone.loops.push_back(std::move(flat));
    }
    result.push_back(std::move(tone));
  }
}

}  // namespace

std::vector<ToneFace> Scene::faces(const View& view) const {
  struct Front {
    FaceImage image;
    const Face* face = nullptr;
    int solid = 0;
  };
  std::vector<Front> fronts;
  for (std::size_t s = 0; s < boundaries_.size(); ++s) {
    for (const Face& face : boundaries_[s].faces) {
      if (dot(face.plane.n, view.toward) <= edge_on) continue;
      fronts.push_back({image_of(face, view), &face, static_cast<int>(s)});
    }
  }
  std::stable_sort(fronts.begin(), fronts.end(), [](const Front& f, const Front& g) {
    return f.image.furthest < g.image.furthest;
  });
  const Occluders occluders(solids_, view);
  std::vector<ToneFace> result;
  for (const Front& front : fronts) {
    Solid slab = slab_of(front.image);
    for (const std::int32_t i : occluders.meeting(front.image.low, front.image.high)) {
      if (slab.empty() || occluders[i].near <= front.image.furthest) break;
      const auto region = hidden_region(front.image, occluders.bounds(occluders[i]));
      if (region) slab.subtract(*region);
    }
    if (!slab.empty()) add_pieces(slab, *front.face, front.solid, result);
  }
  return result;
}

std::vector<ToneFace> visible_faces(std::span<const Solid> solids, const View& view) {
  return Scene(solids).faces(view);
}

}  // namespace splay
