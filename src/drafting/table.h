// Tables: columns measured, cells wrapped, heading repeated, no row alone at the end.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/flow.h"
#include "drafting/text_block.h"

namespace splay::drafting {

struct Column {
  std::string head;
  ink::Align align = ink::Align::left;
  double share = 1;  // of the width that is left when every column has what it needs
  double least = 0;  // mm, inside the cell's padding
  bool wrap = true;  // false: as wide as its longest text (figures are never broken)
  // Its texts stand under their rows, from the second column to the table's end, after its head.
  bool under = false;
};

struct Cell {
  std::string text;
  ink::Face face = ink::Face::regular;
  std::string link;                // an anchor's name; makes the whole cell a link
  std::optional<Picture> picture;  // drawn over the text
  Cell(std::string t = {}) : text(std::move(t)) {}
  Cell(const char* t) : text(t) {}
  static Cell linked(std::string text, std::string target);
  static Cell bold(std::string text);
  static Cell drawn(Picture picture);
};

struct TableRow {
  std::vector<Cell> cells;
  Items claims;         // PartClaim, Anchor: placed at the row's upper left corner
  bool strong = false;  // a wide rule above it: totals, a new group
};

struct Table {
  std::vector<Column> columns;
  std::vector<TableRow> rows;
  double lettering = 0;     // 0: the look's
  double least_height = 0;  // mm: of every row under the head, to write in by hand
  std::string going_on{};   // in the heading row where the table goes on in another column
};

// The table as blocks `width` wide, one a row. The last row stays with the one before it and the
// first with the second. When the texts that may not wrap are wider than the table, those set from
// the left are wrapped after all, and figures only when that is not enough. A column of words left
// so narrow that they'd run down the page word under word is set under its rows.
Story table(const Kit& kit, const Table& table, double width);

}  // namespace splay::drafting
