// What is refused before a parser sees it: the library nests without limit.
#pragma once

#include <optional>

#include "base/diagnostic.h"
#include "reading/source_text.h"

namespace splay::reading {

// Too large, not UTF-8, or nested too deep in brackets and dotted keys together.
std::optional<Diagnostic> refuse_unreadable(const SourceText& source);

}  // namespace splay::reading
