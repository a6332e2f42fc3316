#include "writers/part_outline.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace splay::writers {

namespace {

constexpr double flat = 1e-9;         // of a normal
constexpr double same = 1e-5;         // mm
constexpr double off_circle = 0.011;  // mm: no facet of a curve lies further inside it

// The corners of a round hole's prism lie on the circle; a polygon of few sides is none.
bool is_round(const Polygon& corners, Round& round) {
  Vec2 sum;
  for (const Vec2 p : corners) sum = sum + p;
  round.centre = sum * (1 / static_cast<double>(corners.size()));
  round.radius = norm(corners.front() - round.centre);
  const double side = norm(corners[1] - corners[0]);
  const double half = side / 2;
  if (round.radius <= half ||
      round.radius - std::sqrt(round.radius * round.radius - half * half) > off_circle)
    return false;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec2 next = corners[(i + 1) % corners.size()];
    if (std::abs(norm(corners[i] - round.centre) - round.radius) > same ||
        std::abs(norm(next - corners[i]) - side) > same)
      return false;
  }
  return true;
}

LoopKind kind_of(bool upward, bool on_show, bool on_back) {
  if (upward) return on_show ? LoopKind::show_face : LoopKind::floor_from_show;
  return on_back ? LoopKind::back_face : LoopKind::floor_from_back;
}

void add_face(const Face& face, double thickness, PartOutline& outline) {
  if (std::abs(std::abs(face.plane.n.z) - 1) > flat) return;
  const double z = face.plane.d * face.plane.n.z;
  const LoopKind kind =
      kind_of(face.plane.n.z > 0, std::abs(z - thickness) < same, std::abs(z) < same);
  for (const std::vector<Vec3>& corners : face.loops) {
    Loop loop{kind, z - thickness, {}};
    for (const Vec3 p : corners) loop.corners.push_back({p.x, p.y});
    const bool whole_face = kind == LoopKind::show_face || kind == LoopKind::back_face;
    Round round{kind, !whole_face || &corners != &face.loops.front(), loop.height, {}, 0};
    if (is_round(loop.corners, round))
      outline.rounds.push_back(round);
    else
      outline.loops.push_back(std::move(loop));
  }
}

}  // namespace

PartOutline outline_of(const parts::Part& part) {
  PartOutline outline;
  outline.size = {part.size.x, part.size.y};
  const std::array<Solid, 1> solids{part.body};
  const Scene scene(solids);
  for (const Face& face : scene.boundaries().front()->faces) add_face(face, part.size.z, outline);
  outline.lines = scene.lines(View::top());
  return outline;
}

}  // namespace splay::writers
