// Guillotine problems of a few small pieces solved by trying every cut: slow, short, and
// independent of the searches they check.
#pragma once

#include "geometry/packing_table.h"

namespace splay::packing::brute {

// The greatest value from a width by height sheet; sizes of a few units and few copies only.
double best_value(const std::vector<Offer>& offers, Units width, Units height);

// The same with any number of copies, for every rectangle up to width by height: entry [w][h].
std::vector<std::vector<double>> best_values_unlimited(const std::vector<Offer>& offers,
                                                       Units width, Units height);

// The fewest sheets that hold all pieces (at most eight); 0 if some piece fits no sheet.
int fewest_sheets(const std::vector<Piece>& pieces, Units width, Units height);

// The least height of a strip that holds all pieces (at most six).
Units least_height(const std::vector<Piece>& pieces, Units width);

}  // namespace splay::packing::brute
