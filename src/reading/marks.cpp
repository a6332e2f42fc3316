#include "reading/marks.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "base/utf8.h"
#include "reading/tokens.h"

namespace splay::reading {

namespace {

struct Sign {
  char32_t code;
  char symbol;
};
constexpr std::array<Sign, 16> signs{{{U'+', '+'},
                                      {U'-', '-'},
                                      {U'\u2212', '-'},
                                      {U'*', '*'},
                                      {U'\u00D7', '*'},
                                      {U'/', '/'},
                                      {U'\u00F7', '/'},
                                      {U'(', '('},
                                      {U')', ')'},
                                      {U',', ','},
                                      {U'\'', 'f'},
                                      {U'\u2032', 'f'},
                                      {U'"', 'i'},
                                      {U'\u2033', 'i'},
                                      {U'\u00B0', 'd'},
                                      {U'%', '%'}}};

struct Vulgar {
  char32_t code;
  double value;
};
constexpr std::array<Vulgar, 9> vulgars{{{U'\u00BD', 0.5},
                                         {U'\u00BC', 0.25},
                                         {U'\u00BE', 0.75},
                                         {U'\u2153', 1.0 / 3},
                                         {U'\u2154', 2.0 / 3},
                                         {U'\u215B', 0.125},
                                         {U'\u215C', 0.375},
                                         {U'\u215D', 0.625},
                                         {U'\u215E', 0.875}}};

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

Mark digits(std::string_view text, std::size_t at) {
  std::size_t end = at;
  bool point = false;
  while (end < text.size() && (is_digit(text[end]) || (text[end] == '.' && !point))) {
    point = point || text[end] == '.';
    ++end;
  }
  Mark mark{Mark::Type::digits, at, end - at, 0, !point, text.substr(at, end - at), 0};
  const auto read = std::from_chars(text.data() + at, text.data() + end, mark.value);
  const bool lone_point = mark.text.front() == '.' || mark.text.back() == '.';
  if (read.ec != std::errc{} || read.ptr != text.data() + end || lone_point ||
      (end < text.size() && text[end] == '.'))
    throw Trouble{at,
                  end - at,
                  "bad-expression",
                  "\"" + std::string(mark.text) + "\" is no number",
                  "digits on both sides of one point: 0.5",
                  ""};
  return mark;
}

Mark word(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && (is_letter(text[end]) || is_digit(text[end]))) ++end;
  return {Mark::Type::word, at, end - at, 0, false, text.substr(at, end - at), 0};
}

Mark sign(std::string_view text, std::size_t at) {
  const Character c = first_character(text.substr(at));
  const std::size_t bytes = std::max<std::size_t>(c.bytes, 1);
  for (const Sign& known : signs)
    if (known.code == c.code) return {Mark::Type::symbol, at, bytes, 0, false, {}, known.symbol};
  for (const Vulgar& known : vulgars)
    if (known.code == c.code) return {Mark::Type::symbol, at, bytes, known.value, false, {}, 'v'};
  const std::string shown = is_control(c.code) ? "a control character"
                                               : "\"" + std::string(text.substr(at, bytes)) + "\"";
  throw Trouble{at,
                bytes,
                "bad-expression",
                shown + " means nothing in a size",
                "numbers, units, names of [sizes], + - * / ( ) and functions",
                ""};
}

}  // namespace

std::vector<Mark> marks_of(std::string_view text) {
  std::vector<Mark> marks;
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    if (c == ' ' || c == '\t') {
      ++at;
      continue;
    }
    if (is_digit(c) || c == '.') {
      marks.push_back(digits(text, at));
    } else if (is_letter(c)) {
      marks.push_back(word(text, at));
    } else {
      marks.push_back(sign(text, at));
    }
    at = marks.back().end();
  }
  marks.push_back({Mark::Type::end, text.size(), 0, 0, false, {}, 0});
  return marks;
}

}  // namespace splay::reading
