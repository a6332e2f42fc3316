// The fields of a table as rows to print, from the same visit that reading makes.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "model/project.h"
#include "model/style.h"

namespace splay::reading {

struct FieldRow {
  std::string name;
  std::string takes;          // "length, more than 0, at most 10000 mm"
  std::string when_left_out;  // "needed", a default or what holds instead
  std::string help;
  bool table = false;
  bool named = false;           // tables keyed by the author's names
  std::vector<FieldRow> inner;  // of a table
};
std::vector<FieldRow> rows_of(model::Fields& fields);

// A table at the top of a project file, or a file of its own.
struct TopTable {
  std::string word;
  std::string help;
  bool named = false;
  std::vector<FieldRow> rows;
  bool own_file = false;
};
std::vector<TopTable> top_tables(const model::Registry& registry);  // without [sizes]

// The file of a style, which may name these kinds of page.
TopTable style_table(std::span<const model::PageKind> pages);

// How sizes are written, for [sizes] and every length, angle and number; lines of plain text.
std::vector<std::string> about_sizes();

}  // namespace splay::reading
