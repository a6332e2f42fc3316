#include "drafting/flow.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>

#include "drafting/flow_fill.h"
#include "drafting/text_block.h"

namespace splay::drafting {

// Not over the block that brings the head itself, which is the first with it.
const Picture* head_at(const Story& story, std::size_t from) {
  const auto& head = story[from].head;
  if (!head) return nullptr;
  for (std::size_t i = from; i-- > 0;)
    if (story[i].head == head) return head.get();
  return nullptr;
}

bool may_break(const Story& story, std::size_t i) {
  return !story[i - 1].keep_with_next && !story[i].keep_with_previous;
}

namespace {

Filled fill_column(const Story& story, std::size_t from, double room) {
  Filled column{from, from, head_at(story, from)};
  double used = column.head ? column.head->height : 0;
  std::size_t good = from, most = from;
  for (std::size_t i = from; i < story.size(); ++i) {
    if (i > from && story[i].own_column) {
      good = i;
      break;
    }
    if (i > from) used += story[i - 1].space_after;
    used += story[i].picture.height;
    if (used > room + flow_slack) break;
    most = i + 1;
    if (i + 1 == story.size() || may_break(story, i + 1)) good = i + 1;
  }
  if (good == from) good = most;  // a chain of kept blocks longer than a column is broken after all
  if (good == from) throw std::length_error("a block is higher than its column");
  column.to = good;
  return column;
}

std::vector<Filled> fill_columns(const Story& story, std::size_t from,
                                 const std::vector<ink::Rect>& rects) {
  std::vector<Filled> filled;
  for (const ink::Rect& rect : rects) {
    if (from == story.size()) break;
    filled.push_back(fill_column(story, from, rect.height()));
    from = filled.back().to;
  }
  return filled;
}

Poured pour(const Story& story, const Rects& first, const Rects& next) {
  Poured pages;
  for (std::size_t from = 0; from < story.size();) {
    pages.push_back(fill_columns(story, from, pages.empty() ? first : next));
    from = pages.back().back().to;
  }
  return pages;
}

// How much of the page's columns is used.
double fullness(const Story& story, const std::vector<Filled>& filled, const Rects& rects) {
  double used = 0, room = 0;
  for (const ink::Rect& rect : rects) room += rect.height();
  for (const Filled& column : filled)
    for (std::size_t i = column.from; i < column.to; ++i)
      used += story[i].picture.height + story[i].space_after;
  return used / room;
}

void place(const Picture& picture, Vec2 at, Items& items) {
  append(items, moved(picture.items, at));
}

Items draw(const Story& story, const std::vector<Filled>& filled,
           const std::vector<ink::Rect>& rects) {
  Items items;
  for (std::size_t c = 0; c < filled.size(); ++c) {
    Vec2 at{rects[c].low.x, rects[c].high.y};
    if (filled[c].head) {
      place(*filled[c].head, at, items);
      at.y -= filled[c].head->height;
    }
    for (std::size_t i = filled[c].from; i < filled[c].to; ++i) {
      place(story[i].picture, at, items);
      at.y -= story[i].picture.height + story[i].space_after;
    }
  }
  return items;
}

}  // namespace

std::vector<Items> flow(const Story& story, const std::vector<ink::Rect>& first,
                        const std::vector<ink::Rect>& next, bool level) {
  Poured poured = pour(story, first, next);
  constexpr double meagre = 0.35;
  const std::size_t count = poured.size();
  if (level)
    poured = levelled(story, std::move(poured), first, next, 0);
  else if (count > 1 && fullness(story, poured.back(), next) < meagre)
    poured = levelled(story, std::move(poured), first, next, count - 2);
  std::vector<Items> pages;
  for (const std::vector<Filled>& filled : poured)
    pages.push_back(draw(story, filled, pages.empty() ? first : next));
  return pages;
}

void add(Story& story, Story more) {
  story.insert(story.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

Block heading(const Kit& kit, std::string_view text, double width) {
  Block block;
  block.picture =
      paragraph(kit, text, width, {.height = kit.look.heading, .face = ink::Face::bold});
  block.space_after = 2;
  block.keep_with_next = true;
  return block;
}

Block body_text(const Kit& kit, std::string_view text, double width, ink::Face face) {
  Block block;
  block.picture = paragraph(kit, text, width, {.height = kit.look.lettering, .face = face});
  block.space_after = 2;
  return block;
}

Block of_picture(Picture picture, double space_after) {
  Block block;
  block.picture = std::move(picture);
  block.space_after = space_after;
  return block;
}

std::vector<ink::Rect> columns(ink::Rect area, int count, double gap) {
  std::vector<ink::Rect> rects;
  const double width = (area.width() - gap * (count - 1)) / count;
  for (int i = 0; i < count; ++i) {
    const double x = area.low.x + (width + gap) * i;
    rects.push_back({{x, area.low.y}, {x + width, area.high.y}});
  }
  return rects;
}

Picture as_picture(const Story& story, double width) {
  Picture picture{{}, width, height(story)};
  double y = 0;
  for (const Block& block : story) {
    place(block.picture, {0, y}, picture.items);
    y -= block.picture.height + block.space_after;
  }
  return picture;
}

Picture side_by_side(Picture left, const Picture& right, double gap) {
  Picture picture{std::move(left.items), left.width + gap + right.width,
                  std::max(left.height, right.height)};
  place(right, {left.width + gap, 0}, picture.items);
  return picture;
}

double height(const Story& story) {
  double total = 0;
  for (std::size_t i = 0; i < story.size(); ++i)
    total += story[i].picture.height + (i + 1 < story.size() ? story[i].space_after : 0);
  return total;
}

}  // namespace splay::drafting
