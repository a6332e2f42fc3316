#include "joinery/half_lap.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

constexpr double steepest_level_walls = 0.7;  // sine of how far parts may go together off level

// The host loses the side that the guest stands off to; level with it, its high side (the show face
// or the high edge).
Vec3 cut_side(const HalfLapKind& kind, const Stick& host, const Stick& guest, Vec3 up) {
  const double off = dot(up, guest.centre - host.centre);
  if (kind.from.value == LapFrom::by_itself && std::abs(off) > tolerance::weld)
    return off > 0 ? up : -up;
  const bool by_face = std::abs(dot(up, host.place.ez)) >= std::abs(dot(up, host.place.ey));
  const double high = dot(up, by_face ? host.place.ez : host.place.ey);
  const bool wanted = kind.from.value != LapFrom::low_side;
  return (high > 0) == wanted ? up : -up;
}

// Walls of the lap in the host that don't follow the guest's sides: two planes with the given
// normal, as far apart as leaves the guest's sides no gap. Empty when they would cross.
Region straight_walls(const Stick& guest, const Crossing& crossing, const Plane& floor,
                      Vec3 normal) {
  Region result;
  Region upper = crossing.common;
  upper.push_back(floor.flipped());
  const Solid shared = Solid::convex(upper);
  for (const Vec3 way : {normal, -normal}) {
    // Of the sides that bound the crossing: another joint may have cut one further along.
    double reach = 1e300, nearest = 0;
    for (const Plane& side : guest.sides) {
      if (dot(side.n, way) <= nearest) continue;
      double here = 1e300;
      for (const Vec3 corner : shared.vertices())
        if (std::abs(side.distance(corner)) < 10 * tolerance::on_plane)
          here = std::min(here, dot(way, corner));
      if (here == 1e300) continue;
      nearest = dot(side.n, way);
      reach = here;
    }
    if (reach == 1e300) return {};
    result.push_back({way, reach});
  }
  if (result[0].d + result[1].d < tolerance::weld) result.clear();
  return result;
}

}  // namespace

void HalfLapKind::fields(model::FieldVisitor& visit) {
  model::choose<LapForm, 3>(
      visit,
      may("form", "both parts run on, the guest ends flush in a tee, or both end in a corner"),
      form, {"cross", "tee", "corner"});
  visit.number(
      may("share", "part of the common thickness that the host loses, common practice: half"),
      share, Range::between(0.05, 0.95));
  model::choose<LapFrom, 3>(
      visit,
      may("from",
          "side of the host the lap is cut from; by itself: the one the guest stands off to"),
      from, {"by itself", "high side", "low side"});
  model::choose<LapWalls, 3>(
      visit,
      may("walls",
          "sides of the host's lap: along the other part, level with the floor, or square to the "
          "host; what the guest has too much is cut from its sides"),
      walls, {"along the other part", "parallel to the floor", "square"});
}

std::string HalfLapKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Crossing crossing;
  if (std::string fault = find_crossing(h, g, crossing); !fault.empty()) return fault;
  const Vec3 up = cut_side(*this, h, g, crossing.up);
  const bool turned = dot(up, crossing.up) < 0;
  const double low = turned ? -crossing.height[1] : crossing.height[0];
  const double high = turned ? -crossing.height[0] : crossing.height[1];
  const Plane floor{up, high - share.value * (high - low)};

  Draft draft(builder, "half lap", host, guest);
  draft.dihedral(trim_ends(h, g, form.value, crossing, draft));
  const bool cross_lap = form.value == LapForm::cross;
  Region host_walls = cross_lap ? swept(g, up) : own_space(g, up);
  const Region guest_walls = cross_lap ? swept(h, -up) : own_space(h, -up);
  Region neck;
  if (walls.value != LapWalls::other_part) {
    Vec3 normal = h.along;
    if (walls.value == LapWalls::floor) {
      // Square to the lap's face and level along it: in a leaning frame they are not quite level.
      const Vec3 level{0, 0, 1};
      if (std::abs(dot(level, up)) > steepest_level_walls)
        return "The lap of " + h.name +
               " can't have level walls: the parts don't go together level.";
      normal = unit(level - up * dot(level, up));
    }
    neck = straight_walls(g, crossing, floor, normal);
    if (neck.empty())
      return "Nothing would be left of " + g.name + " between such walls in " + h.name + ".";
    host_walls = neck;
  }
  cut_lap(h, g, floor, host_walls, draft);
  cut_lap(g, h, floor.flipped(), guest_walls, draft);
  for (const Plane& wall : neck) {
    Region beside = swept(h, up);
    beside.push_back(wall.flipped());
    beside.push_back(floor.flipped());
    draft.remove(guest, parts::OperationKind::notch, beside, "side of the lap in " + h.name);
  }
  draft.must_meet(host, guest, floor, "lap faces");
  meet_walls(h, g, !neck.empty() ? neck : cross_lap ? facing_sides(g, up) : host_walls, draft);
  meet_walls(g, h, cross_lap ? facing_sides(h, -up) : guest_walls, draft);
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
