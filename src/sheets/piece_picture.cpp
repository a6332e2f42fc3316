#include "sheets/piece_picture.h"

#include <algorithm>

#include "drafting/view.h"

namespace splay::sheets {

namespace {

View usual_view() {
  constexpr double turn = 0.52, rise = 0.42;  // radians: how the piece is seen
  return View::axonometric(turn, rise);
}

PieceSeen seen(const std::vector<Solid>& solids) {
  const Scene scene(solids);
  const View view = usual_view();
  return {scene.lines(view), scene.painted(view)};
}

void draw(const Context& context, const PieceSeen& seen, ink::Rect area, drafting::Items& items) {
  if (seen.lines.empty()) return;
  const ink::Rect box = drafting::view_box(seen.lines);
  const double scale = std::min(area.width() / box.width(), area.height() / box.height());
  const drafting::Placement placement = drafting::centred(box, scale, drafting::middle(area));
  items.emplace_back(
      drafting::draw_toned(context.kit, seen.faces, seen.lines, usual_view(), placement));
}

}  // namespace

void draw_piece(const Context& context, ink::Rect area, drafting::Items& items) {
  if (!*context.seen) *context.seen = seen(placed_solids(context.plan.assembly));
  draw(context, **context.seen, area, items);
}

void draw_solids(const Context& context, const std::vector<Solid>& solids, ink::Rect area,
                 drafting::Items& items) {
  draw(context, seen(solids), area, items);
}

}  // namespace splay::sheets
