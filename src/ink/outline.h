// A path as straight lines, and what is wrong with an item before it is drawn.
#pragma once

#include <string>
#include <vector>

#include "ink/ink.h"

namespace splay::ink {

// One subpath; a closed one repeats its first point at the end.
struct Polyline {
  std::vector<Vec2> points;
  bool closed = false;
};

// Curves within `tolerance` mm of the true line.
std::vector<Polyline> flatten(const Path& path, double tolerance = 0.01);

// Why an item can't be drawn: a number that is not finite or absurdly large (over ten metres of
// paper), a pen without width, a path that does not begin with move or lacks points. "" when it
// can. Text is only looked at for its numbers, a group for nothing (its items are items).
std::string number_fault(const Item& item);

// Smallest box around points; `points` not empty.
Rect bounds(const std::vector<Vec2>& points);

// Calls `use(item)` for every item in drawing order, those inside groups included; for a group
// itself `enter(group)` before and `leave(group)` after.
template <class Use, class Enter, class Leave>
void walk(const std::vector<Item>& items, Use&& use, Enter&& enter, Leave&& leave) {
  for (const Item& item : items) {
    if (const auto* group = std::get_if<Group>(&item)) {
      enter(*group);
      walk(group->items, use, enter, leave);
      leave(*group);
    } else {
      use(item);
    }
  }
}

template <class Use>
void walk(const std::vector<Item>& items, Use&& use) {
  const auto nothing = [](const Group&) {};
  walk(items, use, nothing, nothing);
}

}  // namespace splay::ink
