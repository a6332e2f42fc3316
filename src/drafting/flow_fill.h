// How a story's blocks are shared out over columns. Internal to the flow.
#pragma once

#include <vector>

#include "drafting/flow.h"

namespace splay::drafting {

// Blocks from..to of the story stand in one column; head is drawn above them.
struct Filled {
  std::size_t from = 0, to = 0;
  const Picture* head = nullptr;
};
using Rects = std::vector<ink::Rect>;
using Poured = std::vector<std::vector<Filled>>;  // page by page

const Picture* head_at(const Story& story, std::size_t from);
// May a column end before block i, which is neither the first nor past the last?
bool may_break(const Story& story, std::size_t i);
constexpr double flow_slack = 1e-6;  // mm

// The same story on as many pages, columns as equally full as can be with few tables split: of all
// ways the one with the least sum of squares of what is empty. The story as given when its chains
// of kept blocks allow none. Pages before `from_page` stay as they are.
Poured levelled(const Story& story, Poured given, const Rects& first, const Rects& next,
                std::size_t from_page);

}  // namespace splay::drafting
