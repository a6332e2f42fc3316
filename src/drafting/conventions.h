// Our signs. Trade marks of the bench: face-side and face-edge marks, cabinetmaker's triangle
// (common practice, no source).
#pragma once

#include "drafting/kit.h"

namespace splay::drafting {

// Each is centred on `at`, about `size` mm; group "legend" unless it says otherwise. The marks of
// the bench are the look's own symbols where it has any. The cabinetmaker's triangle: points up or
// away on the face of parts that lie together.
ink::Group cabinetmaker_triangle(const Kit& kit, Vec2 at, double size, double turn = 0);
// Loop with a tail that runs to the face edge; `turn` radians from pointing down (-y).
ink::Group face_side_mark(const Kit& kit, Vec2 at, double size, double turn = 0);
// The V whose point touches the face side.
ink::Group face_edge_mark(const Kit& kit, Vec2 at, double size, double turn = 0);
// Double-headed arrow along the grain.
ink::Group grain_arrow(const Kit& kit, Vec2 at, double length, double turn = 0);
// Datum of running figures.
ink::Group datum_mark(const Kit& kit, Vec2 at, double size);
// The middle of a fitting that lies on wood: a cross in a circle of its diameter, dashed where it
// lies on the far side. Its items alone, for the group of its view.
Items fitting_mark(const Kit& kit, Vec2 at, double diameter, bool near);
// A sign of the maker's own, its longer side `size`; no line thinner than 0.13 mm.
ink::Group placed_symbol(const Symbol& symbol, Vec2 at, double size, double turn = 0);
// Which hand a part has: "L" or "R" in a half-filled shield.
ink::Group hand_mark(const Kit& kit, Vec2 at, double size, bool left);
// Truncated cone and two circles (ISO 5456-2, from memory).
ink::Group projection_symbol(const Kit& kit, Vec2 at, double size, bool third_angle);

// A freehand line where wood is broken off (ISO 128: narrow, irregular): about how long each wave
// is and how far it swings; nothing is drawn where the break is shorter than `least`. Paper mm.
struct BreakLine {
  double wave = 6, swing = 1.2, least = 0.5;
};
void break_line(ink::Path& path, Vec2 a, Vec2 b, const BreakLine& look = {});

}  // namespace splay::drafting
