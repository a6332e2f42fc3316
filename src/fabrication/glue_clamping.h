// What sets clamps on the joints of one stage: the author's clamps as they are used up, and bands
// or tape round rings of corners. Internal to src/fabrication.
#pragma once

#include <optional>
#include <vector>

#include "fabrication/glue_up.h"

namespace splay::fabrication {

// Between strips of tape across a joint, mm; common practice, no source.
inline constexpr double tape_apart = 100;
inline constexpr double no_slide = 0.02;  // radians: flatter than this nothing slides

// What is left of the author's clamps as rows of a stage take them. Of the clamps' list, which
// outlives it.
class Rack {
 public:
  explicit Rack(const model::GlueUp& glue_up);
  bool listed() const { return !clamps_.empty(); }
  // Fills the row's clamp, kind, count, force of each and whether they are enough: `force` in all,
  // `least` of them. The shortest that reaches and of which there are enough; for a band the
  // shortest round it.
  void choose(Clamping& row, double force, int least);
  // A band that long, or no list of clamps at all.
  bool has_band(double girth) const;

 private:
  const model::Tables<model::Clamp>& clamps_;
  std::vector<int> left_;
};

// Where a line through the work leaves it: how far along, through which face of which part.
struct Hit {
  double at = -1e300;
  Vec3 normal;
  int part = -1;
};
struct Heads {
  Hit low, high;  // against the axis and along it
};
// Where the heads of a clamp bear whose line runs through a point: outside of all, or where that is
// far, in an opening of the work that the clamp reaches into from one side. Nothing where the line
// misses the work.
std::optional<Heads> heads_on(const parts::Assembly& all, const std::vector<int>& among,
                              Vec3 through, Vec3 axis);

// A closed ring of corner joints.
struct Ring {
  std::vector<int> joints, parts;
};
// Of those joints, each in one ring at the most.
std::vector<Ring> rings_of(const parts::Assembly& all, const std::vector<JointWork>& work,
                           const std::vector<int>& joints);
// The band or the tape round a ring; nothing where neither serves, so that clamps in rows do.
std::optional<Clamping> clamp_round(const parts::Assembly& all, const std::vector<JointWork>& work,
                                    const Ring& ring, Rack& rack);

}  // namespace splay::fabrication
