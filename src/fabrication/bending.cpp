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

}  // namespace splay::fabrication
