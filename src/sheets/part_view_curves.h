// Curves in a part's outline, read back from the facets that stand for them.
#pragma once

#include <optional>
#include <vector>

#include "sheets/part_view_detail.h"
#include "sheets/part_view_shape.h"

namespace splay::sheets {

// A circle that a face of the board is bounded by, in the part frame.
struct Circle {
  Vec3 centre;
  double radius = 0;  // through the corners of the facets, which lie on the curve
};
// Of the outline of z_low or z_high; nothing when it is no whole circle.
std::optional<Circle> circle_on(const PartSheet& sheet, parts::Side face);

// Slanted curved edges, cut square to the curve.
std::vector<Detail> curve_details(const PartSheet& sheet);

}  // namespace splay::sheets
