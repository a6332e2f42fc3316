#include "drafting/callout.h"

#include <algorithm>
#include <utility>

#include "drafting/dimension.h"
#include "drafting/placing.h"
#include "drafting/text_block.h"

namespace splay::drafting {

namespace {

constexpr double dot_radius = 0.7;

LabelText label_text(const Kit& kit, const Callout& callout) {
  return {callout.lines, callout.height > 0 ? callout.height : kit.look.lettering,
          ink::Face::regular};
}

// On the tip itself, when nothing is there.
std::optional<ink::Rect> on_tip(const Room& room, Vec2 tip, Vec2 size) {
  const ink::Rect place{tip - size * 0.5, tip + size * 0.5};
  return room.free(place) ? std::optional(place) : std::nullopt;
}

ink::Group draw_label(const Kit& kit, Room& room, const Callout& callout, bool on_the_spot) {
  const LabelText text = label_text(kit, callout);
  const Vec2 size = label_size(kit, text);
  const Vec2 outwards = callout.tip - middle(room.area());
  std::optional<ink::Rect> place = on_the_spot ? on_tip(room, callout.tip, size) : std::nullopt;
  const bool led = !place;
  if (led)
    place = find_place(
        room, {callout.tip, size.x, size.y, norm(outwards) > 1 ? outwards : Vec2{1, 1}, 4, 80});
  const ink::Rect rect = place.value_or(ink::Rect{callout.tip, callout.tip + size});
  ink::Group group{"leader", {}};
  write_label(text, rect, callout.tip, group.items);
  // A link for each line: the lines of two labels may stand closer than their rectangles.
  Items links;
  for (const ink::Item& line : group.items)
    if (!callout.link.empty()) links.emplace_back(ink::Link{extent(kit, {line}), callout.link});
  if (led) append(group.items, leader(kit, leader_end(rect, callout.tip), callout.tip, true).items);
  append(group.items, std::move(links));
  if (!callout.mark.empty()) group.items.emplace_back(ink::PartClaim{callout.mark, callout.claim});
  room.take(kit, group.items);
  return group;
}

}  // namespace

std::vector<ink::Group> place_labels(const Kit& kit, Room& room, std::span<const Callout> callouts,
                                     bool on_the_spot) {
  std::vector<ink::Group> groups;
  for (const Callout& callout : callouts)
    groups.push_back(draw_label(kit, room, callout, on_the_spot));
  return groups;
}

ink::Group leader(const Kit& kit, Vec2 from, Vec2 tip, bool dot) {
  ink::Group group{"leader", {}};
  group.items.emplace_back(ink::Stroke{ink::Path{}.move(from).line(tip), kit.thin()});
  if (dot) {
    ink::Path mark;
    mark.arc(tip, dot_radius, 0, 6.283185307179586).close();
    group.items.emplace_back(ink::Fill{std::move(mark)});
  } else {
    group.items.emplace_back(arrow_head(tip, tip - from, 2.5));
  }
  return group;
}

ink::Group view_title(const Kit& kit, Vec2 at, std::string_view title, std::string_view scale) {
  const double height = kit.look.figures, small = kit.look.lettering;
  const double title_width = kit.width(title, height, ink::Face::bold);
  const double gap = scale.empty() ? 0 : 3;
  const double width = title_width + gap + kit.width(scale, small);
  const double base = at.y - 2 - height;
  const double left = at.x - width / 2;
  ink::Group group{"note", {}};
  group.items.emplace_back(
      ink::Text{{left, base}, std::string(title), height, 0, ink::Align::left, ink::Face::bold});
  if (!scale.empty())
    group.items.emplace_back(
        ink::Text{{left + title_width + gap, base}, std::string(scale), small});
  return group;
}

}  // namespace splay::drafting
