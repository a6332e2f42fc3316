// Clamps, bands and tape as solids, to be drawn with the work. Internal to src/sheets.
#pragma once

#include <optional>
#include <vector>

#include "fabrication/glue_up.h"

namespace splay::sheets {

struct ClampShapes {
  std::vector<Solid> solids;  // world: blocks under heads, wedges, bands, strips of tape
  std::vector<std::optional<Vec3>> tags;  // world: where each row's letter points
};
ClampShapes clamp_shapes(const parts::Assembly& all, const fabrication::GlueStage& stage);

}  // namespace splay::sheets
