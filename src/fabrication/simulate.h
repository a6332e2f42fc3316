// The simulator: a step carried out on a piece of wood.
//
// It knows the machine frame of steps.h, the settings and the wood that lies on the machine, and
// nothing of the part that is wanted. The wood is pushed until it touches table, fence, gauge and
// stop; the tool is swept along the line; what a kerf cuts free falls away.
#pragma once

#include <string>

#include "fabrication/steps.h"
#include "geometry/solid.h"

namespace splay::fabrication {

// The machine frame in the frame of the work, which lies in its part's axes at any place. "" or why
// the work can't lie as the step says: it rocks, or the end that leads isn't the one named.
std::string lay(const Step& step, const Setting& setting, const Solid& work, Rigid& machine);

// How far the work goes towards a side that marks are counted from, or only its marked face where
// the step says so; mm in the frame of the work.
double marks_start(const Step& step, const Solid& work, parts::Side side);

// What the tool sweeps, in the machine frame.
Region swept(const Step& step, const Setting& setting, const Rigid& machine, const Solid& work);

// Lays the work and fills what the tool sweeps, in the frame of the work. "" or why it can't be.
std::string sweep(const Step& step, const Setting& setting, const Solid& work, Region& region);

// Takes what was swept off the work, or glues edging on; "" or that nothing is left.
std::string take_off(const Step& step, const Setting& setting, const Region& region, Solid& work);

// Carries the step out with a setting. "" or why it can't be.
std::string carry_out(const Step& step, const Setting& setting, Solid& work);

// Drops the pieces of `work` that hang together with nothing on the kept side of `waste`: those
// that lie wholly on the side its normal points to.
void drop_offcuts(Solid& work, const Plane& waste);

}  // namespace splay::fabrication
