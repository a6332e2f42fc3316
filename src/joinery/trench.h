// Trenches: what a housing, a groove and a rabbet have in common. Everything in the world.
#pragma once

#include <string>
#include <vector>

#include "joinery/draft.h"
#include "joinery/joint.h"
#include "joinery/kinds.h"
#include "joinery/stick.h"

namespace splay::joinery {

// A trench in a face; all normals but the face's point out of the wood that stays, into the trench.
struct TrenchCut {
  parts::OperationKind kind = parts::OperationKind::housing;
  std::string name;
  Plane face;  // out of the wood
  Plane floor;
  std::vector<Plane> walls, stops;
};
void cut_trench(const parts::Builder& builder, int part, const TrenchCut& trench, Draft& draft);

// Depth square to the face where the floor meets a wall.
double depth_at(const Plane& wall, const Plane& floor, const Plane& face);

// The floor of a trench for a part between two walls that point out of it. Square to the walls it
// leans with them, and `depth` is that of the shallower wall.
Plane trench_floor(HousingFloor kind, const Plane& face, const Plane& wall_1, const Plane& wall_2,
                   double depth);

// Which of the guest's edges the trench stops short of the host's edge at.
enum class StoppedAt { low_edge, high_edge, both_edges };

// Fields that all three share.
struct TrenchKind : JointKind {
  model::Given<Length> depth;
  model::Given<Length> stopped;
  model::Given<StoppedAt> stopped_at{StoppedAt::high_edge};

 protected:
  void stop_fields(model::FieldVisitor& visit);
};

// The guest's end or edge at the host, and the guest's two faces as possible walls, out of it.
struct TrenchPlace {
  Meeting meeting;
  double thickness = 0;  // of the host, square to the face
  Plane high, low;
};
std::string find_trench(const Stick& host, const Stick& guest, TrenchPlace& place);

// The stops, and the guest's corners that would stand in the host's uncut wood in front of them.
std::vector<Plane> lay_stops(const TrenchKind& kind, const Stick& host, const Stick& guest,
                             const TrenchPlace& place, Draft& draft);

// Ends the guest `clearance` above the floor (0: on it, and they must meet). "" or why not.
std::string end_guest(const parts::Builder& builder, const Stick& host, const Stick& guest,
                      const TrenchPlace& place, const Plane& floor, double clearance, Draft& draft);

// "" or why a trench of this depth can't be in the host.
std::string check_depth(const parts::Builder& builder, const Stick& host, const TrenchPlace& place,
                        const TrenchCut& trench);

}  // namespace splay::joinery
