// Hatching, and sections of solids.
#pragma once

#include <span>
#include <vector>

#include "drafting/view.h"

namespace splay::drafting {

using Loops = std::vector<std::vector<Vec2>>;  // even-odd: an outline and its holes

struct HatchStyle {
  double degrees = 45;
  double spacing = 2;  // mm on paper; 0.7 at least
};

// Parallel lines clipped exactly to the loops (paper). Neighbours with the same style share one set
// of lines through the paper's origin.
ink::Path hatch(const Loops& loops, HatchStyle style);

// The waste side of a cut: short slanting strokes along the line a..b on the side of `into`,
// `depth` mm wide. Group "hatching".
ink::Group waste_side(const Kit& kit, Vec2 a, Vec2 b, Vec2 into, double depth = 3);
// A region of waste.
ink::Group waste_area(const Kit& kit, const Loops& loops);

// The solids cut by a plane, on the view plane: what is cut, part by part, and what is seen behind.
// The eye is on the side of plane.n, which must be view.toward.
struct SectionCut {
  std::vector<std::vector<Loops>> parts;  // the cut faces of each part that the plane meets
  std::vector<ViewLine> beyond;
};
SectionCut cut_section(std::span<const Solid> solids, const Plane& plane, const View& view);

struct SectionDrawing {
  ink::Group cut;     // outlines wide, hatched; role "hatching"
  ink::Group beyond;  // what is seen behind the plane; role "view"
  ink::Rect box;      // on paper
};
// Parts that touch are hatched in different directions or spacings.
SectionDrawing draw_section(const Kit& kit, const SectionCut& cut, const Placement& placement);
SectionDrawing draw_section(const Kit& kit, std::span<const Solid> solids, const Plane& plane,
                            const View& view, const Placement& placement);

// Where the plane is in another view: long-dash dot line with wide ends, arrows in viewing
// direction and its letter at both ends. a, b on paper; `looking` a direction on paper.
ink::Group section_mark(const Kit& kit, Vec2 a, Vec2 b, Vec2 looking, std::string_view letter);

}  // namespace splay::drafting
