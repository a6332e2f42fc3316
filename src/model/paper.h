// The sizes of paper that pages are drawn for.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace splay::model {

enum class PaperSize : std::uint8_t { a4, letter, a3, tabloid };
// The words an author writes, in the order of PaperSize.
inline constexpr std::array<std::string_view, 4> paper_words{"a4", "letter", "a3", "tabloid"};

}  // namespace splay::model
