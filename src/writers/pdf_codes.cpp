#include "writers/pdf_codes.h"

#include <stdexcept>

namespace splay::writers {

namespace {

// A literal string takes every byte as it is but these: carriage return, brackets, backslash.
// Codes without them need no escapes.
bool plain(unsigned byte) { return byte != 0x0D && byte != '(' && byte != ')' && byte != '\\'; }

}  // namespace

std::uint16_t FontCodes::code_of(char32_t character, std::uint32_t glyph) {
  if (character < small_.size()) {
    std::uint16_t& code = small_[character];
    if (code == 0) code = add(character, glyph);
    return code;
  }
  const auto [entry, fresh] = others_.try_emplace(character);
  if (fresh) entry->second = add(character, glyph);
  return entry->second;
}

std::uint16_t FontCodes::add(char32_t character, std::uint32_t glyph) {
  unsigned code = letters_.empty() ? 1 : letters_.back().code + 1u;
  while (!plain(code & 0xFF) || !plain(code >> 8)) ++code;
  if (code > 60000) throw std::runtime_error("too many different characters for one font");
  letters_.push_back({static_cast<std::uint16_t>(code), character, glyph});
  return letters_.back().code;
}

}  // namespace splay::writers
