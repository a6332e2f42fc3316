// The views of a part at one scale, with their figures and names.
#pragma once

#include "drafting/scale.h"
#include "sheets/part_view_set.h"

namespace splay::sheets {

drafting::Picture draw_set(const PartSheet& sheet, const ViewSet& set, drafting::Scale scale);

// Features smaller than this on paper are drawn again larger, with their angles.
inline constexpr double small_on_paper = 16;
bool drawn_small(const PartSheet& sheet, drafting::Scale scale);

// The picture of what is drawn: moved so that its upper left corner is the origin.
drafting::Picture cut_out(const drafting::Kit& kit, drafting::Items items);

}  // namespace splay::sheets
