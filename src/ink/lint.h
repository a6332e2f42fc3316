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
//   mark-without-row, row-without-mark, part-not-drawn: as far as a packet wants them
//   broken-link       a link to nowhere, two places of one name, links over each other or off the
//                     sheet
//   bad-text          a text that can't be drawn
//   not-finite        an item whose numbers can't be drawn
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "ink/fonts.h"
#include "ink/ink.h"

namespace splay::ink {

struct LintFault {
  std::string rule;
  std::string page;  // label
  std::string text;  // what, where
};

// What a packet must do with parts: with these whatever is said of them, and with any mark on it.
// Where its author wants no drawings of single parts, or no list of them, nothing is missing.
struct PartsWanted {
  PartsWanted(std::vector<std::string> of_all = {}) : marks(std::move(of_all)) {}
  std::vector<std::string> marks;
  bool drawn = true;   // every one has a "view", what is listed is marked somewhere
  bool listed = true;  // every one has a "row", and so has what is marked anywhere
};

// Faults in page order.
std::vector<LintFault> lint(const Packet& packet, const FontSet& fonts, const PartsWanted& wanted);

}  // namespace splay::ink
