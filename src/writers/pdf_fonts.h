// Font objects of a PDF: Type 0 fonts over embedded TrueType subsets (ISO 32000-1, composite
// fonts).
#pragma once

#include <vector>

#include "ink/fonts.h"
#include "writers/haru.h"
#include "writers/pdf_codes.h"

namespace splay::writers {

// The resource dictionary "Font", an object of its own that all pages share: F0, F1, ... for those
// of FontSet::files() that were used.
HPDF_Dict embed_fonts(const Haru& haru, const ink::FontSet& fonts,
                      const std::vector<FontCodes>& codes);

}  // namespace splay::writers
