// Corners of two boards whose ends are cut into each other: box joints and dovetails.
#pragma once

#include <string>
#include <vector>

#include "joinery/draft.h"
#include "joinery/lapping.h"

namespace splay::joinery {

// Two boards that reach past each other at a corner, edges flush and square to it. All planes point
// out of their board.
struct FingerCorner {
  Stick host, guest;
  Plane host_outside, host_inside, guest_outside, guest_inside;
  Vec3 up;                   // along the corner
  Vec3 host_end;             // in the host's faces, square to `up`, towards its end
  double low = 0, high = 0;  // of the boards' edges, along `up`
  double angle = 0;          // between the boards' insides, radians
  double host_thickness = 0, guest_thickness = 0;
};
// "" and the corner, or a sentence that says why there is none.
std::string find_corner(const Stick& host, const Stick& guest, FingerCorner& corner);

// A finger of the host, in the guest's thickness: its middle and its width halfway between the
// guest's inside and its own end, along `up`.
struct Finger {
  double middle = 0, width = 0;
};

// Cuts the host's fingers, in order from low to high, into the guest, and what stands between them
// off the host. A finger is wider towards its end by `slope` to either side (tangent); it ends
// `lap` short of the guest's outside. `word`: what the host's fingers are called. Names the
// surfaces that must meet.
void cut_fingers(const FingerCorner& corner, const std::vector<Finger>& fingers, double slope,
                 double lap, const std::string& word, Draft& draft);

}  // namespace splay::joinery
