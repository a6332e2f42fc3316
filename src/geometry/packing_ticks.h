// Millimetres as whole units for the searches: 80 000 to the millimetre, so that every 1/128 inch
// and every ten-thousandth of a millimetre is a whole number and sums are exact.
#pragma once

#include <cmath>

#include "base/tolerance.h"
#include "geometry/packing_types.h"

namespace splay::packing {

inline constexpr double ticks_per_mm = 80000;

// A part may not become smaller by rounding and a sheet not larger, but both are taken at their
// word within the weld tolerance.
inline Units ticks_of_part(double mm) {
  return static_cast<Units>(std::ceil((mm - tolerance::weld) * ticks_per_mm));
}
inline Units ticks_of_sheet(double mm) {
  return static_cast<Units>(std::floor((mm + tolerance::weld) * ticks_per_mm));
}
inline double mm_of(Units ticks) { return static_cast<double>(ticks) / ticks_per_mm; }

}  // namespace splay::packing
