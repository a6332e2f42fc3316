#include "reading/symbol_scan.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string>

namespace splay::reading {

namespace {

bool ascii_digit(char c) { return c >= '0' && c <= '9'; }
bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

}  // namespace

void SvgScanner::skip_space() {
  while (!at_end() && is_space(text_[at_])) ++at_;
}

void SvgScanner::skip_comma() {
  skip_space();
  if (peek() != ',') return;
  ++at_;
  skip_space();
}

std::size_t SvgScanner::digits(std::size_t from) const {
  while (from < text_.size() && ascii_digit(text_[from])) ++from;
  return from;
}

std::optional<double> SvgScanner::number() {
  std::size_t first = at_;
  const bool negative = peek() == '-';
  if (negative || peek() == '+') ++first;
  const std::size_t whole = digits(first);
  std::size_t end = whole;
  std::size_t count = whole - first;
  if (end < text_.size() && text_[end] == '.') {
    const std::size_t after = digits(end + 1);
    count += after - end - 1;
    end = after;
  }
  if (count == 0) return std::nullopt;
  if (end < text_.size() && (text_[end] == 'e' || text_[end] == 'E')) {
    std::size_t power = end + 1;
    if (power < text_.size() && (text_[power] == '-' || text_[power] == '+')) ++power;
    if (digits(power) > power) end = digits(power);
  }
  double value = 0;
  const auto [last, fault] = std::from_chars(text_.data() + first, text_.data() + end, value);
  // Too small for a double is as good as zero.
  const bool tiny = fault == std::errc::result_out_of_range && value == 0;
  if ((fault != std::errc() && !tiny) || last != text_.data() + end) return std::nullopt;
  if (!std::isfinite(value) || value > largest_svg_number) return std::nullopt;
  at_ = end;
  return negative ? -value : value;
}

std::optional<bool> SvgScanner::flag() {
  if (peek() != '0' && peek() != '1') return std::nullopt;
  return take() == '1';
}

std::string_view SvgScanner::here() const {
  constexpr std::size_t most = 12;
  std::size_t end = std::min(text_.size(), at_ + most);
  // Not in the middle of a character.
  while (end < text_.size() && end > at_ &&
         (static_cast<unsigned char>(text_[end]) & 0xC0u) == 0x80u)
    --end;
  return text_.substr(at_, end - at_);
}

std::optional<std::vector<double>> svg_numbers(std::string_view text) {
  SvgScanner scan(text);
  std::vector<double> numbers;
  scan.skip_space();
  while (!scan.at_end()) {
    const auto number = scan.number();
    if (!number) return std::nullopt;
    numbers.push_back(*number);
    scan.skip_comma();
  }
  return numbers;
}

}  // namespace splay::reading
