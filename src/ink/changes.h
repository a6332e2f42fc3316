// Where a page is not as it was.
#pragma once

#include <vector>

#include "ink/fonts.h"
#include "ink/ink.h"

namespace splay::ink {

struct Span {
  double low = 0, high = 0;  // heights on paper, mm
};

// The heights at which ink came, went or changed, from the top down, joined where they are nearer
// than 6 mm. Groups "title block" and "frame" are left out: revision, date and page number change
// on every page. Empty for pages that look alike.
std::vector<Span> changed_spans(const Page& before, const Page& now, const FontSet& fonts);

}  // namespace splay::ink
