#include "base/utf8.h"

namespace splay {

namespace {

bool continues(std::string_view text, std::size_t at) {
  return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80;
}

}  // namespace

Character first_character(std::string_view text) {
  if (text.empty()) return {};
  const auto lead = static_cast<unsigned char>(text[0]);
  if (lead < 0x80) return {lead, 1};
  std::size_t bytes = 0;
  char32_t code = 0;
  char32_t least = 0;
  if (lead >= 0xC2 && lead <= 0xDF) {
    bytes = 2, code = lead & 0x1Fu, least = 0x80;
  } else if (lead >= 0xE0 && lead <= 0xEF) {
    bytes = 3, code = lead & 0x0Fu, least = 0x800;
  } else if (lead >= 0xF0 && lead <= 0xF4) {
    bytes = 4, code = lead & 0x07u, least = 0x10000;
  } else {
    return {};
  }
  for (std::size_t i = 1; i < bytes; ++i) {
    if (!continues(text, i)) return {};
    code = (code << 6) | (static_cast<unsigned char>(text[i]) & 0x3Fu);
  }
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  if (code < least || code > 0x10FFFF || surrogate) return {};
  return {code, bytes};
}

std::size_t malformed_at(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const Character c = first_character(text.substr(at));
    if (c.bytes == 0) return at;
    at += c.bytes;
  }
  return std::string_view::npos;
}

std::size_t character_count(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count) {
    const Character c = first_character(text.substr(at));
    at += c.bytes == 0 ? 1 : c.bytes;
  }
  return count;
}

bool is_control(char32_t code) {
  if (code < 0x20 || (code >= 0x7F && code <= 0x9F)) return true;
  if (code == 0x2028 || code == 0x2029 || code == 0xFEFF) return true;
  return (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069) ||
         code == 0x200E || code == 0x200F || code == 0x061C;
}

std::string to_utf8(char32_t code) {
  std::string text;
  const auto put = [&](char32_t byte) {
    text += static_cast<char>(static_cast<unsigned char>(byte));
  };
  if (code < 0x80) {
    put(code);
  } else if (code < 0x800) {
    put(0xC0 | (code >> 6));
    put(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    put(0xE0 | (code >> 12));
    put(0x80 | ((code >> 6) & 0x3F));
    put(0x80 | (code & 0x3F));
  } else {
    put(0xF0 | (code >> 18));
    put(0x80 | ((code >> 12) & 0x3F));
    put(0x80 | ((code >> 6) & 0x3F));
    put(0x80 | (code & 0x3F));
  }
  return text;
}

}  // namespace splay
