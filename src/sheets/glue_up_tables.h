// Tables of the glue-up. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "drafting/flow.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// Lines with a square to tick.
drafting::Story tick_list(const Context& context, const std::vector<std::string>& lines,
                          double width);
// A stage's joinings in their order; its rows of clamps; what is measured. The last two are empty
// where there are none.
drafting::Story steps_table(const Context& context, const fabrication::GlueStage& stage,
                            double width);
drafting::Story clamps_table(const Context& context, const fabrication::GlueStage& stage,
                             double width);
drafting::Story checks_table(const Context& context, const fabrication::GlueStage& stage,
                             double width);

}  // namespace splay::sheets
