// The drawing code of PDF pages (ISO 32000-1, content streams), written by ourselves: in points,
// without matrices, three decimals (a third of a micrometre).
#pragma once

#include <string>
#include <vector>

#include "ink/fonts.h"
#include "ink/ink.h"
#include "writers/pdf_codes.h"

namespace splay::writers {

inline constexpr double points_per_mm = 72 / 25.4;

// The content stream of a page. `codes`, of all pages of a file, learn what it prints: by
// FontSet::files(); resource name "F" and the index. Throws std::invalid_argument as pdf() does.
std::string pdf_content(const ink::Page& page, const ink::FontSet& fonts,
                        std::vector<FontCodes>& codes);

}  // namespace splay::writers
