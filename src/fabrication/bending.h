// Beams carried at both ends: how far a shelf or rail sags. N, mm and MPa throughout, or any other
// units that agree. Textbook formulas of beam theory (bending only, small deflections).
#pragma once

namespace splay::fabrication {

double second_moment(double width, double thickness);  // of a rectangle lying flat

// At the middle of a beam that rests freely on both ends. A housing holds an end too loosely to
// count as fixed.
double sag_spread(double load_per_length, double span, double modulus, double second_moment);
double sag_middle(double load, double span, double modulus, double second_moment);
// The longest span with at most span / `part` of sag, for a load spread over the area of a board of
// this thickness: the width cancels.
double longest_span(double load_per_area, double thickness, double modulus, double part);

}  // namespace splay::fabrication
