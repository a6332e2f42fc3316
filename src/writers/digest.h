// Check figures of files: SHA-256 (FIPS 180-4) through nettle.
#pragma once

#include <string>
#include <string_view>

namespace splay::writers {

// 64 hexadecimal digits, lower case.
std::string sha256(std::string_view bytes);

}  // namespace splay::writers
