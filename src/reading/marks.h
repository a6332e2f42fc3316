// The marks of a quantity text, one at a time: digits, words and symbols with their places.
#pragma once

#include <string_view>
#include <vector>

namespace splay::reading {

struct Mark {
  enum class Type { digits, word, symbol, end };
  Type type = Type::end;
  std::size_t at = 0;
  std::size_t bytes = 0;
  double value = 0;       // of digits
  bool whole = false;     // digits without a point
  std::string_view text;  // of a word
  char symbol = 0;        // + - * / ( ) , and f for feet, i for inches, d for degrees, %
  std::size_t end() const { return at + bytes; }
};

// A vulgar fraction character (½) reads as a number of its own. Throws Trouble.
std::vector<Mark> marks_of(std::string_view text);

}  // namespace splay::reading
