// What was measured on the finished work beside what was designed.
#pragma once

#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "fabrication/plan.h"
#include "model/as_built.h"

namespace splay::fabrication {

struct Measured {
  std::string what;                   // "width over everything", "B-L length"
  double designed = 0, measured = 0;  // mm
  double difference() const { return measured - designed; }
};
// Everything [as_built] gives, the whole piece first, then parts in the author's order.
std::vector<Measured> measured(const Plan& plan, const model::AsBuilt& built);

// Marks that [as_built] names and the piece doesn't have.
std::vector<Diagnostic> as_built_faults(const Plan& plan, const model::AsBuilt& built);

}  // namespace splay::fabrication
