#include "joinery/groove.h"

#include <algorithm>

#include "base/tolerance.h"

namespace splay::joinery {

using model::may;
using model::Range;

void GrooveKind::fields(model::FieldVisitor& visit) {
  visit.length(may("depth", "depth square to the face",
                   "1/4 in, at most a third of the host's thickness, common practice"),
               depth, Range::size());
  visit.length(may("clearance", "room between the panel's edge and the floor, common practice"),
               clearance, Range::allowance());
  stop_fields(visit);
}

std::string GrooveKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  TrenchPlace place;
  if (std::string fault = find_trench(h, g, place); !fault.empty()) return fault;
  const double deep =
      depth.given ? depth->mm : std::min(Length::inches(0.25).mm, place.thickness / 3);
  if (clearance->mm > deep - tolerance::weld)
    return "The groove for " + g.name + " in " + h.name + " is " + figure(builder, deep) +
           " deep, all of it clearance.";
  const Plane& face = place.meeting.face;
  TrenchCut trench{parts::OperationKind::groove,
                   "groove for " + g.name,
                   face,
                   {face.n, face.d - deep},
                   {place.high.flipped(), place.low.flipped()},
                   {}};
  if (std::string fault = check_depth(builder, h, place, trench); !fault.empty()) return fault;

  Draft draft(builder, "groove", host, guest);
  draft.dihedral(crossing_angle(h.along, place.meeting.in));
  if (std::string fault = end_guest(builder, h, g, place, trench.floor, clearance->mm, draft);
      !fault.empty())
    return fault;
  trench.stops = lay_stops(*this, h, g, place, draft);
  cut_trench(builder, host, trench, draft);
  for (const Plane& wall : trench.walls) draft.must_meet(host, guest, wall, "walls");
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
