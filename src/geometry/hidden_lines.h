// Hidden-line removal: what an eye sees of solids placed in one frame.
#pragma once

#include <span>
#include <vector>

#include "geometry/solid.h"

namespace splay {

// A parallel projection. Paper x runs along `right`, paper y along `up`; the eye is at infinity in
// direction `toward`. Orthonormal, right x up = toward.
struct View {
  Vec3 right{1, 0, 0}, up{0, 0, 1}, toward{0, -1, 0};
  Vec2 project(Vec3 p) const { return {dot(p, right), dot(p, up)}; }
  static View front() { return {{1, 0, 0}, {0, 0, 1}, {0, -1, 0}}; }
  static View back() { return {{-1, 0, 0}, {0, 0, 1}, {0, 1, 0}}; }
  static View left() { return {{0, -1, 0}, {0, 0, 1}, {-1, 0, 0}}; }
  static View right_side() { return {{0, 1, 0}, {0, 0, 1}, {1, 0, 0}}; }
  static View top() { return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}; }
  static View bottom() { return {{1, 0, 0}, {0, -1, 0}, {0, 0, -1}}; }
  // Seen from the front, turned `turn` radians to the right and raised `rise` radians.
  static View axonometric(double turn, double rise);
};

struct ViewLine {
  Vec2 a, b;  // mm, unscaled
  bool hidden = false;
  int solid = 0;  // index into the list given: whose edge it is
};

// Lines of all solids, collinear visible ones joined into one across solids where they overlap;
// hidden lines only where no visible line covers them. Deterministic order: by solid, then edge.
// Solids may touch but are taken not to overlap: where they do, no line of intersection is drawn.
std::vector<ViewLine> hidden_lines(std::span<const Solid> solids, const View& view);

// The faces an eye sees, whole or in part, nearest last (for toned pictures): painter's order of
// the front-facing merged faces with their solid's index.
struct ToneFace {
  std::vector<std::vector<Vec2>> loops;
  Vec3 normal;
  int solid = 0;
};
std::vector<ToneFace> visible_faces(std::span<const Solid> solids, const View& view);

// The same to be painted in that order, each over those before it: of a face only that is left out
// which nothing painted later covers. Fewer cuts than visible_faces(), and the same picture.
std::vector<ToneFace> painted_faces(std::span<const Solid> solids, const View& view);

// The same for several views of one list of solids, which must outlive the scene unchanged.
class Scene {
 public:
  explicit Scene(std::span<const Solid> solids);
  std::vector<ViewLine> lines(const View& view) const;
  std::vector<ToneFace> faces(const View& view) const;
  std::vector<ToneFace> painted(const View& view) const;
  const std::vector<const Boundary*>& boundaries() const { return boundaries_; }

 private:
  std::span<const Solid> solids_;
  std::vector<const Boundary*> boundaries_;
};

}  // namespace splay
