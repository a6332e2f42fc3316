#include "sheets/piece_picture.h"

#include <algorithm>

#include "drafting/view.h"

namespace splay::sheets {

void draw_piece(const Context& context, ink::Rect area, drafting::Items& items) {
  draw_solids(context, placed_solids(context.plan.assembly), area, items);
}

void draw_solids(const Context& context, const std::vector<Solid>& solids, ink::Rect area,
                 drafting::Items& items) {
  constexpr double turn = 0.52, rise = 0.42;  // radians: how the piece is seen
  const View view = View::axonometric(turn, rise);
  const std::vector<ViewLine> lines = hidden_lines(solids, view);
  if (lines.empty()) return;
  const ink::Rect box = drafting::view_box(lines);
  const double scale = std::min(area.width() / box.width(), area.height() / box.height());
  const drafting::Placement placement = drafting::centred(box, scale, drafting::middle(area));
  items.emplace_back(
      drafting::draw_toned(context.kit, painted_faces(solids, view), lines, view, placement));
}

}  // namespace splay::sheets
