// The whole piece as a toned axonometric picture. Internal to src/sheets.
#pragma once

#include "sheets/sheet.h"

namespace splay::sheets {

// As large as it goes in the area, in its middle. It claims no scale: a picture, not to be
// measured.
void draw_piece(const Context& context, ink::Rect area, drafting::Items& items);
// The same of solids that stand as they are given.
void draw_solids(const Context& context, const std::vector<Solid>& solids, ink::Rect area,
                 drafting::Items& items);

}  // namespace splay::sheets
