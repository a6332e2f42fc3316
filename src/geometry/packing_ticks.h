// Millimetres as whole units for the searches: 80 000 to the millimetre, so that every 1/128 inch
// and every ten-thousandth of a millimetre is a whole number and sums are exact.
#pragma once

#include <cmath>

#include "base/tolerance.h"
#include "geometry/packing_types.h"

namespace splay::packing {

inline constexpr double ticks_per_mm = 80000;

// Rounded down, so that three thirds of a length still fit it: a row of n parts may thereby be n
// times 12.5 millionths of a millimetre too long, which is far under anything a saw can do.
inline Units ticks_of(double mm) {
  return static_cast<Units>(std::floor((mm + tolerance::weld) * ticks_per_mm));
}
inline double mm_of(Units ticks) { return static_cast<double>(ticks) / ticks_per_mm; }

}  // namespace splay::packing
