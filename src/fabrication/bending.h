// Beams carried at both ends: how far a shelf or rail sags. N, mm and MPa throughout, or any other
// units that agree. Textbook formulas of beam theory (bending only, small deflections).
#pragma once

#include <vector>

namespace splay::fabrication {

double second_moment(double width, double thickness);  // of a rectangle lying flat

// At the middle of a beam that rests freely on both ends. A housing holds an end too loosely to
// count as fixed.
double sag_spread(double load_per_length, double span, double modulus, double second_moment);
double sag_middle(double load, double span, double modulus, double second_moment);
// The longest span with at most span / `part` of sag, for a load spread over the area of a board of
// this thickness: the width cancels.
double longest_span(double load_per_area, double thickness, double modulus, double part);

// E I of a beam under a load spread over its span, made smaller by as much as its shear adds to its
// sag: k_b W L3 / (E I) + k_s W L / (G A'), k_b = 5/384, k_s = 1/8, A' = 5/6 b h (Wood Handbook,
// FPL-GTR-282, Eq. 9-2; from memory). A deep plate on edge sags by shear for the most part.
double beam_stiffness(double modulus, double shear_modulus, double width, double depth,
                      double span);

// A beam that goes down with a slab along one line of its length.
struct EdgeBeam {
  double at = 0;         // across the slab, from its low edge
  double stiffness = 0;  // E I
};

// A slab whose two ends rest and cannot twist. Between them it bends along its length, twists, and
// stays straight across, its beams with it; a joint lets an edge turn in its beam.
struct Slab {
  double width = 0;
  double stiffness = 0;  // E I of its own
  double torsion = 0;    // G J, of a thin rectangle G b t3 / 3; more than 0
  std::vector<EdgeBeam> beams;
};
struct EdgeSags {
  double low = 0, high = 0;  // at the middle of its two long edges
  double worst() const { return low > high ? low : high; }
};
// Under a load spread over all of it. It bends about the centre of all stiffness and twists by the
// load's moment w e about that: E I_w d4a/dx4 - G J d2a/dx2 = w e for the angle a, in the
// middle (w e / G J) (L2 / 8 - (1 - 1 / cosh(k L / 2)) / k2), k2 = G J / E I_w (torsion with
// warping resisted: Roark's Formulas for Stress and Strain, chapter 10; from memory).
EdgeSags sag_of_slab(double load_per_length, double span, const Slab& slab);

}  // namespace splay::fabrication
