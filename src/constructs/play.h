// The play of doors and drawers where the author gives no gaps: what is usual in the trade, or as
// much more as the wood may swell and the shop's cuts may be off.
#pragma once

#include <string>

#include "model/project.h"

namespace splay::constructs {

// mm that wood so wide across its grain grows from the moisture while it is made to the dampest; 0
// for sheets and for a species that isn't said.
double swelling(const model::Project& project, const std::string& stock, double across);

// Both gaps of something together that grows by so much: mm, rounded up to what the job prints.
double both_gaps(const model::Project& project, double swells);
// One of them, as large as the other.
double one_gap(const model::Project& project, double swells);

}  // namespace splay::constructs
