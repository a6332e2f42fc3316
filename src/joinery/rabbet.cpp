#include "joinery/rabbet.h"

#include <cmath>

#include "base/tolerance.h"

namespace splay::joinery {

using model::may;
using model::Range;

void RabbetKind::fields(model::FieldVisitor& visit) {
  visit.length(
      may("depth", "depth square to the face", "half the host's thickness, common practice"), depth,
      Range::size());
  visit.length(may("clearance", "room between the part's edge and the floor"), clearance,
               Range::allowance());
  model::choose<RabbetOpen, 3>(
      visit,
      may("open_to",
          "face of the entering part that the rabbet leaves open; by itself: the one with less of "
          "the host beyond it"),
      open_to, {"by itself", "high face", "low face"});
  stop_fields(visit);
}

std::string RabbetKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  TrenchPlace place;
  if (std::string fault = find_trench(h, g, place); !fault.empty()) return fault;
  const double above = h.body.extent(place.high.n)[1] - place.high.d;
  const double below = h.body.extent(place.low.n)[1] - place.low.d;
  if (open_to.value == RabbetOpen::by_itself && std::abs(above - below) < tolerance::weld)
    return g.name + " stands in the middle of " + h.name +
           ": say which face its rabbet is open to.";
  const bool high_open = open_to.value == RabbetOpen::by_itself
                             ? above < below
                             : open_to.value == RabbetOpen::high_face;
  const Plane& face = place.meeting.face;
  const double deep = depth.given ? depth->mm : place.thickness / 2;
  if (clearance->mm > deep - tolerance::weld)
    return "The rabbet for " + g.name + " in " + h.name + " is " + figure(builder, deep) +
           " deep, all of it clearance.";
  TrenchCut trench{parts::OperationKind::rabbet,
                   "rabbet for " + g.name,
                   face,
                   {face.n, face.d - deep},
                   {(high_open ? place.low : place.high).flipped()},
                   {}};
  if (std::string fault = check_depth(builder, h, place, trench); !fault.empty()) return fault;

  Draft draft(builder, "rabbet", host, guest);
  draft.dihedral(crossing_angle(h.along, place.meeting.in));
  if (std::string fault = end_guest(builder, h, g, place, trench.floor, clearance->mm, draft);
      !fault.empty())
    return fault;
  trench.stops = lay_stops(*this, h, g, place, draft);
  cut_trench(builder, host, trench, draft);
  draft.must_meet(host, guest, trench.walls.front(), "wall");
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
