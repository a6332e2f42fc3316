// Pictures of different sizes laid on as few pages as a simple search finds, none over another.
#pragma once

#include <vector>

#include "drafting/kit.h"

namespace splay::drafting {

struct Laid {
  std::size_t page = 0;
  Vec2 at;  // its upper left corner from that of the page's area: y 0 or less
};

// `sizes` are widths and heights, mm; one wider or higher than the area has a page to itself and
// runs over it. Air of `gap` is kept between neighbours. Each stands as near to the top as can be
// on the first page that has room, taken in the order given, or highest first, or widest first: in
// the earliest of these orders that needs the fewest pages. Pages are numbered in the order given
// too.
std::vector<Laid> lay_out(const std::vector<Vec2>& sizes, Vec2 area, Vec2 gap);

}  // namespace splay::drafting
