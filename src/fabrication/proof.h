// The proof: every part is cut by its steps in the simulator and compared with the part that is
// wanted, once with the exact settings and once with the printed ones; then the cut parts are put
// together and their joints measured.
#pragma once

#include <span>

#include "fabrication/plan.h"

namespace splay::fabrication {

inline constexpr double proven_within = 1e-6;  // mm

// The blank as it comes to the bench: the finished box with the shop's allowance, in the part
// frame.
Solid blank_of(const model::Project& project, const parts::Part& part);

// What a row's steps have to leave, its low corner at the origin. Of edging that is glued on before
// the cuts a strip as long as its blank.
Solid wanted_of(const Plan& plan, int row);

struct Comparison {
  double deviation = 0;  // how far at the most a corner of what one has too much is off the other
  double volume = 0;     // mm3 that is in one and not in the other
  bool equal(double area) const {  // `area` of the part's boundary box, mm2
    return deviation < proven_within && volume < proven_within * area;
  }
};
Comparison compare(const Solid& made, const Solid& wanted);

// The steps of one part carried out on its blank, moved to the low corner of its box. "" or the
// first step that can't be carried out and why.
std::string cut_part(std::span<const Step> steps, bool printed, Solid& work);

// Fills the proof's fields of the plan's steps and the joints' gaps.
void prove(Plan& plan);

}  // namespace splay::fabrication
