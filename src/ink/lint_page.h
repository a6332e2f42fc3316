// One page as the lint sees it: what stands where, in drawing order. Inside the ink folder only.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "ink/fonts.h"
#include "ink/ink.h"
#include "ink/lint.h"
#include "ink/outline.h"

namespace splay::ink {

struct Standing {
  int group = 0;          // 0: in no group
  std::size_t order = 0;  // later is drawn over earlier
  bool frame = false;     // in a group "frame"
};

struct InkedText : Standing {
  const Text* text = nullptr;
  std::vector<Vec2> box;  // four corners, as FontSet::box
};

struct InkedLine : Standing {
  Vec2 from, to;
  double width = 0;
};

struct InkedPatch : Standing {
  std::vector<Polyline> outline;
  Rect bounds;
};

struct LintPage {
  const Page* page = nullptr;
  std::vector<InkedText> texts;
  std::vector<InkedLine> lines;
  std::vector<InkedPatch> patches;
  std::vector<const DimensionClaim*> dimensions;
  std::vector<const PartClaim*> parts;
  std::vector<const Anchor*> anchors;
  std::vector<const Link*> links;
};

using Faults = std::vector<LintFault>;

// What can't be drawn is reported ("bad-text", "not-finite") and left out.
LintPage read_page(const Page& page, const FontSet& fonts, Faults& faults);

void lint_overlaps(const LintPage& page, Faults& faults);
void lint_margins(const LintPage& page, double least_text_height, Faults& faults);
void lint_dimensions(const LintPage& page, Faults& faults);
void lint_marks(const std::vector<LintPage>& pages, const PartsWanted& wanted, Faults& faults);
void lint_links(const std::vector<LintPage>& pages, Faults& faults);

std::string place_text(Vec2 at);  // "12.5, 40 mm"
std::string quoted(const Text& text);

}  // namespace splay::ink
