// What is refused before a parser sees it: the library nests without limit.
#pragma once

#include <optional>
#include <string>

#include "base/diagnostic.h"
#include "reading/source_text.h"

namespace splay::reading {

// Larger than `most` bytes, or not UTF-8; the hint is for a file that is too large.
std::optional<Diagnostic> refuse_bytes(const SourceText& source, std::size_t most,
                                       std::string hint);
// Too large, not UTF-8, or nested too deep in brackets and dotted keys together.
std::optional<Diagnostic> refuse_unreadable(const SourceText& source);

}  // namespace splay::reading
