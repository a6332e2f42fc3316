// Pictures of a stage of the glue-up. Internal to src/sheets.
#pragma once

#include "sheets/sheet.h"

namespace splay::sheets {

// The stage's parts coming in along their ways, each with its mark and the number of its step, and
// the same together in their clamps, rows lettered as in the table: beside or below each other,
// whichever lets them be larger; only the first when there are no clamps.
drafting::Picture stage_pictures(const Context& context, const fabrication::GlueStage& stage,
                                 double width, double room);
// All stages on an axis of time: hands black, clamps grey.
// Of the stages from `first` to before `last`.
drafting::Picture timeline(const Context& context, double width, std::size_t first,
                           std::size_t last);

std::string row_letter(std::size_t row);  // a, b, c ...
std::string hours_text(double minutes);   // "45 min", "2 h 05 min"

}  // namespace splay::sheets
