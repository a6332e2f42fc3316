#include "joinery/trench.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

// The point where two planes meet, in the plane of their normals.
Vec3 foot(const Plane& a, const Plane& b) {
  const double c = dot(a.n, b.n), s = 1 - c * c;
  return a.n * ((a.d - b.d * c) / s) + b.n * ((b.d - a.d * c) / s);
}

}  // namespace

double depth_at(const Plane& wall, const Plane& floor, const Plane& face) {
  return -face.distance(foot(wall, floor));
}

Plane trench_floor(HousingFloor kind, const Plane& face, const Plane& wall_1, const Plane& wall_2,
                   double depth) {
  const Plane bottom{face.n, face.d - depth};
  if (kind == HousingFloor::parallel_to_face) return bottom;
  // Through the foot of that wall which leaves the other one deeper.
  const Vec3 n = unit(face.n - wall_1.n * dot(wall_1.n, face.n));
  return {n, std::min(dot(n, foot(wall_1, bottom)), dot(n, foot(wall_2, bottom)))};
}

void cut_trench(const parts::Builder& builder, int part, const TrenchCut& trench, Draft& draft) {
  parts::Trench made;
  made.open = nearest_side(builder.part(part), trench.face.n);
  made.floor = trench.floor;
  made.walls = trench.walls;
  made.stops = trench.stops;
  Region removed = {trench.floor.flipped()};
  made.shallow = 1e300;
  for (const Plane& wall : trench.walls) {
    const double depth = depth_at(wall, trench.floor, trench.face);
    made.shallow = std::min(made.shallow, depth);
    made.deep = std::max(made.deep, depth);
    removed.push_back(wall.flipped());
  }
  for (const Plane& stop : trench.stops) removed.push_back(stop.flipped());
  draft.trench(part, trench.kind, std::move(removed), std::move(made), trench.name);
}

void TrenchKind::stop_fields(model::FieldVisitor& visit) {
  visit.length(may("stopped", "how far short of the host's edge it stops", "it runs out"), stopped,
               Range::size());
  model::choose<StoppedAt, 3>(visit, may("stopped_at", "edge of the entering part it stops at"),
                              stopped_at, {"low edge", "high edge", "both edges"});
}

std::string find_trench(const Stick& host, const Stick& guest, TrenchPlace& place) {
  if (std::string fault = find_meeting(host, guest, Lines::length_or_width, place.meeting);
      !fault.empty())
    return fault;
  place.thickness = place.meeting.room * std::abs(dot(place.meeting.in, place.meeting.face.n));
  place.high = hull_towards(guest, guest.place.ez);
  place.low = hull_towards(guest, -guest.place.ez);
  return "";
}

std::vector<Plane> lay_stops(const TrenchKind& kind, const Stick& host, const Stick& guest,
                             const TrenchPlace& place, Draft& draft) {
  std::vector<Plane> stops;
  if (!kind.stopped.given) return stops;
  bool shoulders = false;
  const Vec3 high = place.meeting.along ? guest.place.ey : guest.place.ex;
  for (const bool at_high : {false, true}) {
    if (kind.stopped_at.value == (at_high ? StoppedAt::low_edge : StoppedAt::high_edge)) continue;
    const Plane edge = hull_towards(host, at_high ? high : -high);
    const Plane stop = Plane{edge.n, edge.d - kind.stopped->mm}.flipped();
    stops.push_back(stop);
    const double reach = stop.d - guest.body.extent(stop.n)[0];
    if (reach < tolerance::weld) continue;
    parts::Trench corner;
    corner.open = at_high ? (place.meeting.along ? parts::Side::y_high : parts::Side::x_high)
                          : (place.meeting.along ? parts::Side::y_low : parts::Side::x_low);
    corner.floor = stop.flipped();
    corner.walls = {place.meeting.face.flipped()};
    corner.shallow = corner.deep = reach;
    draft.trench(guest.index, parts::OperationKind::notch, {stop, place.meeting.face}, corner,
                 "corner in front of the stop in " + host.name);
    shoulders = true;
  }
  if (shoulders)
    draft.must_meet(host.index, guest.index, place.meeting.face, "shoulders at the stop");
  return stops;
}

std::string end_guest(const parts::Builder& builder, const Stick& host, const Stick& guest,
                      const TrenchPlace& place, const Plane& floor, double clearance,
                      Draft& draft) {
  const Plane end = Plane{floor.n, floor.d + clearance}.flipped();
  if (!whole_behind(guest, end, place.meeting.in))
    return guest.name + " does not reach the floor in " + host.name + ": " +
           figure(builder, place.meeting.reach) + " of it is past the face.";
  if (place.meeting.along)
    draft.cut_end(guest.index, end, "end in " + host.name);
  else
    draft.cut_edge(guest.index, end, "edge in " + host.name);
  if (clearance == 0) draft.must_meet(host.index, guest.index, floor, "floor");
  return "";
}

std::string check_depth(const parts::Builder& builder, const Stick& host, const TrenchPlace& place,
                        const TrenchCut& trench) {
  double deep = 0;
  for (const Plane& wall : trench.walls)
    deep = std::max(deep, depth_at(wall, trench.floor, trench.face));
  if (deep < place.thickness - tolerance::weld) return "";
  return "The " + trench.name + " would go right through " + host.name + ": " +
         figure(builder, deep) + " deep in " + figure(builder, place.thickness) + ".";
}

}  // namespace splay::joinery
