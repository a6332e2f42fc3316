// A TrueType file cut down to what a PDF needs of it (ISO 32000-1, embedded font programs).
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace splay::writers {

// Keeps the tables that draw glyphs and drops those that only name and find them; clears the
// metrics of every glyph but `kept` (ascending), so that they compress away. Checksums are renewed.
// Throws std::runtime_error for bytes that are not a TrueType file.
std::string slim_font(const std::string& font, const std::vector<std::uint32_t>& kept);

}  // namespace splay::writers
