// A story of blocks (headings, paragraphs, table rows, pictures) poured into columns and pages.
#pragma once

#include <memory>
#include <vector>

#include "drafting/kit.h"

namespace splay::drafting {

struct Block {
  Picture picture;
  double space_after = 0;       // left out at the foot of a column
  bool keep_with_next = false;  // never the last of a column
  bool keep_with_previous = false;
  // Drawn again on top when the block comes first in a new column: a table's heading row. Not over
  // the first block of the story that has it, which shows it itself.
  std::shared_ptr<const Picture> head;
  bool own_column = false;  // starts a new column
};
using Story = std::vector<Block>;

void add(Story& story, Story more);
Block heading(const Kit& kit, std::string_view text, double width);
Block body_text(const Kit& kit, std::string_view text, double width,
                ink::Face face = ink::Face::regular);
Block of_picture(Picture picture, double space_after);

// The items of each page. `first` and `next` are the columns of the first and of every later page,
// left to right. When `level` is set as few tables as can be are split on these pages, and all
// pages and columns are made about equally full as far as that allows; otherwise only the last page
// shares with the one before it, when it would be nearly empty. A block higher than a whole
// column throws std::length_error: split it.
std::vector<Items> flow(const Story& story, const std::vector<ink::Rect>& first,
                        const std::vector<ink::Rect>& next, bool level = true);

// `count` equal columns of an area.
std::vector<ink::Rect> columns(ink::Rect area, int count, double gap = 8);
// The whole story in one picture; two pictures beside each other, the tops level.
Picture as_picture(const Story& story, double width);
Picture side_by_side(Picture left, const Picture& right, double gap);
// How high the story is in one endless column.
double height(const Story& story);

}  // namespace splay::drafting
