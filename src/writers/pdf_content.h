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

struct PdfContents {
  std::vector<std::string> pages;  // one content stream each
  std::vector<FontCodes> fonts;    // by FontSet::files(); resource name "F" and the index
};

// Throws std::invalid_argument as pdf() does.
PdfContents pdf_contents(const ink::Packet& packet, const ink::FontSet& fonts);

}  // namespace splay::writers
