// A sign out of an SVG file: the part of SVG 1.1 that pages can draw as it is meant, and a fault
// for everything else.
//
// Taken: svg with viewBox, g, path, line, polyline, polygon, rect, circle, ellipse; transform;
// fill, stroke, stroke-width, fill-rule (a filled outline of one's own must say evenodd: so pages
// fill); black, white and greys; title, desc and comments, which draw nothing. Lines have round
// ends and joins.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "model/symbol.h"

namespace splay::reading {

struct SymbolReading {
  std::optional<model::Symbol> symbol;  // only when no diagnostic stands against it
  std::vector<Diagnostic> diagnostics;  // in file order
};

inline constexpr std::size_t largest_symbol = 1u << 18;  // bytes
inline constexpr std::size_t most_symbol_elements = 500;
inline constexpr std::size_t most_symbol_points = 4000;  // of lines and curves together
inline constexpr int deepest_symbol = 16;                // elements within each other

// Never throws for what the text says.
SymbolReading read_symbol(std::string_view source);

}  // namespace splay::reading
