// The page lint: what no page of ours may show.
//
// Rules:
//   text-over-text    two texts' boxes overlap, whatever groups they are in
//   text-over-line    a line of another group crosses a text's box (only the innermost group is a
//                     text's own; what stands in no group is one group together). A line painted
//                     over by a later fill, before the text was set on it, does not count.
//   text-covered      a fill lies over a text drawn before it
//   outside-margins   ink outside the margins; for a group "frame", outside the sheet
//   small-text        capitals lower than the packet's least height
//   dimension-off     a printed figure is not the exact length rounded, or the length drawn is not
//                     the exact length at the scale
//   chain-open        a chain's steps do not add up to its overall
//   mark-without-row, row-without-mark, part-not-drawn
//   broken-link       a link to nowhere, two places of one name, links over each other or off the
//                     sheet
//   bad-text          a text that can't be drawn
//   not-finite        an item whose numbers can't be drawn
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

// Faults in page order. `marks`: every part mark the packet must draw ("view") and list ("row").
std::vector<LintFault> lint(const Packet& packet, const FontSet& fonts,
                            const std::vector<std::string>& marks);

}  // namespace splay::ink
