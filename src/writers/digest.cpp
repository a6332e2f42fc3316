#include "writers/digest.h"

#include <nettle/sha2.h>

#include <array>
#include <cstdint>

namespace splay::writers {

std::string sha256(std::string_view bytes) {
  sha256_ctx state{};
  sha256_init(&state);
  sha256_update(&state, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
  std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
  sha256_digest(&state, digest.size(), digest.data());
  constexpr const char* hex = "0123456789abcdef";
  std::string text;
  for (const std::uint8_t byte : digest) {
    text += hex[byte >> 4];
    text += hex[byte & 15];
  }
  return text;
}

}  // namespace splay::writers
