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
  Figure round(double mm) const;  // to the nearest step, halves away from zero; refuses non-finite
  double mm(Figure figure) const;
  // "23 1/4", "0", "-1/32"; "590.5", "590". No unit: the page states it once.
  std::string text(Figure figure) const;
  std::string text(double mm) const { return text(round(mm)); }
  std::string with_unit(double mm) const;  // "23 1/4 in", "590.5 mm"
};

// The other unit's value of the same exact length, for reference: "590.6 mm", "23.25 in".
std::string other_unit_text(double mm, Unit unit);

// Degrees with `decimals` places and the sign: "37.50°".
std::string degrees_text(double degrees, int decimals = 2);

// The same angle as a rise over the job's set run (12 in or 300 mm): "3 7/32 in 12", "80.4 in 300".
// Over 45° it is measured from the other leg: "12 in 3 7/32". An angle under 0.005° is "level".
std::string rise_text(double degrees, const FigureStyle& style);

// A double as its shortest exact text ("0.1", "1e-07" never: fixed notation), without locale.
std::string plain_number(double value, int decimals);

}  // namespace splay
