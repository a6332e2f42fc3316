#include <algorithm>

#include "base/diagnostic.h"
#include "base/utf8.h"
#include "reading/description.h"
#include "reading/reading.h"

namespace splay::reading {

namespace {

std::string padded(std::string_view text, std::size_t width) {
  std::string out(text);
  const std::size_t count = character_count(text);
  if (count < width) out.append(width - count, ' ');
  return out;
}

// Words of `text` in lines of at most 96 characters, each after `margin` spaces.
std::string wrapped(std::string_view text, std::size_t margin) {
  constexpr std::size_t widest = 96;
  std::string out;
  std::size_t column = widest;
  while (!text.empty()) {
    const std::size_t gap = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, gap);
    const std::size_t count = character_count(word);
    if (column + 1 + count > widest) {
      out.append(out.empty() ? "" : "\n").append(margin, ' ');
      column = margin;
    } else {
      out += ' ';
      ++column;
    }
    out += word;
    column += count;
    text.remove_prefix(std::min(gap + 1, text.size()));
  }
  return out + "\n";
}

std::string rows_text(const std::vector<FieldRow>& rows) {
  constexpr std::size_t widest_name = 22;
  std::size_t width = 0;
  for (const FieldRow& row : rows) width = std::max(width, row.name.size());
  width = std::min(width, widest_name) + 2;
  std::string text;
  for (const FieldRow& row : rows) {
    const bool needed = row.when_left_out == "needed";
    std::string facts = row.takes;
    facts += needed ? "; needed" : "; left out: " + row.when_left_out;
    text += "  " + padded(row.name, width) + wrapped(row.help, width + 2).substr(width + 2);
    text += wrapped(facts, width + 2);
  }
  return text;
}

std::string words_text(const std::vector<TopTable>& tables) {
  std::string text = "Words of a project file:\n";
  constexpr std::size_t width = 14;
  for (const TopTable& table : tables) {
    if (table.word == "shop")
      text += "  " + padded("sizes", width) + "Names for sizes, and how sizes are written\n";
    text += "  " + padded(table.word, width) + table.help + "\n";
  }
  return text + "A word with a dot goes further in, as in stock.kind.\n";
}

std::string sizes_text() {
  std::string text = "[sizes]: names for sizes, and how sizes are written\n\n";
  for (const std::string& line : about_sizes()) text += wrapped(line, 2);
  return text;
}

// "[shop.saw]", "[symbols] of a style", "a style".
std::string titled(const std::string& header, const TopTable& top) {
  if (header.empty()) return "a " + top.word;
  return "[" + header + "]" + (top.own_file ? " of a " + top.word : "");
}

// Where a word stands further in, as "joint.dowel"; tables before single fields.
struct Places {
  std::vector<std::string> tables, fields;

  void search(std::string_view word, const std::vector<FieldRow>& rows, const std::string& path) {
    for (const FieldRow& row : rows) {
      const std::string here = path + "." + row.name;
      if (row.name == word) (row.table ? tables : fields).push_back(here);
      search(word, row.inner, here);
    }
  }
};

// A word that is at the top of no table: its one place explained, or its places named.
std::string further_in(std::string_view word, const model::Registry& registry,
                       std::span<const model::PageKind> pages, const std::vector<TopTable>& tops) {
  Places places;
  for (const TopTable& top : tops) places.search(word, top.rows, top.word);
  const std::vector<std::string>& found = places.tables.empty() ? places.fields : places.tables;
  if (found.empty()) return "";
  if (found.size() == 1) return explain(found.front(), registry, pages);
  std::string list;
  for (const std::string& place : found) list += (list.empty() ? "" : ", ") + place;
  return "\"" + std::string(word) + "\" stands in more places than one; explain one of them:\n" +
         wrapped(list, 2);
}

}  // namespace

std::string explain(std::string_view word, const model::Registry& registry,
                    std::span<const model::PageKind> pages) {
  std::vector<TopTable> tables = top_tables(registry);
  tables.push_back(style_table(pages));
  if (word.empty()) return words_text(tables);
  if (word == "sizes") return sizes_text();
  std::size_t dot = std::min(word.find('.'), word.size());
  const auto top = std::find_if(tables.begin(), tables.end(), [&](const TopTable& table) {
    return table.word == word.substr(0, dot);
  });
  if (top == tables.end())
    return dot == word.size() ? further_in(word, registry, pages, tables) : std::string();
  std::string header = top->own_file ? "" : top->word + (top->named ? ".NAME" : "");
  std::string help = top->help;
  std::vector<FieldRow> rows = top->rows;
  while (dot < word.size()) {
    word.remove_prefix(dot + 1);
    dot = std::min(word.find('.'), word.size());
    const auto field = std::find_if(rows.begin(), rows.end(), [&](const FieldRow& row) {
      return row.name == word.substr(0, dot);
    });
    if (field == rows.end()) return "";
    if (!field->table) {
      if (dot < word.size()) return "";
      return "a field of " + titled(header, *top) + "\n\n" + rows_text({*field});
    }
    header += (header.empty() ? "" : ".") + field->name + (field->named ? ".NAME" : "");
    help = field->help;
    rows = std::vector<FieldRow>(field->inner);
  }
  return titled(header, *top) + ": " + help + "\n\n" + rows_text(rows);
}

}  // namespace splay::reading
