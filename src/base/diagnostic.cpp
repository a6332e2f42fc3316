#include "base/diagnostic.h"

#include <algorithm>
#include <tuple>

#include "base/utf8.h"

namespace splay {

namespace {

constexpr std::size_t widest_excerpt = 100;  // characters of a source line that are shown

std::string_view source_line(std::string_view source, int line) {
  std::size_t start = 0;
  for (int i = 1; i < line; ++i) {
    const std::size_t end = source.find('\n', start);
    if (end == std::string_view::npos) return {};
    start = end + 1;
  }
  std::string_view text = source.substr(start, source.find('\n', start) - start);
  if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
  return text;
}

// Every character one column wide and visible, so that the carets stand under what they mean.
std::vector<std::string> printable(std::string_view line) {
  std::vector<std::string> characters;
  while (!line.empty()) {
    const Character c = first_character(line);
    if (c.bytes == 0) {
      characters.push_back(to_utf8(0xFFFD));
    } else if (c.code == '\t') {
      characters.emplace_back(" ");
    } else {
      characters.push_back(is_control(c.code) ? to_utf8(0xFFFD)
                                              : std::string(line.substr(0, c.bytes)));
    }
    line.remove_prefix(std::max<std::size_t>(c.bytes, 1));
  }
  return characters;
}

std::string excerpt(const SourceSpan& span, std::string_view source) {
  const std::vector<std::string> line = printable(source_line(source, span.line));
  const auto column = static_cast<std::size_t>(std::max(span.column, 1)) - 1;
  const std::size_t start =
      column < widest_excerpt * 3 / 4 ? 0 : std::min(column, line.size()) - widest_excerpt / 2;
  const std::size_t end = std::min(line.size(), start + widest_excerpt);
  std::string shown;
  if (start > 0) shown += "...";
  for (std::size_t i = start; i < end; ++i) shown += line[i];
  if (end < line.size()) shown += "...";
  const std::string number = std::to_string(span.line);
  std::string margin(number.size() < 6 ? 6 - number.size() : 0, ' ');
  const std::size_t before = std::min(column, line.size()) - start + (start > 0 ? 3 : 0);
  const auto wanted = static_cast<std::size_t>(std::max(span.length, 1));
  const std::size_t carets =
      std::max<std::size_t>(1, std::min(wanted, end > column ? end - column : std::size_t{1}));
  return margin + number + " | " + shown + "\n" + std::string(margin.size() + number.size(), ' ') +
         " | " + std::string(before, ' ') + std::string(carets, '^') + "\n";
}

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

// Letters to add, drop, change or swap with their neighbour (optimal string alignment distance).
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), above(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) above[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1;
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + change});
      const bool swapped = i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) &&
                           lower(a[i - 2]) == lower(b[j - 1]);
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    std::swap(before, above);
    std::swap(above, row);
  }
  return above[b.size()];
}

auto order(const Diagnostic& d) {
  return std::tie(d.span.line, d.span.column, d.span.length, d.code, d.found, d.allowed, d.hint);
}

}  // namespace

std::string describe(const Diagnostic& diagnostic, std::string_view file_name,
                     std::string_view source) {
  const SourceSpan& span = diagnostic.span;
  std::string text(file_name);
  if (span.line > 0) {
    text.append(":").append(std::to_string(span.line));
    text.append(":").append(std::to_string(std::max(span.column, 1)));
  }
  text += ": " + diagnostic.found + " (" + diagnostic.code + ")\n";
  if (span.line > 0) text += excerpt(span, source);
  if (!diagnostic.allowed.empty()) text += "  allowed: " + diagnostic.allowed + "\n";
  if (!diagnostic.hint.empty()) text += "  hint: " + diagnostic.hint + "\n";
  return text;
}

void sort_diagnostics(std::vector<Diagnostic>& diagnostics) {
  const auto earlier = [](const Diagnostic& a, const Diagnostic& b) { return order(a) < order(b); };
  const auto same = [](const Diagnostic& a, const Diagnostic& b) { return order(a) == order(b); };
  std::sort(diagnostics.begin(), diagnostics.end(), earlier);
  diagnostics.erase(std::unique(diagnostics.begin(), diagnostics.end(), same), diagnostics.end());
}

std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known) {
  const std::size_t allowance = word.size() / 3;
  std::string_view nearest;
  std::size_t least = allowance + 1;
  for (const std::string_view candidate : known) {
    const std::size_t longer = std::max(candidate.size(), word.size());
    const std::size_t shorter = std::min(candidate.size(), word.size());
    if (longer - shorter > allowance) continue;
    const std::size_t distance = edit_distance(word, candidate);
    if (distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

}  // namespace splay
