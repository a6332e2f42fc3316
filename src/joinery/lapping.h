// Two sticks that cross in the same space, shared out in layers: what half laps and bridles have in
// common. Everything in the world.
#pragma once

#include <array>
#include <string>

#include "joinery/draft.h"
#include "joinery/stick.h"

namespace splay::joinery {

enum class LapForm { cross, tee, corner };
enum class LapWalls { other_part, floor, square };

struct Crossing {
  Vec3 up;  // unit, square to both lengths: the direction the parts go together
  std::array<double, 2> height{};  // extent of the common space along `up`
  Region common;                   // the space between the long sides of both
  double angle = 0;                // between the lengths, 0 to half pi
};
// "" and the crossing, or why the two don't cross with whole wood.
std::string find_crossing(const Stick& host, const Stick& guest, Crossing& crossing);

// The space that `stick` sweeps when it is moved along `direction` without end: its long sides that
// don't look that way, and the silhouette.
Region swept(const Stick& stick, Vec3 direction);

// The space a stick takes up itself, open to `direction`: for parts that go together along one of
// their lengths, which leaves no room beside a rolled one.
Region own_space(const Stick& stick, Vec3 direction);

// The sides of a stick that bound what it sweeps; the silhouette of a rolled one touches nothing.
Region facing_sides(const Stick& stick, Vec3 direction);
// Walls (normals into the wood of `cut`) that the other part may touch.
void meet_walls(const Stick& cut, const Stick& other, const Region& walls, Draft& draft);

// Cuts the ends that a tee or corner doesn't run past: flush with the other's far side. Returns the
// angle between the members inside a corner, or the crossing angle.
double trim_ends(const Stick& host, const Stick& guest, LapForm form, const Crossing& crossing,
                 Draft& draft);

// A lap in `cut`: what lies above `floor` (normal out of the wood that stays) inside `walls`.
void cut_lap(const Stick& cut, const Stick& other, const Plane& floor, const Region& walls,
             Draft& draft);

}  // namespace splay::joinery
