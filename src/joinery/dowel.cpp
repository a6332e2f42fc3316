#include "joinery/dowel.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

// The diameters that dowels are sold in (common practice, no source), the one nearest to a third of
// the stock.
double usual_diameter(Unit unit, double stock) {
  constexpr double in = Length::mm_per_inch;
  constexpr std::array<double, 4> inches = {in / 4, in * 5 / 16, in * 3 / 8, in / 2};
  constexpr std::array<double, 4> metric = {6, 8, 10, 12};
  const auto& sold = unit == Unit::inch ? inches : metric;
  return *std::min_element(sold.begin(), sold.end(), [&](double a, double b) {
    return std::abs(a - stock / 3) < std::abs(b - stock / 3);
  });
}

}  // namespace

void DowelKind::fields(model::FieldVisitor& visit) {
  visit.length(may("diameter", "diameter of the dowels",
                   "the size sold that is nearest to a third of the stock, common practice"),
               diameter, Range::size());
  visit.length(
      may("embed", "how deep a dowel goes into either part", "two diameters, common practice"),
      embed, Range::size());
  visit.length(may("bottom_gap", "room for glue at the bottom of a hole, common practice"),
               bottom_gap, Range::allowance());
  row_fields(visit);
  bed_field(visit);
}

std::string DowelKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Draft draft(builder, "dowel", host, guest);
  Bed bed;
  if (std::string fault = lay_bed(builder, h, g, draft, bed); !fault.empty()) return fault;
  const double across =
      diameter.given ? diameter->mm : usual_diameter(builder.project().job.units.value, bed.width);
  const double deep = embed.given ? embed->mm : 2 * across;
  if (across > bed.width)
    return "Dowels of " + figure(builder, across) + " are thicker than the joint of " + g.name +
           " and " + h.name + ", " + figure(builder, bed.width) + ".";
  std::vector<Vec3> at;
  if (std::string fault = places(builder, bed, across, at); !fault.empty()) return fault;
  const Vec3 way = axis(g, bed);
  const FigureStyle style = builder.project().job.figures();
  for (const Vec3 point : at) {
    const std::vector<Plane> round = cylinder(point, way, across / 2);
    for (const int side : {1, -1}) {
      const Stick& part = side > 0 ? g : h;
      const Region hole = pocket(round, bed, point, way, side, deep + bottom_gap->mm);
      if (!inside(hole, draft.body(part.index)))
        return "The dowel holes would break out of " + part.name + ".";
      draft.remove(part.index, parts::OperationKind::hole, hole,
                   "dowel hole for " + (side > 0 ? h : g).name, {round});
    }
    draft.fit({"dowel",
               style.text(across) + " x " + style.with_unit(2 * deep),
               point + way * deep,
               -way,
               across,
               2 * deep,
               {guest, host},
               ""});
  }
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
