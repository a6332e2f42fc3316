// Text to toml++'s tables, with our own words for what is not TOML.
#pragma once

#include <optional>

#include "reading/faults.h"
#include "reading/source_text.h"

namespace splay::reading {

// Complains and gives nothing when the text is not TOML. Faults in several simple lines
// ("width = 23 1/4") are all told.
std::optional<toml::table> parse(const SourceText& source, Faults& faults);

}  // namespace splay::reading
