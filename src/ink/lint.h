// The page lint: what no page of ours may show.
//
// Rules: "text-over-text", "text-over-line" (a line of another group), "outside-margins",
// "small-text", "dimension-off" (printed figure against measured length), "chain-open" (a chain
// that does not add up), "mark-without-row", "row-without-mark", "part-not-drawn", "broken-link",
// "bad-text" (not drawable), "not-finite".
#pragma once

#include <string>
#include <vector>

#include "ink/fonts.h"
#include "ink/ink.h"

namespace splay::ink {

struct LintFault {
  std::string rule;
  std::string page;  // label
  std::string text;  // what, where
};

// `marks`: every part mark the packet must draw ("view") and list ("row").
std::vector<LintFault> lint(const Packet& packet, const FontSet& fonts,
                            const std::vector<std::string>& marks);

}  // namespace splay::ink
