#include <algorithm>
#include <cmath>
#include <optional>

#include "base/figure.h"
#include "fabrication/bending.h"
#include "fabrication/plan.h"
#include "fabrication/sound_shared.h"
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
constexpr double sole = 1.0;        // mm: what stands within this of the lowest carries itself

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

// Where along the part's length a mate carries it: from below, or at its ends.
std::optional<Interval> carried(const parts::Mate& mate, int index, const parts::Assembly& all) {
  const parts::Part& part = all.parts[static_cast<std::size_t>(index)];
  const Vec3 outwards = mate.plane.n * (mate.a == index ? 1.0 : -1.0);
  const Vec3 local = part.place.local_direction(outwards);
  if (outwards.z > -0.7 && std::abs(local.x) < 0.7) return std::nullopt;
  return shared_reach(mate, index, {1, 0, 0}, all);
}

std::vector<Interval> supports(int index, const parts::Assembly& all) {
  std::vector<Interval> found;
  for (const parts::Joint& joint : all.joints)
    for (const parts::Mate& mate : joint.mates)
      if (mate.a == index || mate.b == index)
        if (const auto stretch = carried(mate, index, all)) found.push_back(*stretch);
  std::ranges::sort(found, {}, &Interval::from);
  return found;
}

// The widest gap between one support and the next; 0 with fewer than two.
double clear_span(const std::vector<Interval>& supports) {
  double span = 0, reached = supports.empty() ? 0 : supports.front().to;
  for (const Interval& support : supports) {
    span = std::max(span, support.from - reached);
    reached = std::max(reached, support.to);
  }
  return span;
}

double modulus_of(const Plan& plan, const parts::Part& part) {
  const model::Stock* stock = plan.project->stocks.find(part.stock);
  return stock == nullptr ? 0 : stock->timber.modulus_mpa();
}

// A strip glued along a long edge over the whole length carries with it, each bending for itself.
double glued_along(const Plan& plan, int index) {
  const parts::Assembly& all = plan.assembly;
  const parts::Part& part = all.parts[static_cast<std::size_t>(index)];
  double stiffness = 0;
  for (const parts::Joint& joint : all.joints) {
    if (joint.kind != "glued" || joint.between.size() != 2) continue;
    if (joint.between[0] != index && joint.between[1] != index) continue;
    const int other = joint.between[0] == index ? joint.between[1] : joint.between[0];
    const parts::Part& strip = all.parts[static_cast<std::size_t>(other)];
    const bool along =
        std::abs(dot(strip.place.ex, part.place.ex)) > 0.999 && strip.size.x > 0.9 * part.size.x;
    if (!along) continue;
    const auto high = strip.world.extent({0, 0, 1});
    const double depth = high[1] - high[0];
    if (depth <= 0) continue;
    stiffness +=
        modulus_of(plan, strip) * second_moment(strip.body.volume() / strip.size.x / depth, depth);
  }
  return stiffness;
}

ShelfSag reckon(const Plan& plan, int row, int index, double span) {
  const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
  const double pounds = *plan.project->room.shelves == model::ShelfUse::books ? 50 : 40;
  ShelfSag sag;
  sag.row = row;
  sag.span = span;
  const double area = span * part.size.y;
  sag.load = std::min(most_load, pounds * newton_per_pound * area / square_foot);
  sag.limit = span / limit_part;
  const double modulus = modulus_of(plan, part);
  sag.known = modulus > 0;
  if (!sag.known) return sag;
  const double stiffness =
      modulus * second_moment(part.size.y, part.size.z) + glued_along(plan, index);
  sag.sag = sag_spread(sag.load / span, span, stiffness, 1);
  sag.later = years * sag.sag;
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
  return sag;
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
                           sag.rail ? "A deeper rail, or a support between."
                                    : "Thicker stock, a strip on edge glued along the front, or a "
                                      "support between."});
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
      const double clear = clear_span(supports(member, all));
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
