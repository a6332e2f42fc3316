// Rows and marks as every list of the binder has them.
#pragma once

#include <string>
#include <vector>

#include "fabrication/plan.h"

namespace splay::fabrication {

// The plan's rows in the order of the binder: as they are, but left and right hand together.
std::vector<const PartRow*> rows_in_order(const Plan& plan);

// The marks of some parts (indices into Assembly::parts), each once, in that order.
std::vector<std::string> marks_in_order(const Plan& plan, const std::vector<int>& parts);

}  // namespace splay::fabrication
