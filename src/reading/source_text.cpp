#include "reading/source_text.h"

#include <algorithm>

#include "base/utf8.h"

namespace splay::reading {

namespace {

// The bytes of the first `count` characters.
std::size_t bytes_of(std::string_view text, int count) {
  std::size_t at = 0;
  for (int i = 0; i < count && at < text.size(); ++i)
    at += std::max<std::size_t>(1, first_character(text.substr(at)).bytes);
  return std::min(at, text.size());
}

}  // namespace

SourceText::SourceText(std::string_view text) : text_(text) {
  constexpr std::string_view mark = "\xEF\xBB\xBF";
  if (text_.starts_with(mark)) {
    text_.remove_prefix(mark.size());
    marked_ = true;
  }
  starts_.push_back(0);
  for (std::size_t i = 0; i < text_.size(); ++i)
    if (text_[i] == '\n') starts_.push_back(i + 1);
}

std::string_view SourceText::line(int number) const {
  const auto index = static_cast<std::size_t>(number) - 1;
  if (number < 1 || index >= starts_.size()) return {};
  const std::size_t end = index + 1 < starts_.size() ? starts_[index + 1] - 1 : text_.size();
  std::string_view found = text_.substr(starts_[index], end - starts_[index]);
  if (!found.empty() && found.back() == '\r') found.remove_suffix(1);
  return found;
}

SourceSpan SourceText::at_offset(std::size_t byte, std::size_t characters) const {
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), byte);
  const auto number = static_cast<int>(after - starts_.begin());
  const std::size_t start = starts_[static_cast<std::size_t>(number) - 1];
  const auto before = static_cast<int>(character_count(text_.substr(start, byte - start)));
  const int shift = marked_ && number == 1 ? 1 : 0;
  return {number, before + 1 + shift, static_cast<int>(characters)};
}

SourceSpan SourceText::span(const toml::source_region& region) const {
  const auto first = static_cast<int>(region.begin.line);
  const auto column = static_cast<int>(region.begin.column);
  int end = static_cast<int>(region.end.column);
  if (region.end.line != region.begin.line)
    end = static_cast<int>(character_count(line(first))) + 1;
  const int shift = marked_ && first == 1 ? 1 : 0;
  return {first, column + shift, std::max(1, end - column)};
}

SourceSpan SourceText::inside(const toml::node& text_value, std::size_t at,
                              std::size_t bytes) const {
  const toml::source_region& region = text_value.source();
  const SourceSpan whole = span(region);
  const auto* value = text_value.as_string();
  if (value == nullptr || region.begin.line != region.end.line) return whole;
  const std::string& text = value->get();
  const std::string_view row = line(whole.line);
  const std::size_t quote = bytes_of(row, static_cast<int>(region.begin.column) - 1);
  if (row.substr(std::min(quote + 1, row.size()), text.size()) != text) return whole;
  if (row.substr(quote).starts_with("\"\"\"") || row.substr(quote).starts_with("'''")) return whole;
  const auto before = static_cast<int>(character_count(text.substr(0, at)));
  const auto wide = static_cast<int>(character_count(std::string_view(text).substr(at, bytes)));
  return {whole.line, whole.column + 1 + before, std::max(1, wide)};
}

}  // namespace splay::reading
