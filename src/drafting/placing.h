// The search for a free place near a point. Internal to src/drafting.
#pragma once

#include <optional>

#include "drafting/room.h"

namespace splay::drafting {

struct Sought {
  Vec2 tip;  // what the label belongs to
  double width = 0, height = 0;
  Vec2 prefer{1, 1};  // direction in which it would best stand
  double near = 3, far = 60;
};

// The best free place: near, in the preferred direction, its leader over no text and few lines.
// Nothing free in reach: the nearest free place of the whole area, and if there is none, nothing.
std::optional<ink::Rect> find_place(const Room& room, const Sought& sought);

// Where a leader from the tip meets the label: the nearest point of its (slightly grown) box.
Vec2 leader_end(ink::Rect label, Vec2 tip);

// Lines of text in a box, each aligned towards the tip; `pitch` as in text_block.h.
struct LabelText {
  std::vector<std::string> lines;
  double height = 2.5;
  ink::Face first = ink::Face::regular;  // of the first line
};
Vec2 label_size(const Kit& kit, const LabelText& text);
void write_label(const LabelText& text, ink::Rect place, Vec2 tip, Items& items);

}  // namespace splay::drafting
