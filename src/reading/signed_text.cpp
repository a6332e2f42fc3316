#include "reading/signed_text.h"

#include <vector>

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

}  // namespace

std::string signed_text(const model::Project& project) {
  const std::size_t header =
      project.approval.given ? static_cast<std::size_t>(project.approval.span.line) : 0;
  std::string text;
  bool inside = false;
  std::size_t number = 0;
  for (const std::string& line : lines_of(project.source)) {
    ++number;
    if (number == header)
      inside = true;
    else if (inside && opens_table(line))
      inside = false;
    if (!inside) text += line;
  }
  const std::size_t last = text.find_last_not_of(" \t\r\n");
  text.resize(last == std::string::npos ? 0 : last + 1);
  return text;
}

}  // namespace splay::reading
