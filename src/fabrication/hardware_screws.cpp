// Screws stay in the wood and have holes that suit them.
#include <algorithm>
#include <cmath>
#include <optional>

#include "base/figure.h"
#include "fabrication/hardware.h"
#include "fabrication/hardware_judges.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

constexpr double least_beyond = 1.0;  // mm of wood past a screw's point; common practice

bool is_screw(const parts::Fitting& fitting) {
  return fitting.kind.find("screw") != std::string::npos ||
         fitting.kind.find("Screw") != std::string::npos;
}

void check_tip(Plan& plan, const parts::Fitting& screw, double length) {
  const int last = screw.parts.back();
  const Vec3 tip = screw.at + screw.axis * length;
  const double left =
      wood_run(plan.assembly.parts[static_cast<std::size_t>(last)].world, tip, screw.axis);
  if (left >= least_beyond) return;
  const FigureStyle figures = plan.project->job.figures();
  plan.findings.push_back({Level::stop,
                           "screw-comes-out",
                           {plan.mark_of(last)},
                           "A screw " + screw.size + " leaves " + figures.with_unit(left) +
                               " of wood before its point in " + plan.mark_of(last) + ".",
                           "A shorter screw, or a thicker part."});
}

// The diameter of the narrowest round hole of a part about a line, in the part's operations.
std::optional<double> hole_about(const parts::Part& part, Vec3 at, Vec3 axis) {
  const Vec3 here = part.place.local_point(at), way = part.place.local_direction(axis);
  std::optional<double> narrowest;
  for (const parts::Operation& operation : part.operations) {
    if (operation.kind != parts::OperationKind::hole) continue;
    double least = 1e300, most = 0;
    int facets = 0;
    for (const Plane& plane : operation.removed) {
      if (std::abs(dot(plane.n, way)) > 1e-6) continue;
      ++facets;
      least = std::min(least, -plane.distance(here));
      most = std::max(most, -plane.distance(here));
    }
    if (facets < 6 || most - least > 1e-3) continue;
    if (!narrowest || 2 * least < *narrowest) narrowest = 2 * least;
  }
  return narrowest;
}

void check_holes(Plan& plan, const parts::Fitting& screw) {
  if (gauge_of(screw.size) == 0 || screw.parts.size() < 2) return;
  const ScrewHoles holes = screw_holes(gauge_of(screw.size));
  const FigureStyle figures = plan.project->job.figures();
  const auto& parts = plan.assembly.parts;
  const int first = screw.parts.front(), last = screw.parts.back();
  const auto clearance = hole_about(parts[static_cast<std::size_t>(first)], screw.at, screw.axis);
  const auto pilot = hole_about(parts[static_cast<std::size_t>(last)], screw.at, screw.axis);
  constexpr double facet = 0.03;  // mm that a hole's facets stand inside its circle
  if (clearance && *clearance < holes.shank - facet)
    plan.findings.push_back(
        {Level::caution,
         "screw-hole-tight",
         {plan.mark_of(first)},
         "The hole in " + plan.mark_of(first) + " for a screw " + screw.size + " is " +
             figures.with_unit(*clearance) + " wide, its shank " + figures.with_unit(holes.shank) +
             ": the thread holds in both parts and does not draw them together.",
         "A clearance hole of " + figures.with_unit(holes.clearance) + "."});
  // From 70 % of the root, for softwood, to the root itself, common in furniture of hardwood.
  if (pilot && (*pilot < 0.65 * holes.root || *pilot > 1.05 * holes.root))
    plan.findings.push_back(
        {Level::caution,
         "pilot-hole-size",
         {plan.mark_of(last)},
         "The pilot hole in " + plan.mark_of(last) + " for a screw " + screw.size + " is " +
             figures.with_unit(*pilot) + " wide; the root of its thread is " +
             figures.with_unit(holes.root) + ".",
         "In softwood " + figures.with_unit(holes.pilot_soft) + ", in hardwood " +
             figures.with_unit(holes.pilot_hard) + " (Wood Handbook, chapter 8)."});
}

