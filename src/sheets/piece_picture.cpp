#include "sheets/piece_picture.h"

#include <algorithm>

#include "drafting/view.h"

namespace splay::sheets {

namespace {

View usual_view() {
  constexpr double turn = 0.52, rise = 0.42;  // radians: how the piece is seen
  return View::axonometric(turn, rise);
}

void look_at(const std::vector<Solid>& solids, PieceSeen& seen) {
  const Scene scene(solids);
  const View view = usual_view();
  seen.lines = scene.lines(view);
  seen.faces = scene.painted(view);
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
  PieceSeen& seen = *context.seen;
  std::call_once(seen.found, [&] { look_at(placed_solids(context.plan.assembly), seen); });
  draw(context, seen, area, items);
}

void draw_solids(const Context& context, const std::vector<Solid>& solids, ink::Rect area,
                 drafting::Items& items) {
  PieceSeen seen;
  look_at(solids, seen);
  draw(context, seen, area, items);
}

}  // namespace splay::sheets
