// One part's place on the part view pages: its head, views, details and remarks.
#pragma once

#include <limits>
#include <optional>
#include <vector>

#include "drafting/scale.h"
#include "sheets/part_view_drawn.h"

namespace splay::sheets {

// What of a part a panel shows: all of it, or a share when it needs more than one page.
struct PanelShare {
  bool views = true, notes = true;
  std::size_t from = 0, to = std::numeric_limits<std::size_t>::max();  // of the details
  std::optional<drafting::Scale> scale;  // when another share has settled it
  std::optional<bool> lying;             // the views, when the part's mirror image has settled it
  double least_scale = 0.4;              // of the largest at which the views alone fit
};

struct Panel {
  std::string mark;
  drafting::Picture picture;
  PanelShare share;
  drafting::Scale scale;
  bool lying = true;
  std::size_t details = 0;  // how many the part has in all
};

inline constexpr double between_panels = 6;  // mm

// The panel turned, scaled and laid out as it best fits into one of the widths and under the
// height. `alone`: nobody else wants that height, so that only the scale counts. Nothing when it
// fits in no way.
std::optional<Panel> part_panel(PartDrawn& part, const std::vector<double>& widths, double height,
                                bool alone, const PanelShare& share);

// The head of a panel: mark, name, how many, stock, sizes. The first one of a part holds its anchor
// and claim.
drafting::Picture panel_head(const PartSheet& sheet, double width, drafting::Scale scale,
                             bool first);
double panel_head_height(const drafting::Kit& kit);  // mm

}  // namespace splay::sheets
