// Where the heads of clamps bear: outside of everything, or in an opening that a clamp reaches
// into.
#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "fabrication/glue_clamping.h"
#include "parts/part.h"

namespace splay::fabrication {

namespace {

// Common practice, no source: from here on a clamp that reaches in is looked for; air that its head
// takes; how far in from the outside it reaches. mm.
constexpr double far_apart = 500, head_room = 90, throat = 130;

// A stretch of a line inside of one convex cell.
struct Stretch {
  double from = -1e300, to = 1e300;
  Vec3 normal;  // of the face by which the line leaves
  int part = -1;
};

// A line and how it stands to the planes of one solid: each plane bounds many of its cells.
class LineThrough {
 public:
  LineThrough(const Solid& solid, Vec3 from, Vec3 way) : solid_(solid) {
    bounds_.reserve(solid.planes().size());
    for (const Plane& plane : solid.planes())
      bounds_.push_back({dot(plane.n, way), plane.distance(from)});
  }

  Stretch inside(const Cell& cell) const {
    Stretch run;
    for (const CellFace& face : cell.faces) {
      const double climb = bounds_[index(face.plane)].climb * face.side;
      const double away = bounds_[index(face.plane)].away * face.side;
      if (std::abs(climb) < 1e-12) {
        if (away > 1e-6) run.to = -1e300;
      } else if (climb > 0) {
        if (-away / climb < run.to) {
          run.to = -away / climb;
          run.normal = solid_.planes()[index(face.plane)].n * face.side;
        }
      } else {
        run.from = std::max(run.from, -away / climb);
      }
      if (run.to <= run.from) return run;
    }
    return run;
  }

 private:
  struct Bound {
    double climb = 0, away = 0;
  };
  const Solid& solid_;
  std::vector<Bound> bounds_;
};

// All of them beyond the line's start, by their ends.
std::vector<Stretch> wood_on(const parts::Assembly& all, const std::vector<int>& among, Vec3 from,
                             Vec3 way) {
  std::vector<Stretch> found;
  for (const int part : among) {
    const Solid& solid = all.parts[index(part)].world;
    const LineThrough line(solid, from, way);
    for (const Cell& cell : solid.cells()) {
      Stretch run = line.inside(cell);
      run.part = part;
      if (run.to > run.from) found.push_back(run);
    }
  }
  std::ranges::sort(found, {}, &Stretch::to);
  return found;
}

// Nothing stands beside a point of the line in a direction, and the outside is within reach.
bool open_towards(const parts::Assembly& all, const std::vector<int>& among, Vec3 point,
                  Vec3 aside) {
  double outside = -1e300;
  for (const int part : among)
    outside = std::max(outside, all.parts[index(part)].world.extent(aside)[1]);
  if (outside - dot(point, aside) > throat) return false;
  return std::ranges::none_of(wood_on(all, among, point, aside),
                              [](const Stretch& run) { return run.to > 1e-6; });
}

// The first place along a way where a head has room and its clamp comes from that side; else where
// the line leaves the last of the work.
Hit bears(const parts::Assembly& all, const std::vector<int>& among, Vec3 from, Vec3 way,
          const Vec3* aside) {
  const std::vector<Stretch> runs = wood_on(all, among, from, way);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const Hit hit{runs[i].to, runs[i].normal, runs[i].part};
    if (i + 1 == runs.size()) return hit;
    if (aside == nullptr || runs[i].to < 1e-6) continue;
    double next = 1e300;
    for (std::size_t k = i + 1; k < runs.size(); ++k) next = std::min(next, runs[k].from);
    if (next - runs[i].to < head_room) continue;
    if (open_towards(all, among, from + way * (runs[i].to + head_room / 2), *aside)) return hit;
  }
  return {};
}

}  // namespace

std::optional<Heads> heads_on(const parts::Assembly& all, const std::vector<int>& among,
                              Vec3 through, Vec3 axis) {
  Heads best{bears(all, among, through, -axis, nullptr), bears(all, among, through, axis, nullptr)};
  if (best.low.part < 0 || best.high.part < 0) return std::nullopt;
  if (best.low.at + best.high.at < far_apart) return best;
  const Vec3 side = square_to(axis);
  for (const Vec3 aside : {side, -side, cross(axis, side), -cross(axis, side)}) {
    const Heads heads{bears(all, among, through, -axis, &aside),
                      bears(all, among, through, axis, &aside)};
    if (heads.low.at + heads.high.at < best.low.at + best.high.at - 1e-6) best = heads;
  }
  return best;
}

}  // namespace splay::fabrication
