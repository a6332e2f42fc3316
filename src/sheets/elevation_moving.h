// How doors and drawers move, as an elevation shows it: from a door's far corners two chain lines
// meet at the middle of the side it hangs on (general drawing practice for casework), on a drawer's
// front stands a small triangle, point down. Seen along its line a door shows the way it turns, and
// its leaf stood open as a movable part in its other position (ISO 128-24, line type 05.1, from
// memory). The page of signs says so. Internal to src/sheets.
#pragma once

#include "sheets/elevation_view.h"

namespace splay::sheets {

// Of the swings and slides whose front looks at the eye, and the swings whose line runs to it.
void give_movement(const parts::Assembly& assembly, Elevation& elevation);

// What the open doors of a view take up, view plane; low > high without any.
ink::Rect swing_box(const Elevation& elevation);

drafting::Items draw_movement(const drafting::Kit& kit, const Elevation& elevation,
                              const drafting::Placement& placement);
// The two signs, on paper; `size` is the triangle's height, mm.
ink::Group door_sign(const drafting::Kit& kit, Vec2 hinge, Vec2 upper, Vec2 lower);
ink::Group drawer_sign(Vec2 at, double size);

}  // namespace splay::sheets
