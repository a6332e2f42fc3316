#include "joinery/lapping.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "joinery/joint.h"

namespace splay::joinery {

namespace {

constexpr double least_crossing = std::numbers::pi / 36;  // 5 degrees
constexpr double direction_noise = 1e-9;

Region both(const Region& a, const Region& b) {
  Region all = a;
  all.insert(all.end(), b.begin(), b.end());
  return all;
}

// The plane along `direction` over the edge between a side that looks that way and one that
// doesn't: a mean of the two whose normal is square to it.
Plane silhouette(const Plane& towards, const Plane& away, Vec3 direction) {
  const double a = -dot(away.n, direction), b = dot(towards.n, direction);
  const Vec3 n = towards.n * a + away.n * b;
  const double length = norm(n);
  return {n * (1 / length), (towards.d * a + away.d * b) / length};
}

}  // namespace

Region facing_sides(const Stick& stick, Vec3 direction) {
  Region region;
  for (const Plane& side : stick.sides)
    if (dot(side.n, direction) < direction_noise) region.push_back(side);
  return region;
}

void meet_walls(const Stick& cut, const Stick& other, const Region& walls, Draft& draft) {
  for (const Plane& wall : walls) draft.may_meet(cut.index, other.index, wall.flipped());
}

Region swept(const Stick& stick, Vec3 direction) {
  Region region = facing_sides(stick, direction);
  for (const Plane& towards : stick.sides) {
    if (dot(towards.n, direction) < direction_noise) continue;
    for (const Plane& away : stick.sides) {
      // A side along the direction is its own silhouette, and opposite sides have no edge.
      if (dot(away.n, direction) > -direction_noise) continue;
      if (dot(towards.n, away.n) < -1 + direction_noise) continue;
      const Plane plane = silhouette(towards, away, direction);
      if (stick.body.extent(plane.n)[1] <= plane.d + tolerance::on_plane) region.push_back(plane);
    }
  }
  return region;
}

Region own_space(const Stick& stick, Vec3 direction) {
  constexpr double open = 0.9;  // cosine: rolled by more than 25 degrees it is let in all round
  Region region;
  for (const Plane& side : stick.sides)
    if (dot(side.n, direction) < open) region.push_back(side);
  return region;
}

std::string find_crossing(const Stick& host, const Stick& guest, Crossing& crossing) {
  if (host.body.empty() || guest.body.empty())
    return "Nothing is left of " + (host.body.empty() ? host.name : guest.name) + ".";
  crossing.angle = crossing_angle(host.along, guest.along);
  if (crossing.angle < least_crossing)
    return guest.name + " lies along " + host.name + ": parts must cross at 5 degrees or more.";
  crossing.up = unit(cross(host.along, guest.along));
  crossing.common = both(host.sides, guest.sides);
  const Solid common = Solid::convex(crossing.common);
  const double volume = common.volume();
  if (common.empty() || volume < tolerance::gap)
    return guest.name + " and " + host.name + " do not cross: they share no space.";
  crossing.height = common.extent(crossing.up);
  for (const Stick* part : {&host, &guest}) {
    Solid missing = common;
    missing.subtract(part->body);
    if (missing.volume() > volume * 1e-9)
      return part->name + " has no whole wood where it crosses " +
             (part == &host ? guest : host).name + ": it stops short, or another cut is there.";
  }
  return "";
}

double trim_ends(const Stick& host, const Stick& guest, LapForm form, const Crossing& crossing,
                 Draft& draft) {
  if (form == LapForm::cross) return crossing.angle;
  const Vec3 at = Solid::convex(crossing.common).centroid();
  // The direction of the shorter overhang; the cut is the other part's side that looks that way.
  const auto short_way = [&](const Stick& part) {
    const auto [low, high] = part.body.extent(part.along);
    const double here = dot(at, part.along);
    return high - here < here - low ? part.along : -part.along;
  };
  const Vec3 guest_way = short_way(guest), host_way = short_way(host);
  draft.cut_end(guest.index, side_at(host, at, guest_way), "end flush with " + host.name);
  if (form == LapForm::tee) return crossing.angle;
  draft.cut_end(host.index, side_at(guest, at, host_way), "end flush with " + guest.name);
  return angle_between(guest_way, host_way);
}

void cut_lap(const Stick& cut, const Stick& other, const Plane& floor, const Region& walls,
             Draft& draft) {
  Region removed = walls;
  removed.push_back(floor.flipped());
  parts::Trench trench;
  trench.floor = floor;
  for (const Plane& wall : walls)
    if (std::abs(dot(wall.n, floor.n)) < 0.9) trench.walls.push_back(wall.flipped());
  Solid gone = cut.body;
  gone.keep(removed);
  const Vec3 local = cut.place.local_direction(floor.n);
  const bool from_face = std::abs(local.z) >= std::abs(local.y);
  trench.open = from_face ? (local.z > 0 ? parts::Side::z_high : parts::Side::z_low)
                          : (local.y > 0 ? parts::Side::y_high : parts::Side::y_low);
  trench.deep = trench.shallow = gone.empty() ? 0 : gone.extent(floor.n)[1] - floor.d;
  for (const Vec3 corner : gone.vertices()) {
    const double depth = floor.distance(corner);
    if (depth > tolerance::weld) trench.shallow = std::min(trench.shallow, depth);
  }
  draft.trench(cut.index, parts::OperationKind::notch, std::move(removed), std::move(trench),
               "lap for " + other.name);
}

}  // namespace splay::joinery
