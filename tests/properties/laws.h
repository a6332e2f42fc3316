// Each law as text: what breaks it, a line each; empty for a piece that keeps it.
#pragma once

#include <string>

#include "support/piece.h"

namespace splay::test {

// Findings that say a piece can't be built; one of the proof is none of them.
bool refused(const Built& piece);
// A finding is a sentence with what to do; and what the audit alone would find is a construct that
// built what can't be.
std::string unclear_findings(const Built& piece);
std::string open_or_clashing(const Built& piece);
std::string unproven_steps(const Built& piece);
std::string bad_layouts(const Built& piece);
std::string bad_pages(const Built& piece);
std::string not_the_same(const Built& piece, const Built& converted);  // into the other unit

}  // namespace splay::test
