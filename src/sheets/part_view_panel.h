// One part's place on the part view pages: its head, views, details and remarks.
#pragma once

#include "drafting/scale.h"
#include "sheets/part_view_facts.h"

namespace splay::sheets {

struct Panel {
  std::string mark;
  drafting::Picture picture;
};

inline constexpr double between_panels = 6;  // mm

// The panel turned, scaled and laid out as it best fits into one of the widths and under the
// height. `alone`: nobody else wants that height, so that only the scale counts. Throws
// std::length_error when it fits in no way.
Panel part_panel(const PartSheet& sheet, const std::vector<double>& widths, double height,
                 bool alone);

// The head of a panel: mark, name, how many, stock, sizes. Holds the part's anchor and claim.
drafting::Picture panel_head(const PartSheet& sheet, double width, drafting::Scale scale);
inline constexpr double panel_head_height = 17;

}  // namespace splay::sheets
