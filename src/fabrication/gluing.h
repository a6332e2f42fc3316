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

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "fabrication/gluing_sets.h"
#include "parts/part.h"

namespace splay::fabrication {

// One act of assembly: `moving` comes to `fixed`, both made up before, and together they are one.
struct Joining {
  std::vector<int> moving, fixed;  // indices into Assembly::parts, ascending
  Vec3 way;                        // world, unit: how `moving` travels on its way in
  // Indices into Assembly::joints: made by this joining. One made before the cuts is in none.
  std::vector<int> joints;
  bool slides = false;  // a joint of it is wiped along, no mating face is pressed home
};

struct AssemblyOrder {
  std::vector<Joining> joinings;  // in the order of work, sub-assemblies before what takes them
  std::vector<std::vector<int>> stuck;  // groups that no straight line takes apart; not in joinings
  std::vector<Finding> findings;        // "no-way-in" for each of them; "order-closed"
  bool complete() const { return stuck.empty(); }
};

// A part, or a group made up by itself, at its place in the order that the author wants.
struct Pinned {
  std::string name;
  std::vector<int> parts;
};

// A solid made ready for stands_in_the_way(); its box along the axes of `frame` should lie close
// about it.
class SweepSolid {
 public:
  struct Hull {  // a convex cell
    std::vector<Vec3> points;
    std::vector<Vec3> normals;  // of its faces, opposite ones once
    std::vector<Vec3> edges;    // directions, opposite ones once
    Box box;
  };
  explicit SweepSolid(const Solid& solid, const Rigid& frame = {});

 private:
  friend PartSet closed_ways(const SweepSolid& moving, const SweepSolid& obstacle,
                             std::span<const Vec3> ways, const PartSet& asked);
  std::vector<Hull> hulls_;
  Hull around_;  // the box in the frame
  Box box_;
};

// Along which of the ways that are asked for (indices into `ways`) does `obstacle` stand in the
// way?
PartSet closed_ways(const SweepSolid& moving, const SweepSolid& obstacle,
                    std::span<const Vec3> ways, const PartSet& asked);

// Does `obstacle` stand in the way when `moving` runs from where it is along the unit vector `way`,
// as far as one likes? Contact deeper than tolerance::on_plane counts, sliding along a face
// doesn't.
bool stands_in_the_way(const SweepSolid& moving, const SweepSolid& obstacle, Vec3 way);

// The directions along which something may come apart, each of unit length, without repetition,
// opposite ones one after the other: of the mated faces, square to them, along two of them, of
// dowels and loose tenons, and along the parts.
struct LikelyWays {
  std::vector<Vec3> ways;
  // Who suggests them, by index: the piece as a whole, and each part, joint and fitting.
  std::vector<int> of_piece;
  std::vector<std::vector<int>> of_part, of_joint, of_fitting;
};
LikelyWays likely_ways(const parts::Assembly& assembly);

// A dowel or loose tenon lets its parts come apart along itself only.
bool guides(const parts::Fitting& fitting);
// Are they one direction or opposite ones?
bool parallel(Vec3 a, Vec3 b);

// Who stands in whose way along each of some directions, worked out when first asked. Of the
// assembly, which outlives it. Parts that are one before they are cut are tied from the start.
class Blocking {
 public:
  Blocking(const parts::Assembly& assembly, LikelyWays ways);
  const std::vector<Vec3>& ways() const { return likely_.ways; }
  // Those that the parts of a group, and what joins them, suggest.
  PartSet ways_for(const PartSet& group) const;
  // Ways that will be asked for in turn: for two parts they are then found together.
  void expect(PartSet ways) { expected_ = std::move(ways); }
  std::size_t parts() const { return solids_.size(); }
  // Can't `part` leave along ways()[way] before `other`, for its solid or for a dowel or loose
  // tenon that both hold?
  bool waits(std::size_t way, int part, int other);
  // Those among `others` for which it waits; the rest isn't looked at.
  PartSet held_by(std::size_t way, int part, const PartSet& others);
  // Can the parts of `off` leave those of `rest`?
  bool free(std::size_t way, const PartSet& off, const PartSet& rest);

  // Parts that from now on move as one.
  void tie(const PartSet& together);
  const PartSet& tied(int part) const { return tied_[static_cast<std::size_t>(part)]; }
  // For each part of `whole`, ascending, the least that must come off together with it: all it
  // waits for within `whole`, and where it goes gently also all it would wipe along.
  std::vector<PartSet> with(std::size_t way, const PartSet& whole, bool gently);

  // The parts of each joint, those that share a joint with a part, and whether a run along a way
  // presses none of the joint's faces home.
  const std::vector<PartSet>& joints() const { return joints_; }
  const std::vector<int>& joints_of(int part) const {
    return joints_of_[static_cast<std::size_t>(part)];
  }
  const PartSet& neighbours(int part) const { return neighbours_[static_cast<std::size_t>(part)]; }
  bool slides(std::size_t way, std::size_t joint) { return slid(way)[joint]; }

 private:
  void find_joints();
  void find_guides();
  const std::vector<bool>& slid(std::size_t way);
  PartSet wiped(std::size_t way, int part);
  void find_run(std::size_t way, int part, int other);
  // What is known of one part's run along one way, as far as it was asked for.
  struct Run {
    PartSet asked, held;
  };
  Run& run(std::size_t way, int part);

  const parts::Assembly& assembly_;
  LikelyWays likely_;
  PartSet expected_;
  std::vector<SweepSolid> solids_;
  std::vector<PartSet> joints_, neighbours_, tied_;
  std::vector<std::vector<int>> joints_of_;  // part
  std::vector<std::vector<bool>> slides_;    // way, joint; empty: not asked for yet
  // Way, part. A part of a large job is asked about the few ways of its own piece only.
  std::vector<std::vector<std::unique_ptr<Run>>> runs_;
  struct Guide {
    Vec3 axis;
    PartSet parts;
  };
  std::vector<Guide> guides_;                // dowels and loose tenons
  std::vector<std::vector<int>> guides_of_;  // part
};

// Would a run along `way` press none of the joint's faces home?
bool only_slid(const parts::Joint& joint, Vec3 way);

// `pinned` are brought together first, each to all before it; what it leaves out comes after. Where
// one of them has no free way the whole order is computed instead: "order-closed" says which.
AssemblyOrder order_of_assembly(const parts::Assembly& assembly,
                                std::span<const Pinned> pinned = {});

}  // namespace splay::fabrication
