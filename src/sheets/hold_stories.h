// The stories that share the pages on hardware, finish and how the piece holds. Each is empty when
// there is nothing to say. The context is for_reading().
#pragma once

#include "sheets/sheet.h"
#include "sheets/table_columns.h"

namespace splay::sheets {

drafting::Story hardware_story(const Context& context, double width);
drafting::Story finish_story(const Context& context, double width);
drafting::Story soundness_story(const Context& context, double width);
drafting::Story way_story(const Context& context, double width);

}  // namespace splay::sheets
