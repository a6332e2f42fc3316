// UTF-8 (RFC 3629): where a text is malformed, how many characters it has, one character at a time.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace splay {

// A decoded character and the bytes it took. Malformed: `bytes` is 0 and `code` U+FFFD. The
// shortest form only; no surrogates; nothing above U+10FFFF.
struct Character {
  char32_t code = 0xFFFD;
  std::size_t bytes = 0;
};
Character first_character(std::string_view text);

// The offset of the first byte that is not well-formed, or npos.
std::size_t malformed_at(std::string_view text);

// Characters of a text; a malformed byte counts as one.
std::size_t character_count(std::string_view text);

// C0 and C1 controls, DEL, line and paragraph separators, and the marks that turn the writing
// direction: what has no place in a name or on a page.
bool is_control(char32_t code);

std::string to_utf8(char32_t code);

}  // namespace splay
