// The play of doors and drawer fronts in their openings: what the solids leave, against what the
// shop's accuracy and the wood's swelling may take.
#include <algorithm>
#include <cmath>

#include "base/figure.h"
#include "fabrication/hardware.h"
#include "fabrication/plan.h"
#include "fabrication/sound_shared.h"
#include "fabrication/soundness.h"
#include "model/movement.h"

namespace splay::fabrication {

namespace {

constexpr double widest_gap = 12;   // mm: faces further apart are no edge and its opening
constexpr double least_common = 1;  // mm2

struct Mover {
  std::string name;
  std::vector<int> parts;
  Vec3 across, up;
};

// The convex cell faces of a solid that look along n, flattened onto the plane square to n.
struct Facet {
  double at = 0;  // along n
  Polygon outline;
};

std::vector<Facet> facets(const Solid& solid, Vec3 n, double sense, const Rigid& sheet) {
  std::vector<Facet> found;
  for (const Cell& cell : solid.cells()) {
    for (const CellFace& face : cell.faces) {
      const Vec3 out = solid.planes()[static_cast<std::size_t>(face.plane)].n * face.side;
      if (dot(out, n) * sense < 0.9999) continue;
      Facet facet;
      for (const std::int32_t v : face.loop) {
        const Vec3 local = sheet.local_point(solid.vertices()[static_cast<std::size_t>(v)]);
        facet.outline.push_back({local.x, local.y});
        facet.at = local.z;
      }
      if (signed_area(facet.outline) < 0) std::ranges::reverse(facet.outline);
      found.push_back(std::move(facet));
    }
  }
  return found;
}

bool moves(const Mover& mover, std::size_t part) {
  return std::ranges::find(mover.parts, static_cast<int>(part)) != mover.parts.end();
}

// The narrowest gap beyond the mover's edges that look along `way`; negative when nothing is there.
double gap_towards(const Plan& plan, const Mover& mover, Vec3 way) {
  double narrowest = 1e300;
  const auto& parts = plan.assembly.parts;
  for (const int index : mover.parts) {
    const Solid& own = parts[static_cast<std::size_t>(index)].world;
    const Box box = own.bounds();
    std::vector<std::size_t> near;
    for (std::size_t i = 0; i < parts.size(); ++i)
      if (!moves(mover, i) && splay::near(box, parts[i].world.bounds(), widest_gap + 1))
        near.push_back(i);
    std::vector<Vec3> edges;
    for (const Face& face : own.boundary().faces)
      if (dot(face.plane.n, way) > 0.7) edges.push_back(face.plane.n);
    for (const Vec3 n : edges) {
      const Rigid sheet = frame({0, 0, 0}, square_to(n), n);
      const std::vector<Facet> mine = facets(own, n, 1, sheet);
      for (const std::size_t i : near) {
        for (const Facet& other : facets(parts[i].world, n, -1, sheet))
          for (const Facet& facet : mine) {
            const double gap = other.at - facet.at;
            if (gap < -0.01 || gap > std::min(widest_gap, narrowest)) continue;
            if (shared_area(facet.outline, other.outline) > least_common) narrowest = gap;
          }
      }
    }
  }
  return narrowest > widest_gap ? -1 : std::max(0.0, narrowest);
}

// How much wider the mover gets along a direction: the most of the lines through its parts'
// middles.
double swelling(const Plan& plan, const Mover& mover, Vec3 way) {
  const auto& parts = plan.assembly.parts;
  const double points = std::max(0.0, plan.soundness.dampest - plan.soundness.made);
  double most = 0;
  for (const int through : mover.parts) {
    const Vec3 at = parts[static_cast<std::size_t>(through)].world.centroid();
    double sum = 0;
    for (const int index : mover.parts) {
      const parts::Part& part = parts[static_cast<std::size_t>(index)];
      const model::Stock* stock = plan.project->stocks.find(part.stock);
      if (stock == nullptr || *stock->kind != model::StockKind::board ||
          lies_in_grooves(plan, index))
        continue;
      const double share = dot(part.place.direction({0, 1, 0}), way);
      sum += model::movement(wood_on_line(part.world, at, way),
                             stock->timber.across_coefficient() * share * share, 0, points);
    }
    most = std::max(most, sum);
  }
  return most;
}

void judge(Plan& plan, const Mover& mover, Vec3 way, const char* word) {
  const double low = gap_towards(plan, mover, -way), high = gap_towards(plan, mover, way);
  if (low < 0 || high < 0) return;
  Play play{mover.name, word, low + high, swelling(plan, mover, way), 0};
  play.cuts = plan.project->shop.off_in_all();
  const FigureStyle figures = plan.project->job.figures();
  if (!play.enough())
    plan.findings.push_back(
        {Level::caution,
         "play-too-small",
         {mover.name},
         mover.name + " has " + figures.with_unit(play.gaps) + " of play " + word +
             ", both gaps together; swelling may take " + figures.with_unit(play.swells) +
             " and cuts as accurate as the shop's " + figures.with_unit(play.cuts) + ".",
         "Gaps of " + figures.with_unit(play.needs()) +
             " together, or fit it to its opening with the plane; state a better accuracy in "
             "[shop] if it is one."});
  plan.soundness.plays.push_back(std::move(play));
}

}  // namespace

void judge_play(Plan& plan) {
  std::vector<Mover> movers;
  for (const parts::Swing& swing : plan.assembly.swings) {
    const Vec3 face = plan.assembly.parts[static_cast<std::size_t>(swing.parts.front())].place.ez;
    const Vec3 up = unit(swing.axis);
    const Vec3 across = cross(up, face);
    if (norm(across) < 0.5) continue;
    movers.push_back({swing.name, swing.parts, unit(across), up});
  }
  for (const parts::Slide& slide : plan.assembly.slides)
    movers.push_back({slide.name, slide.parts, cross(slide.way, {0, 0, 1}), {0, 0, 1}});
  for (const Mover& mover : movers) {
    judge(plan, mover, mover.across, "across");
    judge(plan, mover, mover.up, "up");
  }
}

}  // namespace splay::fabrication
