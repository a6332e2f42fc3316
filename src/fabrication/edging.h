// Edging that is glued to its panel before the panel's ends are cut: from then on panel and strips
// are one piece of wood, and every step cuts and measures them as one.
#pragma once

#include <optional>
#include <vector>

#include "parts/part.h"

namespace splay::fabrication {

// A strip over the whole of an edge, as thick as the panel there.
struct Edging {
  int strip = 0;                          // index into Assembly::parts
  parts::Side side = parts::Side::y_low;  // of the panel
  double thickness = 0;                   // mm, square to that edge
  Plane seam;                             // panel's frame, normal out of the panel
};

// Those of a part, in the order of its joints. A strip that doesn't lie on a square edge from face
// to face, or reaches past the panel's ends, is none: it is cut for itself.
std::vector<Edging> edging_of(const parts::Assembly& all, int part);
// The panel that a part is edging of; -1 for any other part.
int panel_of(const parts::Assembly& all, int part);

// The panel as it is cut, in its own frame: with its strips in its solid, and with what has to be
// cut of them alone as further operations. Its size stays that of the panel.
parts::Part as_cut(const parts::Assembly& all, int part);
// Of what a whole piece is cut to, the panel's and a strip's share; a strip in its own frame.
Solid panel_share(Solid whole, const std::vector<Edging>& edging);
Solid strip_share(Solid whole, const parts::Assembly& all, int panel, const Edging& edging);

}  // namespace splay::fabrication
