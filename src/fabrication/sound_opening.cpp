// Does it come out: every drawer pulled out in the model until it touches something.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/figure.h"
#include "fabrication/plan.h"
#include "fabrication/soundness.h"

namespace splay::fabrication {

namespace {

constexpr double shared_volume = 0.01;  // mm3: parts that share more than this collide
constexpr double fine = 0.01;           // mm: how well the first touch is known

// The room that a convex cell passes through: its own faces, those that look ahead moved on, and
// the planes that its outline draws.
Solid swept(const Solid& cell, Vec3 by) {
  Region region;
  const Region own = cell.cell_region(0);
  for (const Plane& plane : own) {
    const double ahead = dot(plane.n, by);
    region.push_back(ahead > 0 ? Plane{plane.n, plane.d + ahead} : plane);
  }
  // Every edge gives the plane through it along `by`; those with the whole cell on one side bound
  // the sweep.
  const std::vector<Vec3>& points = cell.vertices();
  for (const CellFace& face : cell.cells().front().faces) {
    for (std::size_t i = 0; i < face.loop.size(); ++i) {
      const Vec3 a = points[static_cast<std::size_t>(face.loop[i])];
      const Vec3 b = points[static_cast<std::size_t>(face.loop[(i + 1) % face.loop.size()])];
      const Vec3 n = cross(b - a, by);
      if (norm(n) < 1e-9 * norm(by) * norm(b - a)) continue;
      const Plane side = Plane::through(a, unit(n));
      if (std::ranges::all_of(points, [&](Vec3 p) { return side.distance(p) <= 1e-9; }))
        region.push_back(side);
    }
  }
  return Solid::convex(region);
}

struct Obstacle {
  explicit Obstacle(Solid solid) : body(std::move(solid)), box(body.bounds()) {}
  Solid body;
  Box box;
};

class Pull {
 public:
  Pull(const Plan& plan, const parts::Slide& slide) : slide_(slide) {
    for (const int index : slide.parts) {
      const Solid& world = plan.assembly.parts[static_cast<std::size_t>(index)].world;
      for (std::size_t c = 0; c < world.cells().size(); ++c) cells_.push_back(world.single_cell(c));
    }
    for (const Solid& cell : cells_) boxes_.push_back(cell.bounds());
    all_the_way_.resize(cells_.size());
  }

  bool overlaps(const Obstacle& obstacle) const {
    for (std::size_t i = 0; i < cells_.size(); ++i)
      if (!apart(boxes_[i], obstacle.box) &&
          overlap_volume(cells_[i], obstacle.body) > shared_volume)
        return true;
    return false;
  }

  // How far it comes before it touches; the whole travel when it doesn't.
  double clear(const Obstacle& obstacle) {
    double least = slide_.travel;
    for (std::size_t i = 0; i < cells_.size(); ++i) {
      if (apart(box_of(i, least), obstacle.box)) continue;
      const bool whole = least == slide_.travel;
      if (overlap_volume(whole ? all_the_way(i) : swept(cells_[i], slide_.way * least),
                         obstacle.body) > shared_volume)
        least = clear(i, obstacle, least);
    }
    return least;
  }

 private:
  // Of one cell, which touches when it comes as far as `high`.
  double clear(std::size_t i, const Obstacle& obstacle, double high) const {
    double low = 0;
    while (high - low > fine) {
      const double middle = (low + high) / 2;
      const Solid run = swept(cells_[i], slide_.way * middle);
      (overlap_volume(run, obstacle.body) > shared_volume ? high : low) = middle;
    }
    return low;
  }

  Box box_of(std::size_t i, double travel) const {
    Box box = boxes_[i];
    box.add(boxes_[i].low + slide_.way * travel);
    box.add(boxes_[i].high + slide_.way * travel);
    return box;
  }

  const Solid& all_the_way(std::size_t i) {
    if (all_the_way_[i].empty()) all_the_way_[i] = swept(cells_[i], slide_.way * slide_.travel);
    return all_the_way_[i];
  }

  const parts::Slide& slide_;
  std::vector<Solid> cells_, all_the_way_;  // the second: made when first asked for
  std::vector<Box> boxes_;
};

const parts::Swing* door_with(const Plan& plan, int part) {
  for (const parts::Swing& swing : plan.assembly.swings)
    if (std::ranges::find(swing.parts, part) != swing.parts.end()) return &swing;
  return nullptr;
}

void report(Plan& plan, const Opening& opening, bool door, SourceSpan span) {
  const FigureStyle figures = plan.project->job.figures();
  plan.findings.push_back({door ? Level::caution : Level::stop,
                           door ? "drawer-meets-door" : "drawer-cannot-open",
                           {opening.name},
                           opening.name + " touches " + opening.touches +
                               (door ? ", open square to the front," : "") + " when it is out " +
                               figures.with_unit(opening.opens) + ", and is to come out " +
                               figures.with_unit(opening.travel) + ".",
                           door ? "Let the door open further than 90 degrees, or stand the drawer "
                                  "further in from the door's side."
                                : "Move the part, or make the drawer narrower or its front "
                                  "smaller.",
                           span});
}

void pull_out(Plan& plan, const parts::Slide& slide) {
  Pull pull(plan, slide);
  Opening fixed{slide.name, slide.travel, slide.travel, ""}, doors = fixed;
  for (std::size_t i = 0; i < plan.assembly.parts.size(); ++i) {
    const int index = static_cast<int>(i);
    if (std::ranges::find(slide.parts, index) != slide.parts.end()) continue;
    const parts::Swing* door = door_with(plan, index);
    const Solid& shut = plan.assembly.parts[i].world;
    const Obstacle obstacle(door == nullptr ? shut
                                            : shut.transformed(door->motion(
                                                  std::min(door->opens, std::numbers::pi / 2))));
    // What overlaps while it is shut is the audit's to report.
    if (door == nullptr && pull.overlaps(obstacle)) continue;
    const double clear = pull.clear(obstacle);
    Opening& worst = door != nullptr ? doors : fixed;
    if (clear >= worst.opens) continue;
    worst.opens = clear;
    worst.touches = plan.assembly.parts[i].name;
  }
  if (!fixed.touches.empty()) report(plan, fixed, false, slide.span);
  if (!doors.touches.empty()) report(plan, doors, true, slide.span);
  plan.soundness.openings.push_back(fixed.touches.empty() && !doors.touches.empty() ? doors
                                                                                    : fixed);
}

}  // namespace

void judge_openings(Plan& plan) {
  const std::vector<parts::Slide> slides = plan.assembly.slides;
  for (const parts::Slide& slide : slides) pull_out(plan, slide);
}

}  // namespace splay::fabrication
