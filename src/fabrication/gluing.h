// The order of assembly, computed from the solids: which parts or sub-assemblies come together,
// along which straight line, and where none is free.
//
// The method takes the finished piece apart (a sequence of taking apart, read backwards, is one of
// putting together). For each direction that the joints suggest, part i waits for part j when j
// stands in the way of i's straight run; what waits for nothing left behind comes off together
// (the non-directional blocking graph of Wilson and Latombe, "Geometric reasoning about mechanical
// assembly", Artificial Intelligence 71, 1994). Taking something off never puts anything in
// another's way, so what is found greedily is found whenever it exists: along straight lines, one
// line for each joining, parts rigid.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "parts/part.h"

namespace splay::fabrication {

// One act of assembly: `moving` comes to `fixed`, both made up before, and together they are one.
struct Joining {
  std::vector<int> moving, fixed;  // indices into Assembly::parts, ascending
  Vec3 way;                        // world, unit: how `moving` travels on its way in
  std::vector<int> joints;         // indices into Assembly::joints: made by this joining
  bool slides = false;             // a joint of it is wiped along, no mating face is pressed home
};

struct AssemblyOrder {
  std::vector<Joining> joinings;  // in the order of work, sub-assemblies before what takes them
  std::vector<std::vector<int>> stuck;  // groups that no straight line takes apart; not in joinings
  std::vector<Finding> findings;        // "no-way-in" for each of them
  bool complete() const { return stuck.empty(); }
};

// A solid made ready for stands_in_the_way().
class SweepSolid {
 public:
  struct Hull {  // a convex cell
    std::vector<Vec3> points;
    std::vector<Vec3> normals;  // of its faces, opposite ones once
    std::vector<Vec3> edges;    // directions, opposite ones once
    Box box;
  };
  explicit SweepSolid(const Solid& solid);

 private:
  friend bool stands_in_the_way(const SweepSolid& moving, const SweepSolid& obstacle, Vec3 way);
  std::vector<Hull> hulls_;
  Box box_;
};

// Does `obstacle` stand in the way when `moving` runs from where it is along the unit vector `way`,
// as far as one likes? Contact deeper than tolerance::on_plane counts, sliding along a face
// doesn't.
bool stands_in_the_way(const SweepSolid& moving, const SweepSolid& obstacle, Vec3 way);

// The directions along which something may come apart, each of unit length, without repetition:
// of the mated faces, square to them, along two of them, and of dowels and loose tenons.
std::vector<Vec3> likely_ways(const parts::Assembly& assembly);

AssemblyOrder order_of_assembly(const parts::Assembly& assembly);

}  // namespace splay::fabrication
