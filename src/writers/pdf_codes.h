// The letters a packet uses, font by font, each with the code that stands for it in the page
// contents. Every character has its own code, even where two share a glyph, so that the text comes
// back from the file as it was written.
#pragma once

#include <array>
#include <cstdint>
#include <unordered_map>
#include <vector>

namespace splay::writers {

struct LetterCode {
  std::uint16_t code = 0;
  char32_t character = 0;
  std::uint32_t glyph = 0;
};

class FontCodes {
 public:
  // Throws std::runtime_error past the 60,000th character.
  std::uint16_t code_of(char32_t character, std::uint32_t glyph);
  const std::vector<LetterCode>& letters() const { return letters_; }  // ascending by code

 private:
  std::uint16_t add(char32_t character, std::uint32_t glyph);

  std::vector<LetterCode> letters_;
  std::array<std::uint16_t, 0x180> small_{};  // Latin: most of every page
  std::unordered_map<char32_t, std::uint16_t> others_;
};

}  // namespace splay::writers
