// Figures: lengths and angles as printed, rounded once.
//
// A printed length is a whole number of smallest steps (1/32 in, 0.1 mm). A running figure is
// rounded once from the exact value, and a chain prints the differences of its running figures, so
// that a chain always adds up to its overall (FigureStyle::round and Figure arithmetic).
#pragma once

#include <cstdint>
#include <string>

#include "base/quantity.h"

namespace splay {

enum class Unit { inch, millimetre };

// A length rounded to whole steps of a style.
struct Figure {
  std::int64_t steps = 0;
  constexpr Figure operator-(Figure other) const { return {steps - other.steps}; }
  constexpr Figure operator+(Figure other) const { return {steps + other.steps}; }
  constexpr bool operator==(const Figure&) const = default;
};

struct FigureStyle {
  Unit unit = Unit::millimetre;
  int fraction = 32;  // inch: the step is 1/fraction, a power of two up to 128
  int decimals = 1;   // millimetre: the step is 10^-decimals, 0 to 3

  double step_mm() const;
  // To the nearest step, halves away from zero. Throws std::invalid_argument for a number that
  // isn't finite, is past 9e15 steps, or a style outside the limits above (as do all of these).
  Figure round(double mm) const;
  double mm(Figure figure) const;
  // "23 1/4", "0", "-1/32"; "590.5", "590". No unit: the page states it once.
  std::string text(Figure figure) const;
  std::string text(double mm) const { return text(round(mm)); }
  std::string with_unit(double mm) const;  // "23 1/4 in", "590.5 mm"
};

// The same exact length in the unit that is not `unit` (the job's), for reference: "590.6 mm" to
// one decimal, "23.25 in" to three.
std::string other_unit_text(double mm, Unit unit);

// Degrees with `decimals` places and the sign: "37.50°".
std::string degrees_text(double degrees, int decimals = 2);

// The same angle as a rise over the job's set run (12 in or 300 mm): "3 7/32 in 12", "80.4 in 300".
// Over 45° it is measured from the other leg: "12 in 3 7/32". An angle under 0.005° is "level", one
// as near to 90° "plumb"; a rise that rounds to nothing is "under 1/32 in 12". Only the direction
// of the line counts: 102° is 78° falling, "-12 in 2 9/16".
std::string rise_text(double degrees, const FigureStyle& style);

// A double rounded to at most `decimals` places, without trailing zeros, exponent, "-0" or locale:
// "0.1", "12", "-3.25".
std::string plain_number(double value, int decimals);

}  // namespace splay
