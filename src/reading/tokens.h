// A text quantity or expression as tokens: "23 1/4 - 3/8 in", "width - 2*overhang", "1 in 6".
//
// A number token is a whole quantity: mixed fractions, feet and inches together, a slope, a percent
// are put together here, so that what follows is ordinary arithmetic.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace splay::reading {

// What a value counts: powers of a length and of an angle. A bare number has no unit yet and takes
// the one its surroundings need; a number said to be one ("3 times") is not bare.
struct Kind {
  int length = 0;
  int angle = 0;
  bool bare = false;
  bool operator==(const Kind&) const = default;
};
inline constexpr Kind bare_kind{0, 0, true}, plain_kind{0, 0, false}, length_kind{1, 0, false},
    angle_kind{0, 1, false};
std::string_view kind_name(Kind kind);  // "a length", "an angle", "a plain number" ...

// Lengths in mm, angles in radians.
struct Amount {
  double value = 0;
  Kind kind;
};

// What is wrong with a text, and which of its bytes; thrown inside src/reading and caught there.
struct Trouble {
  std::size_t at = 0;
  std::size_t bytes = 1;
  std::string code, found, allowed, hint;
  bool told_elsewhere = false;  // the fault of something this text refers to
};

struct Token {
  enum class Type { number, name, symbol, end };
  Type type = Type::end;
  std::size_t at = 0;
  std::size_t bytes = 0;
  Amount amount{};        // of a number
  std::string_view text;  // of a name
  char symbol = 0;        // one of + - * / ( ) ,
};

inline constexpr std::size_t longest_text = 300;  // bytes of an expression

// Ends with a token of type end. Throws Trouble.
std::vector<Token> tokens_of(std::string_view text);

bool is_unit(std::string_view word);
bool is_name(std::string_view word);  // a letter, then letters, digits and underscores

}  // namespace splay::reading
