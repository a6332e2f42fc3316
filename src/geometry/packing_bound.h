// Proven lower bounds on the cost of the sheets that a set of pieces needs, for layouts by
// guillotine cuts. Every bound rests on weights: if pieces have weights of at least 0 and no layout
// of a sheet holds more than some worth, sheets of that worth must cover the weight of all pieces.
//
// area: the weight is the area. dual feasible functions: S. Fekete, J. Schepers, "New classes of
// fast lower bounds for bin packing problems", Mathematical Programming 91 (2001) 11-31; a piece
// that may turn counts with its lesser weight. columns: the prices of the linear program over
// guillotine patterns (Gilmore and Gomory), whose worth is the exact unconstrained guillotine
// knapsack, so that the bound is proven at any moment of the iteration (A. Farley, "A note on
// bounding a class of linear programming problems", Operations Research 38 (1990) 922-923).
#pragma once

#include "geometry/packing_types.h"

namespace splay::packing {

// A bound on the cost of sheets of the given stocks; 0 when only free sheets are needed.
double area_bound(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces);
double dual_feasible_bound(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces);

// A step is one round of pricing all stocks. Sheets longer than the table can hold
// (packing_table.h) are priced on a coarser scale, pieces rounded down, which keeps the bound
// valid.
double column_bound(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces,
                    const Effort& effort);

// The best of the three. Goes no further once `reached`, the cost of a layout, is proven least.
double cost_bound(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces,
                  const Effort& effort, double reached);

// The least cost of at least `bound` that whole sheets can have: a multiple of the common cost of
// all sheets that cost anything, or of the greatest common divisor of costs that are whole numbers.
double round_up_to_sheets(double bound, const std::vector<Stock>& stocks);

}  // namespace splay::packing
