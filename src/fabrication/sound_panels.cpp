// Panels of solid wood that lie loose in grooves: what room the grooves leave them to swell, and
// how far they reach in when they have shrunk.
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

constexpr double least_hold = 2;    // mm of a panel in its groove; common practice, no source
constexpr double beside = 0.1;      // mm off a panel's face: there the groove's wall is
constexpr double no_groove = 1000;  // mm: nothing stands in the way

// One long edge of a panel, `sense` of its width: the room beyond it and how far it reaches in.
struct EdgeRoom {
  double room = no_groove, in = 0;
};

EdgeRoom edge_room(const Plan& plan, int index, double sense) {
  const auto& parts = plan.assembly.parts;
  const parts::Part& panel = parts[static_cast<std::size_t>(index)];
  const Vec3 out = panel.place.direction({0, sense, 0});
  // On the edge, in the middle of the panel's length; the edge itself is found from within.
  const Vec3 middle = panel.world.centroid();
  const Vec3 edge = middle + out * wood_run(panel.world, middle, out);
  EdgeRoom found;
  for (const parts::Joint& joint : plan.assembly.joints) {
    if (joint.kind != "groove" || std::ranges::find(joint.between, index) == joint.between.end())
      continue;
    for (const int other : joint.between) {
      if (other == index) continue;
      const Solid& host = parts[static_cast<std::size_t>(other)].world;
      const double room = free_run(host, edge, out);
      if (room >= found.room) continue;
      found.room = room;
      // The wall is beside the panel, where the tongue of its edge is thinnest.
      for (const double side : {1.0, -1.0}) {
        const Vec3 face = panel.place.direction({0, 0, side});
        const double thick = wood_run(panel.world, edge - out * beside, face);
        found.in = std::max(found.in, wood_run(host, edge + face * (thick + beside), -out));
      }
    }
  }
  return found;
}

void report(Plan& plan, const PanelRoom& panel) {
  const FigureStyle figures = plan.project->job.figures();
  const PartRow& row = plan.rows[static_cast<std::size_t>(panel.row)];
  if (panel.room < panel.swells)
    plan.findings.push_back({Level::stop,
                             "panel-too-tight",
                             {row.mark},
                             row.mark + " (" + row.name + ") swells by " +
                                 figures.with_unit(panel.swells) +
                                 " across its grain, and its grooves leave it " +
                                 figures.with_unit(panel.room) + ": it bursts its frame.",
                             "A narrower panel, deeper grooves with more clearance, or fit it when "
                             "the air is damp."});
  if (panel.in - panel.shrinks / 2 < least_hold)
    plan.findings.push_back({Level::caution,
                             "panel-comes-out",
                             {row.mark},
                             row.mark + " (" + row.name + ") reaches " +
                                 figures.with_unit(panel.in) + " into its grooves and shrinks by " +
                                 figures.with_unit(panel.shrinks) + " across its grain.",
                             "Deeper grooves, or a narrower panel; it is pinned in its middle, so "
                             "that both edges draw alike."});
}

}  // namespace

void judge_panels(Plan& plan) {
  const Soundness& sound = plan.soundness;
  for (const WidthChange& change : sound.changes) {
    const int index = plan.rows[static_cast<std::size_t>(change.row)].members.front();
    if (!lies_in_grooves(plan, index)) continue;
    const EdgeRoom low = edge_room(plan, index, -1), high = edge_room(plan, index, 1);
    if (low.room >= no_groove || high.room >= no_groove) continue;
    PanelRoom panel;
    panel.row = change.row;
    panel.room = 2 * std::min(low.room, high.room);
    panel.swells = std::max(0.0, change.greatest);
    panel.in = std::min(low.in, high.in);
    panel.shrinks = std::max(0.0, -change.least);
    plan.soundness.panels.push_back(panel);
  }
  const std::vector<PanelRoom> panels = plan.soundness.panels;
  for (const PanelRoom& panel : panels) report(plan, panel);
}

}  // namespace splay::fabrication
