// Where the marks of a template stand clear of its lines.
#include <algorithm>

#include "drafting/kit.h"
#include "sheets/templates_shape.h"

namespace splay::sheets {

namespace {

double distance(Vec2 p, Vec2 a, Vec2 b) {
  const Vec2 run = b - a;
  const double along = std::clamp(dot(p - a, run) / dot(run, run), 0.0, 1.0);
  return norm(p - a - run * along);
}

}  // namespace

Vec2 clear_place(const std::vector<TemplateLine>& lines, ink::Rect room) {
  constexpr int steps = 8;
  constexpr double clear = 7;  // mm: the mark and air
  Vec2 best = drafting::middle(room);
  double most = -1;
  for (int i = 0; i <= steps; ++i)
    for (int j = 0; j <= steps; ++j) {
      // From the middle outwards.
      const double across = 0.5 + (i % 2 == 0 ? 0.05 : -0.05) * i,
                   up = 0.5 + (j % 2 == 0 ? 0.05 : -0.05) * j;
      const Vec2 at{room.low.x + room.width() * across, room.low.y + room.height() * up};
      double nearest = clear;
      for (const TemplateLine& line : lines)
        nearest = std::min(nearest, distance(at, line.a, line.b));
      if (nearest <= most + 1e-9) continue;
      most = nearest;
      best = at;
    }
  return best;
}

}  // namespace splay::sheets
