#include "reading/signed_text.h"

#include <set>
#include <vector>

#include "reading/as_built.h"

namespace splay::reading {

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t end = std::min(text.find('\n', from), text.size() - 1);
    lines.push_back(text.substr(from, end + 1 - from));
    from = end + 1;
  }
  return lines;
}

bool opens_table(const std::string& line) {
  const std::size_t first = line.find_first_not_of(" \t");
  return first != std::string::npos && line[first] == '[';
}

// The lines where a table of records opens; a table that is not under a header of its own has none.
std::set<std::size_t> record_lines(const model::Project& project) {
  std::set<std::size_t> lines;
  const auto add = [&](const model::Fields& table) {
    if (table.given) lines.insert(static_cast<std::size_t>(table.span.line));
  };
  add(project.approval);
  const AsBuiltReading record = read_as_built(project.source, *project.job.units);
  add(record.as_built);
  for (std::size_t i = 0; i < record.as_built.parts.size(); ++i) add(record.as_built.parts[i]);
  return lines;
}

}  // namespace

std::string signed_text(const model::Project& project) {
  const std::set<std::size_t> records = record_lines(project);
  std::string text;
  bool inside = false;
  std::size_t number = 0;
  for (const std::string& line : lines_of(project.source)) {
    ++number;
    if (opens_table(line)) inside = records.contains(number);
    if (!inside) text += line;
  }
  const std::size_t last = text.find_last_not_of(" \t\r\n");
  text.resize(last == std::string::npos ? 0 : last + 1);
  return text;
}

}  // namespace splay::reading
