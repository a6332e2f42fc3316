// A sign as its maker drew it: outlines to fill and to stroke, plain data.
//
// Lengths are in the units of the sign's own view box, x to the right and y down, as in SVG.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "geometry/vec.h"

namespace splay::model {

// Straight runs and cubic curves. A subpath starts at move.
struct SymbolPath {
  enum class Verb : std::uint8_t { move, line, curve, close };
  std::vector<Verb> verbs;
  std::vector<Vec2> points;  // move and line take one, curve three, close none
};

struct SymbolPen {
  double width = 1;
  double grey = 0;  // 0 black to 1 white
};

// Filled first (even-odd), then stroked with round ends and joins.
struct SymbolShape {
  SymbolPath path;
  std::optional<double> fill;  // its grey
  std::optional<SymbolPen> stroke;
};

struct Symbol {
  Vec2 low, size;                   // of the view box: every point drawn lies in it
  std::vector<SymbolShape> shapes;  // later over earlier
};

}  // namespace splay::model
