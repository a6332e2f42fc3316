#include <algorithm>
#include <cmath>
#include <utility>

#include "base/figure.h"
#include "fabrication/bending.h"
#include "fabrication/plan.h"
#include "fabrication/sound_shared.h"
#include "fabrication/sound_slabs.h"
#include "fabrication/soundness.h"

namespace splay::fabrication {

namespace {

// Architectural Woodwork Standards, 1st edition (AWI, AWMAC, WI, 2009), 1.2.21: 50 lbf/ft2 for
// books, 40 for other shelves, at most 200 lbf on one; sag at most span / 144.
constexpr double newton_per_pound = 4.4482216, square_foot = 304.8 * 304.8;
constexpr double most_load = 200 * newton_per_pound, limit_part = 144;
// Wood under load for years sags about half as far again (Wood Handbook, chapter 5, speaks of up to
// double for damp wood); the factor is from memory.
constexpr double years = 1.5;
constexpr double least_span = 200;  // shorter ones carry anything

constexpr double rail_limit = 240;  // a span's part, as building codes have it; from memory

// On edge under something that lies on it, and not standing on the floor itself.
bool carrying_rail(const parts::Assembly& all, int index, double floor) {
  const parts::Part& part = all.parts[static_cast<std::size_t>(index)];
  if (std::abs(part.place.ex.z) > 0.1 || std::abs(part.place.ey.z) < 0.9) return false;
  if (part.world.bounds().low.z < floor + sole) return false;
  // A tenon's upper cheek looks up too: what lies on a rail lies along it.
  for (const parts::Joint& joint : all.joints)
    for (const parts::Mate& mate : joint.mates) {
      if ((mate.a != index || mate.plane.n.z < 0.7) && (mate.b != index || mate.plane.n.z > -0.7))
        continue;
      const auto reach = shared_reach(mate, index, {1, 0, 0}, all);
      if (reach && reach->to - reach->from > part.size.x / 2) return true;
    }
  return false;
}

// What runs in and out carries what is in it, and nobody sits on it.
bool slides(const parts::Assembly& all, int index) {
  return std::ranges::any_of(all.slides, [&](const parts::Slide& slide) {
    return std::ranges::find(slide.parts, index) != slide.parts.end();
  });
}

bool level(const parts::Part& part) { return std::abs(part.place.ez.z) > 0.995; }

// N on one span of a shelf.
double spread_load(const Plan& plan, const parts::Part& part, double span) {
  const double pounds = *plan.project->room.shelves == model::ShelfUse::books ? 50 : 40;
  return std::min(most_load, pounds * newton_per_pound * span * part.size.y / square_foot);
}

// Of both edges, when first loaded. A slab that stays straight across lets an edge without a beam
// go down too far, in deep shelves further than without the other's; wood is weak enough across
// that it doesn't.
EdgeSags edges_of(double load_per_length, double span, const Slab& slab) {
  const double alone = sag_spread(load_per_length, span, slab.stiffness, 1);
  const EdgeSags sags = sag_of_slab(load_per_length, span, slab);
  return {std::clamp(sags.low, 0.0, alone), std::clamp(sags.high, 0.0, alone)};
}

// The longest span at which it holds with what is joined to it; halved in until it is known to a
// tenth.
double longest_holding(const Plan& plan, const parts::Part& part, const Slab& slab) {
  double low = 0, high = 10000;
  while (high - low > 0.1) {
    const double span = (low + high) / 2;
    const double sag = edges_of(spread_load(plan, part, span) / span, span, slab).worst();
    (years * sag <= span / limit_part ? low : high) = span;
  }
  return low;
}

ShelfSag reckon(const Plan& plan, int row, int index, double span) {
  const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
  ShelfSag sag;
  sag.row = row;
  sag.span = span;
  sag.load = spread_load(plan, part, span);
  sag.limit = span / limit_part;
  const ShelfSection section = shelf_section(plan, index, span);
  sag.known = section.known;
  if (!sag.known) return sag;
  const EdgeSags sags = edges_of(sag.load / span, span, section.slab);
  sag.sag = sags.worst();
  sag.later = years * sag.sag;
  sag.can_span = longest_holding(plan, part, section.slab);
  sag.joined = section.joined;
  sag.uncounted = section.uncounted;
  for (const bool high : {false, true})
    sag.edges.push_back({parts::side_name(part, high ? parts::Side::y_high : parts::Side::y_low),
                         high ? sags.high : sags.low});
  return sag;
}

// Someone leans or sits on the top over it.
ShelfSag reckon_rail(const Plan& plan, int row, int index, double span) {
  const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
  ShelfSag sag;
  sag.row = row;
  sag.rail = true;
  sag.span = span;
  sag.load = most_load;
  sag.limit = span / rail_limit;
  const double modulus = modulus_of(plan, part);
  sag.known = modulus > 0;
  if (!sag.known) return sag;
  sag.sag = sag_middle(sag.load, span, modulus, second_moment(part.size.z, part.size.y));
  sag.later = sag.sag;
  // Under one load at its middle the sag grows as the cube of the span, the limit as the span.
  if (sag.sag > 0) sag.can_span = span * std::sqrt(sag.limit / sag.sag);
  return sag;
}

std::string remedy(const ShelfSag& sag) {
  if (sag.rail) return "A deeper rail, or a support between.";
  const auto& [low, high] = std::pair(sag.edges.front(), sag.edges.back());
  constexpr double same = 0.01;  // of the sag
  if (std::abs(low.sag - high.sag) < same * sag.sag)
    return "Thicker stock, a support between, or both long edges stiffened: a strip on edge glued "
           "along them, or the back joined to the edge behind.";
  return "A strip on edge glued along the " + (low.sag > high.sag ? low : high).name +
         ", which sags more; thicker stock, or a support between.";
}

void report(Plan& plan, const ShelfSag& sag) {
  const FigureStyle figures = plan.project->job.figures();
  const PartRow& row = plan.rows[static_cast<std::size_t>(sag.row)];
  const char* load = sag.rail ? " under 200 lbf (890 N) at its middle; the limit is "
                              : " under a full load after years; the limit is ";
  plan.findings.push_back({Level::caution,
                           "shelf-sags",
                           {row.mark},
                           row.mark + " (" + row.name + ") sags " + figures.with_unit(sag.later) +
                               " over " + figures.with_unit(sag.span) + load +
                               figures.with_unit(sag.limit) + " (span / " +
                               (sag.rail ? "240)." : "144)."),
                           remedy(sag)});
}

}  // namespace

void judge_shelves(Plan& plan) {
  const parts::Assembly& all = plan.assembly;
  double floor = 1e300;
  for (const parts::Part& part : all.parts) floor = std::min(floor, part.world.bounds().low.z);
  for (std::size_t r = 0; r < plan.rows.size(); ++r) {
    double span = 0;
    int longest = -1;
    bool rail = false;
    for (const int member : plan.rows[r].members) {
      const parts::Part& part = all.parts[static_cast<std::size_t>(member)];
      const bool shelf = level(part) && part.size.y >= 3 * part.size.z;
      if (!shelf && (slides(all, member) || !carrying_rail(all, member, floor))) continue;
      const double clear = clear_span(plan, member);
      if (clear <= span) continue;
      span = clear;
      longest = member;
      rail = !shelf;
    }
    if (longest < 0 || span < least_span) continue;
    const int row = static_cast<int>(r);
    const ShelfSag sag =
        rail ? reckon_rail(plan, row, longest, span) : reckon(plan, row, longest, span);
    plan.soundness.shelves.push_back(sag);
    if (sag.known && !sag.holds()) report(plan, sag);
  }
}

}  // namespace splay::fabrication
