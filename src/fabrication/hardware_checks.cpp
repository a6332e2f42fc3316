// What must be so of screws and of what holds a top.
#include <algorithm>
#include <cmath>
#include <optional>

#include "base/figure.h"
#include "fabrication/hardware.h"
#include "fabrication/movement.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

constexpr double least_beyond = 1.0;    // mm of wood past a screw's point; common practice
constexpr double between_holes = 15.9;  // mm, of a figure-8: 5/8 in; measure the one in hand
constexpr double play = 0.5;            // mm that any fastener gives; common practice, no source
// Figure-8 fasteners are for tops narrower than this: woodcraft.com, "Joinery class: attaching
// tabletops".
constexpr double widest_for_eights = 457;  // mm: 18 in

bool is_screw(const parts::Fitting& fitting) {
  return fitting.kind.find("screw") != std::string::npos ||
         fitting.kind.find("Screw") != std::string::npos;
}

void check_tip(Plan& plan, const parts::Fitting& screw) {
  const int last = screw.parts.back();
  const Vec3 tip = screw.at + screw.axis * screw.length;
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

// How far the top moves to one side where a fastener is, held in its middle.
double moves_at(const Plan& plan, const parts::Part& top, Vec3 at) {
  const model::Stock* stock = plan.project->stocks.find(top.stock);
  if (stock == nullptr || *stock->kind != model::StockKind::board) return 0;
  const double off = std::abs(top.place.local_point(at).y - top.size.y / 2);
  const Soundness& sound = plan.soundness;
  const double points = std::max(sound.made - sound.driest, sound.dampest - sound.made);
  return movement(off, stock->timber.across_coefficient(), 0, points);
}

void check_fastener(Plan& plan, const parts::Fitting& fitting) {
  const bool eight = fitting.kind == "figure-8 fastener";
  const bool slides = fitting.kind == "table clip" || fitting.kind == "slotted block";
  if ((!eight && !slides) || fitting.parts.size() < 2) return;
  const parts::Part& rail = plan.assembly.parts[static_cast<std::size_t>(fitting.parts.front())];
  const parts::Part& top = plan.assembly.parts[static_cast<std::size_t>(fitting.parts.back())];
  const double moved = moves_at(plan, top, fitting.at);
  const bool across = std::abs(dot(rail.place.ex, top.place.ey)) > 0.7;
  // A figure-8 stands square to its rail and swings along it; a clip or block slides out of its
  // slot, square to the rail.
  const double may = eight ? (across ? figure_eight_swing(between_holes) : play) : 1e300;
  const FigureStyle figures = plan.project->job.figures();
  const std::string &rail_mark = plan.mark_of(fitting.parts.front()),
                    &top_mark = plan.mark_of(fitting.parts.back());
  if (moved > may)
    plan.findings.push_back({Level::stop,
                             "fastener-held",
                             {rail_mark, top_mark},
                             "A " + fitting.kind + " on " + rail_mark + " lets " + top_mark +
                                 " move " + figures.with_unit(may) + " there; it moves " +
                                 figures.with_unit(moved) + " to one side" +
                                 (across ? "." : ", along the fastener's arm."),
                             "Clips or slotted blocks on this rail; figure-8 fasteners only on "
                             "rails across the top's grain."});
  else if (eight && moved > 0 && top.size.y > widest_for_eights)
    plan.findings.push_back({Level::caution,
                             "fastener-too-small",
                             {rail_mark, top_mark},
                             "Figure-8 fasteners are used for tops under " +
                                 figures.with_unit(widest_for_eights) + " wide; " + top_mark +
                                 " is " + figures.with_unit(top.size.y) + " wide and moves " +
                                 figures.with_unit(moved) + " there.",
                             "Clips or slotted blocks give more room."});
}

void check_authors(Plan& plan) {
  const auto& all = plan.project->hardware;
  const auto none_named = [&](const std::string& name) {
    return std::ranges::find(plan.assembly.parts, name, &parts::Part::name) ==
           plan.assembly.parts.end();
  };
  for (std::size_t i = 0; i < all.size(); ++i) {
    const model::Hardware& hardware = all[i];
    if (hardware.at.given) continue;  // looked at when it was placed
    for (const std::string& name : *hardware.on)
      if (none_named(name))
        plan.findings.push_back(
            {Level::stop,
             "unknown-part",
             {hardware.name},
             "[hardware." + hardware.name + "] names a part \"" + name + "\", and there is none.",
             "The cut list has the names of all parts.",
             hardware.on.span});
    const std::string& per = *hardware.per;
    const bool counted = !hardware.per.given || per == "piece" || per == "part" ||
                         (per == "door" && !plan.assembly.swings.empty()) ||
                         (per == "drawer" && !plan.assembly.slides.empty()) ||
                         std::ranges::find(plan.assembly.fittings, per, &parts::Fitting::kind) !=
                             plan.assembly.fittings.end();
    if (!counted)
      plan.findings.push_back({Level::caution,
                               "hardware-for-nothing",
                               {hardware.name},
                               "[hardware." + hardware.name + "] is counted for each \"" + per +
                                   "\", and the piece has none.",
                               "piece, part, door, drawer, or the kind of a fitting in the "
                               "hardware list.",
                               hardware.per.span});
  }
}

// Fittings that are alike are told of once.
void drop_repeated(Plan& plan, std::size_t before) {
  std::vector<Finding>& all = plan.findings;
  for (std::size_t i = before; i < all.size();) {
    const bool twice = std::any_of(
        all.begin(), all.begin() + static_cast<std::ptrdiff_t>(i),
        [&](const Finding& each) { return each.code == all[i].code && each.text == all[i].text; });
    if (twice)
      all.erase(all.begin() + static_cast<std::ptrdiff_t>(i));
    else
      ++i;
  }
}

}  // namespace

double figure_eight_swing(double holes) {
  const double drawn_in = 25.4 / 64;
  return holes * std::sin(std::acos(1 - drawn_in / holes));
}

void judge_hardware(Plan& plan) {
  const std::size_t before = plan.findings.size();
  check_authors(plan);
  const std::vector<parts::Fitting> fittings = plan.assembly.fittings;
  for (const parts::Fitting& fitting : fittings) {
    if (fitting.parts.empty()) continue;
    if (is_screw(fitting) && fitting.length > 0) {
      check_tip(plan, fitting);
      check_holes(plan, fitting);
    }
    check_fastener(plan, fitting);
  }
  drop_repeated(plan, before);
}

}  // namespace splay::fabrication
