#include "joinery/housing.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

// How far a part reaches in front of the stop.
double reach_in_front(const parts::Part& part, const Plane& stop) {
  const Plane local = part.place.local_plane(stop);
  return local.d - part.body.extent(local.n)[0];
}

TrenchCut housing_cut(const std::string& guest, const Plane& face, const Plane& floor,
                      const Plane& wall_1, const Plane& wall_2) {
  return {parts::OperationKind::housing,
          "housing for " + guest,
          face,
          floor,
          {wall_1.flipped(), wall_2.flipped()},
          {}};
}

}  // namespace

void housing(parts::Builder& builder, const Housing& joint) {
  const int guest = joint.guests.front();
  Draft draft(builder, "housing", joint.host, guest);
  const Plane floor =
      trench_floor(joint.floor, joint.face, joint.wall_1, joint.wall_2, joint.depth);
  TrenchCut trench =
      housing_cut(builder.part(guest).name, joint.face, floor, joint.wall_1, joint.wall_2);
  if (joint.stopped) trench.stops = {joint.stop};
  cut_trench(builder, joint.host, trench, draft);
  for (const int edging : joint.host_edgings) cut_trench(builder, edging, trench, draft);
  for (const int each : joint.guests) {
    draft.cut_end(each, floor.flipped(), "end in " + builder.part(joint.host).name);
    if (!joint.stopped) continue;
    // The corner in front of the stop would stand in the host's uncut wood.
    parts::Trench corner;
    corner.open = nearest_side(builder.part(each), joint.stop.n * -1);
    corner.floor = joint.stop.flipped();
    corner.walls = {joint.face.flipped()};
    corner.shallow = corner.deep = reach_in_front(builder.part(each), joint.stop);
    draft.trench(each, parts::OperationKind::notch, {joint.stop, joint.face}, corner,
                 "corner in front of the stopped housing");
  }
  draft.must_meet(joint.host, guest, floor, "floor");
  draft.must_meet(joint.host, guest, joint.wall_1.flipped(), "walls");
  draft.must_meet(joint.host, guest, joint.wall_2.flipped(), "walls");
  if (joint.stopped) draft.must_meet(joint.host, guest, joint.face, "shoulders at the stop");
  draft.carry_out_untried(builder);
}

void HousingKind::fields(model::FieldVisitor& visit) {
  visit.length(may("depth", "depth square to the face, at the shallower wall",
                   "a third of the host's thickness, common practice"),
               depth, Range::size());
  model::choose<HousingFloor, 2>(
      visit,
      may("floor",
          "floor for a leaning part: square to its walls leaves its end square; parallel to the "
          "face keeps one depth and bevels the end"),
      floor, {"square to walls", "parallel to face"});
  model::choose<HousingEnds, 2>(
      visit, may("ends", "the trench runs out of the host's edges or fits the part all round"),
      ends, {"run out", "fit the part"});
  stop_fields(visit);
}

std::string HousingKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  TrenchPlace place;
  if (std::string fault = find_trench(h, g, place); !fault.empty()) return fault;
  const double deep = depth.given ? depth->mm : place.thickness / 3;
  const Plane& face = place.meeting.face;
  const Plane bottom = trench_floor(floor.value, face, place.high, place.low, deep);
  TrenchCut trench = housing_cut(g.name, face, bottom, place.high, place.low);
  if (std::string fault = check_depth(builder, h, place, trench); !fault.empty()) return fault;

  Draft draft(builder, "housing", host, guest);
  draft.dihedral(crossing_angle(h.along, place.meeting.in));
  if (std::string fault = end_guest(builder, h, g, place, bottom, 0, draft); !fault.empty())
    return fault;
  if (ends.value == HousingEnds::fit) {
    const Vec3 across = place.meeting.along ? g.place.ey : g.place.ex;
    for (const Vec3 way : {across, -across}) trench.stops.push_back(hull_towards(g, way).flipped());
    for (const Plane& stop : trench.stops) draft.may_meet(host, guest, stop);
  } else {
    trench.stops = lay_stops(*this, h, g, place, draft);
  }
  cut_trench(builder, host, trench, draft);
  for (const Plane& wall : trench.walls) draft.must_meet(host, guest, wall, "walls");
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
