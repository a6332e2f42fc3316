#include "joinery/fingers.h"

#include <cmath>

#include "base/tolerance.h"

namespace splay::joinery {

namespace {

constexpr double square_to = 1e-9;  // cosine

double thickness(const Plane& one, const Plane& other) { return one.d + other.d; }

// The direction towards the end that is cut off at the corner.
Vec3 end_way(const Stick& part, Vec3 at) {
  const auto [low, high] = part.body.extent(part.along);
  const double here = dot(at, part.along);
  return high - here < here - low ? part.along : -part.along;
}

bool parallel(const Plane& one, const Plane& other) { return dot(one.n, other.n) < -1 + square_to; }

}  // namespace

std::string find_corner(const Stick& host, const Stick& guest, FingerCorner& corner) {
  Crossing crossing;
  if (std::string fault = find_crossing(host, guest, crossing); !fault.empty()) return fault;
  const Vec3 at = Solid::convex(crossing.common).centroid();
  const Vec3 host_way = end_way(host, at), guest_way = end_way(guest, at);
  corner.host = host;
  corner.guest = guest;
  corner.up = crossing.up;
  corner.low = crossing.height[0];
  corner.high = crossing.height[1];
  corner.angle = angle_between(-host_way, -guest_way);
  corner.host_outside = side_at(host, at, guest_way);
  corner.host_inside = side_at(host, at, -guest_way);
  corner.guest_outside = side_at(guest, at, host_way);
  corner.guest_inside = side_at(guest, at, -host_way);
  corner.host_end = unit(host_way - corner.host_outside.n * dot(host_way, corner.host_outside.n));
  corner.host_thickness = thickness(corner.host_outside, corner.host_inside);
  corner.guest_thickness = thickness(corner.guest_outside, corner.guest_inside);
  for (const Plane* face :
       {&corner.host_outside, &corner.host_inside, &corner.guest_outside, &corner.guest_inside})
    if (std::abs(dot(face->n, corner.up)) > square_to)
      return "The faces of " + host.name + " and " + guest.name +
             " lean against their corner: such ends can't be cut into each other.";
  if (!parallel(corner.host_outside, corner.host_inside) ||
      !parallel(corner.guest_outside, corner.guest_inside))
    return "The faces of " + host.name + " and " + guest.name + " are not parallel.";
  for (const Stick* board : {&host, &guest})
    for (const double sense : {1.0, -1.0}) {
      const Plane& edge = side_towards(*board, corner.up * sense);
      const double flush = sense > 0 ? corner.high : -corner.low;
      if (dot(edge.n, corner.up) * sense < 1 - square_to ||
          std::abs(edge.d - flush) > tolerance::weld)
        return "The edges of " + host.name + " and " + guest.name +
               " must be flush and square to their corner.";
    }
  return "";
}

namespace {

// The two sides of a finger, out of it: the low one first.
struct FingerSides {
  Plane low, high;
};

FingerSides sides_of(const FingerCorner& corner, const Finger& finger, double slope, double lap) {
  const Vec3 along = corner.host_end;
  // Halfway along the finger, in the middle of the host.
  const Plane& base = corner.guest_inside;
  const double run = (corner.guest_thickness - lap) / -dot(base.n, along) / 2;
  const Vec3 face = corner.host_outside.n;
  Vec3 at = face * (corner.host_outside.d - corner.host_thickness / 2);
  at = at + along * ((base.d - dot(base.n, at)) / dot(base.n, along) + run);
  const auto side = [&](double sense) {
    const Vec3 up = corner.up * sense;
    const Vec3 edge =
        at + up * (dot(up, corner.up) * finger.middle - dot(up, at)) + up * (finger.width / 2);
    return Plane::through(edge, unit(up - along * slope));
  };
  return {side(-1), side(1)};
}

}  // namespace

void cut_fingers(const FingerCorner& corner, const std::vector<Finger>& fingers, double slope,
                 double lap, const std::string& word, Draft& draft) {
  using parts::OperationKind;
  const int host = corner.host.index, guest = corner.guest.index;
  const Plane end{corner.guest_outside.n, corner.guest_outside.d - lap};
  draft.dihedral(corner.angle);
  draft.cut_end(host, end,
                lap > 0 ? "end in " + corner.guest.name : "end flush with " + corner.guest.name);
  draft.cut_end(guest, corner.host_outside, "end flush with " + corner.host.name);
  std::vector<FingerSides> sides;
  sides.reserve(fingers.size());
  for (const Finger& finger : fingers) sides.push_back(sides_of(corner, finger, slope, lap));
  for (const FingerSides& side : sides) {
    Region socket = {corner.host_inside, side.low, side.high};
    if (lap > 0) socket.push_back(end);
    draft.remove(guest, OperationKind::mortise, socket,
                 "socket for the " + word + "s of " + corner.host.name);
    draft.must_meet(host, guest, side.low, word + " sides");
    draft.must_meet(host, guest, side.high, word + " sides");
  }
  for (std::size_t i = 0; i <= sides.size(); ++i) {
    Region between = {corner.guest_inside};
    if (i > 0) between.push_back(sides[i - 1].high.flipped());
    if (i < sides.size()) between.push_back(sides[i].low.flipped());
    draft.remove(host, OperationKind::mortise, between, "waste between the " + word + "s");
  }
  draft.must_meet(host, guest, corner.host_inside, "shoulders");
  draft.must_meet(host, guest, corner.guest_inside.flipped(), "shoulders");
  if (lap > 0) draft.must_meet(host, guest, end, "ends of the " + word + "s");
}

}  // namespace splay::joinery
