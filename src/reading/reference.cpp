#include <algorithm>

#include "reading/description.h"
#include "reading/reading.h"

namespace splay::reading {

namespace {

std::string cell(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '|' || c == '<') out += '\\';
    out += c;
  }
  return out;
}

// A heading, the fields of the table, then a heading for each table inside it.
void write_table(std::string& page, const std::string& header, const std::string& help,
                 const std::vector<FieldRow>& rows, int level) {
  constexpr int deepest_heading = 6;
  page.append(static_cast<std::size_t>(std::min(level, deepest_heading)), '#');
  page += (header.empty() ? " The top of the file" : " `[" + header + "]`") + "\n\n" + cell(help) +
          ".\n\n";
  page += "| name | takes | when left out | meaning |\n|---|---|---|---|\n";
  for (const FieldRow& row : rows)
    page += "| `" + row.name + "` | " + cell(row.takes) + " | " + cell(row.when_left_out) + " | " +
            cell(row.help) + " |\n";
  page += "\n";
  for (const FieldRow& row : rows)
    if (row.table)
      write_table(page,
                  header + (header.empty() ? "" : ".") + row.name + (row.named ? ".NAME" : ""),
                  row.help, row.inner, level + 1);
}

}  // namespace

std::string reference_page(const model::Registry& registry,
                           std::span<const model::PageKind> pages) {
  std::string page =
      "# The project file\n\n"
      "A project is one TOML 1.0 file in UTF-8. Its tables may stand in any order; NAME is a name "
      "of your own, 1 to 40 characters. Ranges and defaults are given in millimetres and "
      "degrees.\n\n"
      "## Sizes and `[sizes]`\n\n";
  for (const std::string& line : about_sizes()) page += "- " + cell(line) + "\n";
  page += "\n";
  for (const TopTable& table : top_tables(registry))
    write_table(page, table.word + (table.named ? ".NAME" : ""), table.help, table.rows, 2);
  page +=
      "# The style file\n\nA style is a TOML 1.0 file in UTF-8; its lengths are millimetres.\n\n";
  const TopTable style = style_table(pages);
  write_table(page, "", style.help, style.rows, 2);
  page.pop_back();
  return page;
}

}  // namespace splay::reading
