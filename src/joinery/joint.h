// Joints whose planes are given: each shapes the parts it is given and records what must meet. The
// joints that find their planes by themselves are in kinds.h.
//
// Parts come to a joint oversize; the joint trims them. Planes are in the world.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/builder.h"

namespace splay::joinery {

// Two ends on one plane. `plane` points out of a, into b. `dihedral` is the angle between the
// members' show sides, radians.
struct Mitre {
  int a = 0, b = 0;
  Plane plane;
  double dihedral = 0;
};
void mitre(parts::Builder& builder, const Mitre& joint);

// A part that ends against another's face. `face` points out of the host, into the guest.
struct Butt {
  int host = 0, guest = 0;
  Plane face;
  double dihedral = 0;
};
void butt(parts::Builder& builder, const Butt& joint);

// Faces glued as they lie, nothing cut. `face` points out of a, into b.
void glued(parts::Builder& builder, int a, int b, const Plane& face, std::string_view kind,
           parts::Made made = parts::Made::in_turn);

enum class HousingFloor { square_to_walls, parallel_to_face };

// A trench in the host that takes the guest's end. The first guest is the panel itself, the others
// are edgings that share its faces. `depth` is square to the host's face at the shallower wall.
struct Housing {
  int host = 0;
  std::vector<int> host_edgings;  // cut through with the host
  std::vector<int> guests;
  Plane face;            // out of the host
  Plane wall_1, wall_2;  // the guest's faces, out of the guest
  double depth = 0;
  HousingFloor floor = HousingFloor::square_to_walls;
  bool stopped = false;
  Plane stop;  // with stopped: out of the wood that stays, into the trench
};
void housing(parts::Builder& builder, const Housing& joint);

// A step or trench along the host for the edge of a panel that lies in it. `floor` and the walls
// point out of the wood that stays; `seat` is the wall the panel lies against. A second wall makes
// it a groove. `stops` bound it where it must not run out.
struct Seat {
  int host = 0, guest = 0;
  Plane floor, seat;
  bool groove = false;
  Plane other_wall;
  std::vector<Plane> stops;
  double depth = 0;
};
void seat(parts::Builder& builder, const Seat& joint);

// The side of a part's bounding box whose outward direction is nearest to a world direction.
parts::Side nearest_side(const parts::Part& part, Vec3 world_direction);

std::string joint_name(const parts::Builder& builder, int a, int b);

}  // namespace splay::joinery
