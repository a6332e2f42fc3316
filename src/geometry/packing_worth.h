// The arithmetic common to all weight bounds of packing_bound.h.
#pragma once

#include "geometry/packing_types.h"

namespace splay::packing {

// The least cost of sheets that cover `weight` when a sheet of stock s covers at most worth[s]. A
// lower bound by linear programming duality: one scale for the weights at which no unlimited sheet
// is worth more than it costs, less what limited sheets are worth beyond their cost.
double covering_cost(const std::vector<Stock>& stocks, const std::vector<double>& worth,
                     double weight);

}  // namespace splay::packing
