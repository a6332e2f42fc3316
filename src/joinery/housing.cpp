#include <algorithm>
#include <cmath>

#include "joinery/joint.h"

namespace splay::joinery {

namespace {

// A point where the guest's wall meets the host's face, moved down the wall until it is `depth`
// square below the face.
Vec3 foot_of_wall(const Plane& wall, const Plane& face, double depth) {
  const double c = dot(wall.n, face.n);
  const double bottom = face.d - depth;
  // The point of the line wall /\ (face - depth) in the plane of the two normals.
  const double s = 1 - c * c;
  return wall.n * ((wall.d - bottom * c) / s) + face.n * ((bottom - wall.d * c) / s);
}

// The floor points out of the host. Square to the walls it leans with them, and passes through the
// foot of that wall which leaves the other one deeper.
Plane floor_plane(const Housing& joint) {
  if (joint.floor == HousingFloor::parallel_to_face)
    return {joint.face.n, joint.face.d - joint.depth};
  const Vec3 n = unit(joint.face.n - joint.wall_1.n * dot(joint.wall_1.n, joint.face.n));
  const double at_1 = dot(n, foot_of_wall(joint.wall_1, joint.face, joint.depth));
  const double at_2 = dot(n, foot_of_wall(joint.wall_2, joint.face, joint.depth));
  return {n, std::min(at_1, at_2)};
}

// Depth square to the face where the floor meets a wall.
double depth_at(const Plane& wall, const Plane& floor, const Plane& face) {
  const double c = dot(wall.n, floor.n);
  const double s = 1 - c * c;
  const Vec3 p = wall.n * ((wall.d - floor.d * c) / s) + floor.n * ((floor.d - wall.d * c) / s);
  return -face.distance(p);
}

// How far a part reaches in front of the stop.
double reach_in_front(const parts::Part& part, const Plane& stop) {
  const Plane local = part.place.local_plane(stop);
  return local.d - part.body.extent(local.n)[0];
}

}  // namespace

void housing(parts::Builder& builder, const Housing& joint) {
  const int guest = joint.guests.front();
  const std::string name = joint_name(builder, guest, joint.host);
  const Plane floor = floor_plane(joint);

  parts::Trench trench;
  trench.open = nearest_side(builder.part(joint.host), joint.face.n);
  trench.floor = floor;
  trench.walls = {joint.wall_1.flipped(), joint.wall_2.flipped()};
  const double d1 = depth_at(joint.wall_1, floor, joint.face);
  const double d2 = depth_at(joint.wall_2, floor, joint.face);
  trench.shallow = std::min(d1, d2);
  trench.deep = std::max(d1, d2);
  Region removed = {joint.wall_1, joint.wall_2, floor.flipped()};
  if (joint.stopped) {
    trench.stops = {joint.stop};
    removed.push_back(joint.stop.flipped());
  }
  builder.cut_trench(joint.host, parts::OperationKind::housing, removed, trench,
                     "housing for " + builder.part(guest).name, name);

  for (const int edging : joint.host_edgings)
    builder.cut_trench(edging, parts::OperationKind::housing, removed, trench,
                       "housing for " + builder.part(guest).name, name);

  parts::Joint record{name, "housing", {guest, joint.host}, 0, {}};
  for (const int each : joint.guests) {
    builder.cut_end(each, floor.flipped(), "end in " + builder.part(joint.host).name, name);
    if (joint.stopped) {
      // The corner in front of the stop would stand in the host's uncut wood.
      parts::Trench corner;
      corner.open = nearest_side(builder.part(each), joint.stop.n * -1);
      corner.floor = joint.stop.flipped();
      corner.walls = {joint.face.flipped()};
      corner.shallow = corner.deep = reach_in_front(builder.part(each), joint.stop);
      builder.cut_trench(each, parts::OperationKind::notch, {joint.stop, joint.face}, corner,
                         "corner in front of the stopped housing", name);
    }
  }
  record.mates = {{joint.host, guest, floor},
                  {joint.host, guest, joint.wall_1.flipped()},
                  {joint.host, guest, joint.wall_2.flipped()}};
  if (joint.stopped) record.mates.push_back({joint.host, guest, joint.face});
  builder.add_joint(std::move(record));
}

}  // namespace splay::joinery
