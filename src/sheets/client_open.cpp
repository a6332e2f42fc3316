// The piece with its doors and drawers open.
#include <algorithm>
#include <numbers>

#include "drafting/text_block.h"
#include "sheets/kinds.h"
#include "sheets/piece_picture.h"

namespace splay::sheets {

namespace {

// Doors as far as they open, a right angle at the most, so that they don't hide the piece; drawers
// two thirds of their way.
std::vector<Solid> opened(const parts::Assembly& assembly) {
  std::vector<Solid> solids = placed_solids(assembly);
  const auto move = [&](const std::vector<int>& parts, const Rigid& motion) {
    for (const int part : parts) {
      Solid& solid = solids[static_cast<std::size_t>(part)];
      solid = solid.transformed(motion);
    }
  };
  for (const parts::Swing& swing : assembly.swings)
    move(swing.parts, swing.motion(std::min(swing.opens, std::numbers::pi / 2)));
  constexpr double pulled = 2.0 / 3;
  for (const parts::Slide& slide : assembly.slides) {
    Rigid motion;
    motion.origin = slide.way * (slide.travel * pulled);
    move(slide.parts, motion);
  }
  return solids;
}

}  // namespace

std::vector<ink::Page> make_client_open(const Context& given) {
  const Context context = for_reading(given);
  const parts::Assembly& assembly = context.plan.assembly;
  if (assembly.swings.empty() && assembly.slides.empty()) return {};
  ink::Page page = start_page(context, "Opened");
  const ink::Rect area = context.area();
  const drafting::Picture words = drafting::paragraph(
      context.kit,
      "Doors stand open at a right angle at the most, drawers are pulled two thirds of their way. "
      "A picture, not to be measured.",
      area.width(), {.height = context.kit.look.lettering, .align = ink::Align::centre});
  drafting::append(page.items,
                   drafting::moved(words.items, {area.low.x, area.low.y + words.height}));
  constexpr double air = 8;
  const ink::Rect picture{{area.low.x + air, area.low.y + words.height + air},
                          {area.high.x - air, area.high.y - air}};
  draw_solids(context, opened(assembly), picture, page.items);
  return {std::move(page)};
}

}  // namespace splay::sheets
