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

namespace {

// The strip in its place: how thick and broad, where its middle is, how long.
struct Strip {
  double thick = 0, broad = 0, length = 0;
  Vec3 middle;
  std::vector<Plane> walls;
};

std::string lay_strip(const SplineKind& kind, const parts::Builder& builder,
                      const std::string& joint, const Bed& bed, Strip& strip) {
  strip.thick =
      kind.thickness.given ? kind.thickness->mm : std::min(Length::inches(0.25).mm, bed.width / 3);
  strip.broad = kind.width.given ? kind.width->mm : bed.width * 2 / 3;
  strip.length = bed.reach[1] - bed.reach[0];
  const double at = (bed.reach[0] + bed.reach[1]) / 2;
  const auto range = bed.across_at(at);
  if (!range || strip.thick > bed.width - tolerance::weld)
    return "A spline of " + figure(builder, strip.thick) + " is as thick as the joint of " + joint +
           ", " + figure(builder, bed.width) + ".";
  strip.middle = bed.point(at, ((*range)[0] + (*range)[1]) / 2 + kind.offset.value.mm);
  for (const double side : {1.0, -1.0})
    strip.walls.push_back(
        Plane::through(strip.middle + bed.across * (side * strip.thick / 2), bed.across * side));
  if (!kind.stopped.given) return "";
  strip.length -= 2 * kind.stopped->mm;
  if (strip.length < tolerance::weld)
    return "Nothing is left of the spline of " + joint + " between its stops.";
  strip.walls.push_back({bed.row, at + strip.length / 2});
  strip.walls.push_back({-bed.row, strip.length / 2 - at});
  return "";
}

// A slot that runs out leaves by the sides it runs along: a slice of its middle tells whether it
// also leaves by its bottom or cheeks.
bool slot_inside(Region slot, const Bed& bed, const Strip& strip, bool stopped, const Solid& body) {
  constexpr double slice = 0.1;  // mm
  const double at = dot(bed.row, strip.middle);
  if (!stopped) {
    slot.push_back({bed.row, at + slice});
    slot.push_back({-bed.row, slice - at});
  }
  return inside(slot, body);
}

}  // namespace

std::string SplineKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Draft draft(builder, "spline", host, guest);
  Bed bed;
  if (std::string fault = lay_bed(builder, h, g, draft, bed); !fault.empty()) return fault;
  Strip strip;
  if (std::string fault = lay_strip(*this, builder, g.name + " and " + h.name, bed, strip);
      !fault.empty())
    return fault;
  const double deep = strip.broad / 2 + bottom_gap->mm;
  for (const int side : {1, -1}) {
    const Stick& part = side > 0 ? g : h;
    const Region slot = pocket(strip.walls, bed, strip.middle, bed.plane.n, side, deep);
    if (!slot_inside(slot, bed, strip, stopped.given, draft.body(part.index)))
      return "The slot for the spline would break out of " + part.name + ".";
    draft.remove(part.index, parts::OperationKind::groove, slot,
                 "slot for the spline to " + (side > 0 ? h : g).name);
  }
  const FigureStyle style = builder.project().job.figures();
  draft.fit({"spline",
             style.text(strip.thick) + " x " + style.text(strip.broad) + " x " +
                 style.with_unit(strip.length),
             strip.middle - bed.row * (strip.length / 2),
             bed.row,
             strip.thick,
             strip.length,
             {guest, host},
             ""});
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
