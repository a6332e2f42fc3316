// The views of a part at one scale, with their figures and names.
#pragma once

#include "drafting/scale.h"
#include "sheets/part_view_set.h"

namespace splay::sheets {

drafting::Picture draw_set(const PartSheet& sheet, const ViewSet& set, drafting::Scale scale);

// Widths below `small_on_paper` mm are drawn again larger where they hide an angle; strips
// thinner than `thin_on_paper` are shown by a section across instead of an end view.
inline constexpr double small_on_paper = 16, thin_on_paper = 1.5;
bool drawn_small(const PartSheet& sheet, drafting::Scale scale);
bool drawn_thin(const PartSheet& sheet, drafting::Scale scale);

// The picture of what is drawn: moved so that its upper left corner is the origin.
drafting::Picture cut_out(const drafting::Kit& kit, drafting::Items items);

}  // namespace splay::sheets
