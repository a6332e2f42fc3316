// Lengths smaller than a job's smallest printed step: gaps, deviations.
#pragma once

#include <string>

#include "base/figure.h"

namespace splay {

// To 0.01 mm or 0.001 in: "0.51 mm", "0.02 in"; "under 0.001 in" for less than half of that.
std::string small_length(double mm, Unit unit);

}  // namespace splay
