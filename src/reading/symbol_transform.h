// The transforms of SVG 1.1, chapter 7.
#pragma once

#include <optional>
#include <string_view>

#include "geometry/vec.h"

namespace splay::reading {

// x' = a x + c y + e, y' = b x + d y + f.
struct SvgMatrix {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
  Vec2 operator()(Vec2 p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
  SvgMatrix operator*(const SvgMatrix& inner) const;  // the inner one first
  // How much longer everything becomes; nothing where it is not the same in every direction.
  std::optional<double> scale() const;
};

// translate, scale, rotate and matrix, as many as there are; nothing for anything else.
std::optional<SvgMatrix> svg_transform(std::string_view text);

}  // namespace splay::reading
