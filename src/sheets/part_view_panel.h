// One part's place on the part view pages: its head, views, details and remarks.
#pragma once

#include "drafting/scale.h"
#include "sheets/part_view_facts.h"

namespace splay::sheets {

struct Panel {
  std::string mark;
  drafting::Picture picture;
};

inline constexpr double between_panels = 8;  // mm

// The panel at the scale and turned as it best fits into one of the widths and under the height.
// When it fits nowhere, at the smallest scale, as high as it gets.
Panel part_panel(const PartSheet& sheet, const std::vector<double>& widths, double height);

// The head of a panel: mark, name, how many, stock, sizes. Holds the part's anchor and claim.
drafting::Picture panel_head(const PartSheet& sheet, double width, drafting::Scale scale);

}  // namespace splay::sheets
