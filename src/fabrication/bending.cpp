#include "fabrication/bending.h"

#include <cmath>

namespace splay::fabrication {

double second_moment(double width, double thickness) {
  return width * thickness * thickness * thickness / 12;
}

double sag_spread(double load_per_length, double span, double modulus, double second_moment) {
  return 5 * load_per_length * std::pow(span, 4) / (384 * modulus * second_moment);
}

double sag_middle(double load, double span, double modulus, double second_moment) {
  return load * std::pow(span, 3) / (48 * modulus * second_moment);
}

double longest_span(double load_per_area, double thickness, double modulus, double part) {
  return std::cbrt(384 * modulus * second_moment(1, thickness) / (5 * load_per_area * part));
}

double beam_stiffness(double modulus, double shear_modulus, double width, double depth,
                      double span) {
  constexpr double bending_part = 5.0 / 384, shear_part = 1.0 / 8, sheared = 5.0 / 6;
  const double bending = modulus * second_moment(width, depth);
  const double shear = shear_modulus * sheared * width * depth;
  return 1 / (1 / bending + shear_part / bending_part / (shear * span * span));
}

namespace {

double twist_middle(double moment, double span, double warping, double torsion) {
  const double k = std::sqrt(torsion / warping), half = k * span / 2;
  // Next to no torsion: the difference would drown in rounding.
  if (half < 1e-3) return sag_spread(moment, span, warping, 1);
  return moment / torsion * (span * span / 8 - (1 - 1 / std::cosh(half)) / (k * k));
}

}  // namespace

EdgeSags sag_of_slab(double load_per_length, double span, const Slab& slab) {
  const double middle = slab.width / 2;
  double whole = slab.stiffness, first = slab.stiffness * middle;
  for (const EdgeBeam& beam : slab.beams) {
    whole += beam.stiffness;
    first += beam.stiffness * beam.at;
  }
  const double centre = first / whole, off = middle - centre;
  double warping = slab.stiffness * (slab.width * slab.width / 12 + off * off);
  for (const EdgeBeam& beam : slab.beams)
    warping += beam.stiffness * (beam.at - centre) * (beam.at - centre);
  const double sag = sag_spread(load_per_length, span, whole, 1);
  const double twist = twist_middle(load_per_length * off, span, warping, slab.torsion);
  return {sag - twist * centre, sag + twist * (slab.width - centre)};
}

}  // namespace splay::fabrication