// Where a screw of another fitting is driven: the part, the place on its wood and the way in, both
// in the part's frame, and how much of the screw's length stays in the metal that it holds.
struct Driven {
  int part = 0;
  Vec3 at, way;
  double in_metal = 0;
};

// Square to the floor of each recess that is let in for it; a leaf lies flush in its recess.
void through_recesses(const Plan& plan, const parts::Fitting& fitting,
                      std::vector<Driven>& driven) {
  for (const int index : fitting.parts) {
    const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
    for (const parts::Operation& operation : part.operations) {
      if (operation.joint != fitting.joint || operation.kind != parts::OperationKind::notch)
        continue;
      Region room = operation.removed;
      for (int i = 0; i < 6; ++i) {
        const Vec3 out = parts::outward(static_cast<parts::Side>(i));
        room.push_back({out, std::max(0.0, dot(out, part.size))});
      }
      const Solid recess = Solid::convex(room);
      if (recess.empty()) continue;
      const Plane& floor = operation.trench.floor;
      const Vec3 middle = recess.centroid();
      driven.push_back(
          {index, middle - floor.n * floor.distance(middle), -floor.n, operation.trench.deep});
    }
  }
}

// Up into the top; of a figure-8 also down into its rail, under the plate.
void under_top(const Plan& plan, const parts::Fitting& fitting, std::vector<Driven>& driven) {
  const int rail = fitting.parts.front(), top = fitting.parts.back();
  const parts::Part& board = plan.assembly.parts[static_cast<std::size_t>(top)];
  const Vec3 up{0, 0, 1};
  const double underside = board.world.extent(up)[0];
  driven.push_back({top, board.place.local_point(fitting.at + up * (underside - fitting.at.z)),
                    board.place.local_direction(up), 0});
  if (fitting.kind != "figure-8 fastener") return;
  const parts::Part& below = plan.assembly.parts[static_cast<std::size_t>(rail)];
  driven.push_back({rail, below.place.local_point(fitting.at), below.place.local_direction(-up),
                    fitting.length});
}

// Screws that the author adds for each of another fitting, "per" its kind.
void check_added(Plan& plan, const model::Hardware& hardware) {
  const double length = length_of(*hardware.size);
  if (!hardware.per.given || length <= 0 || gauge_of(*hardware.size) == 0) return;
  std::vector<Driven> driven;
  for (const parts::Fitting& fitting : plan.assembly.fittings) {
    if (fitting.kind != *hardware.per || fitting.parts.empty()) continue;
    if (fitting.parts.size() == 2 &&
        (fitting.kind == "figure-8 fastener" || fitting.kind == "table clip" ||
         fitting.kind == "slotted block"))
      under_top(plan, fitting, driven);
    else
      through_recesses(plan, fitting, driven);
  }
  const FigureStyle figures = plan.project->job.figures();
  for (const Driven& each : driven) {
    const Solid& body = plan.assembly.parts[static_cast<std::size_t>(each.part)].body;
    const double wood = wood_run(body, each.at, each.way), into = length - each.in_metal;
    if (wood - into >= least_beyond) continue;
    const std::string& mark = plan.mark_of(each.part);
    plan.findings.push_back(
        {Level::stop,
         "screw-comes-out",
         {mark},
         "Screws " + *hardware.size + " of [hardware." + hardware.name + "] go " +
             figures.with_unit(into) + " into " + mark + " for each " + *hardware.per +
             ", and there are " + figures.with_unit(wood) + " of wood.",
         "Screws of " + figures.with_unit(std::max(0.0, wood + each.in_metal - least_beyond)) +
             " at the most.",
         hardware.size.span});
  }
}

}  // namespace

void judge_screws(Plan& plan) {
  const std::vector<parts::Fitting> fittings = plan.assembly.fittings;
  for (const parts::Fitting& fitting : fittings) {
    if (fitting.parts.empty() || !is_screw(fitting)) continue;
    const double length = std::max(fitting.length, length_of(fitting.size));
    if (length <= 0) continue;
    check_tip(plan, fitting, length);
    check_holes(plan, fitting);
  }
  const auto& added = plan.project->hardware;
  for (std::size_t i = 0; i < added.size(); ++i) check_added(plan, added[i]);
}

}  // namespace splay::fabrication
