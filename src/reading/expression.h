// What a text says a size is: tokens to arithmetic, with the units checked on the way.
//
//   sum      = product { (+|-) product }
//   product  = signed { (*|/) signed }
//   signed   = { + | - } primary
//   primary  = quantity | name of [sizes] | function ( sum {, sum} ) | ( sum )
//
// Functions: min, max, abs, sqrt; sin, cos, tan of an angle (a bare number is degrees); asin, acos,
// atan, which give an angle.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "base/figure.h"
#include "reading/arithmetic.h"
#include "reading/tokens.h"

namespace splay::reading {

// [sizes] by name; without a value where the size has a fault of its own.
using Sizes = std::map<std::string, std::optional<Amount>, std::less<>>;

// A bare number as what is wanted: job units for a length, degrees for an angle.
double bare_to(Kind wanted, double value, Unit unit);

class Evaluator {
 public:
  explicit Evaluator(Unit unit) : unit_(unit) {}
  // Throws Trouble. The result may be bare; other kinds are as the units make them.
  Amount evaluate(std::string_view text, const Sizes& sizes);
  // The same, as `wanted`. Throws Trouble when it is something else.
  double evaluate_as(Kind wanted, std::string_view text, const Sizes& sizes);
  Unit unit() const { return unit_; }

 private:
  Unit unit_;
  Arithmetic arithmetic_;
};

}  // namespace splay::reading
