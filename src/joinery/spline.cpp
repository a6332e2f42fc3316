#include "joinery/spline.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace splay::joinery {

using model::may;
using model::Range;

void SplineKind::fields(model::FieldVisitor& visit) {
  visit.length(may("thickness", "thickness of the spline",
                   "1/4 in, at most a third of the stock, common practice"),
               thickness, Range::size());
  visit.length(may("width", "width of the spline, half of it in either part",
                   "two thirds of the stock, common practice"),
               width, Range::size());
  visit.length(may("stopped", "how far short of both ends the slot stops", "it runs out"), stopped,
               Range::size());
  visit.length(may("bottom_gap", "room at the bottom of either slot, common practice"), bottom_gap,
               Range::allowance());
  bed_field(visit);
}

std::string SplineKind::make(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Draft draft(builder, "spline", host, guest);
  Bed bed;
  if (std::string fault = lay_bed(builder, h, g, draft, bed); !fault.empty()) return fault;
  const double thick =
      thickness.given ? thickness->mm : std::min(Length::inches(0.25).mm, bed.width / 3);
  const double broad = width.given ? width->mm : bed.width * 2 / 3;
  const double middle = (bed.reach[0] + bed.reach[1]) / 2;
  const auto range = bed.across_at(middle);
  if (!range || thick > bed.width - tolerance::weld)
    return "A spline of " + figure(builder, thick) + " is as thick as the joint of " + g.name +
           " and " + h.name + ", " + figure(builder, bed.width) + ".";
  const Vec3 at = bed.point(middle, ((*range)[0] + (*range)[1]) / 2 + offset.value.mm);
  std::vector<Plane> walls;
  for (const double side : {1.0, -1.0})
    walls.push_back(Plane::through(at + bed.across * (side * thick / 2), bed.across * side));
  double length = bed.reach[1] - bed.reach[0];
  if (stopped.given) {
    length -= 2 * stopped->mm;
    if (length < tolerance::weld)
      return "Nothing is left of the spline of " + g.name + " and " + h.name +
             " between its stops.";
    walls.push_back({bed.row, bed.reach[1] - stopped->mm});
    walls.push_back({-bed.row, -bed.reach[0] - stopped->mm});
  }
  for (const int side : {1, -1}) {
    const Stick& part = side > 0 ? g : h;
    const double deep = broad / 2 + bottom_gap->mm;
    const Region slot = pocket(walls, bed, at, bed.plane.n, side, deep);
    // A slot that runs out leaves by the sides it runs along: its middle tells whether it also
    // leaves by its bottom or cheeks.
    Region least = slot;
    if (!stopped.given) {
      constexpr double slice = 0.1;
      least.push_back({bed.row, middle + slice});
      least.push_back({-bed.row, slice - middle});
    }
    if (!inside(least, draft.body(part.index)))
      return "The slot for the spline would break out of " + part.name + ".";
    draft.remove(part.index, parts::OperationKind::groove, slot,
                 "slot for the spline to " + (side > 0 ? h : g).name);
  }
  const FigureStyle style = builder.project().job.figures();
  const Vec3 start = at - bed.row * (length / 2);
  draft.fit({"spline",
             style.text(thick) + " x " + style.text(broad) + " x " + style.with_unit(length),
             start,
             bed.row,
             thick,
             length,
             {guest, host},
             ""});
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
