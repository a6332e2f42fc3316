// Views of solids on paper.
//
// "View plane" below means the coordinates that splay::View::project gives: real millimetres.
#pragma once

#include <span>
#include <vector>

#include "drafting/kit.h"
#include "geometry/hidden_lines.h"

namespace splay::drafting {

// From the view plane to paper.
struct Placement {
  double scale = 1;  // paper mm per real mm
  Vec2 origin;       // where the view plane's origin lies on paper
  Vec2 paper(Vec2 view) const { return origin + view * scale; }
  ink::Rect paper(ink::Rect view) const { return {paper(view.low), paper(view.high)}; }
  Vec2 real(Vec2 on_paper) const { return (on_paper - origin) * (1 / scale); }
};

// Boxes on the view plane.
ink::Rect view_box(std::span<const ViewLine> lines);
ink::Rect view_box(std::span<const Solid> solids, const View& view);

// Puts a box of the view plane with its centre on `centre`.
Placement centred(ink::Rect view_box, double scale, Vec2 centre);

// Visible edges wide, hidden ones narrow and dashed. Group "view".
ink::Group draw_view(const Kit& kit, std::span<const ViewLine> lines, const Placement& placement,
                     bool with_hidden = true);

// Faces filled with one of three greys by how they face the light (from the upper left, towards the
// view), then the visible edges. Group "view".
ink::Group draw_toned(const Kit& kit, std::span<const ToneFace> faces,
                      std::span<const ViewLine> lines, const View& view,
                      const Placement& placement);

// Lines joined end to end into as few strokes as can be: corners close and dashes run on.
ink::Path joined_lines(std::span<const ViewLine> lines, bool hidden, const Placement& placement);

}  // namespace splay::drafting
