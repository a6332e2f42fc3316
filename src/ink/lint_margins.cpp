#include <algorithm>

#include "base/figure.h"
#include "ink/lint_page.h"

namespace splay::ink {

namespace {

constexpr double slack = 0.01;  // mm

Rect allowed(const Paper& paper, bool frame) {
  return frame ? Rect{{0, 0}, {paper.width, paper.height}} : paper.area();
}

bool inside(const Rect& area, Vec2 p) {
  return p.x >= area.low.x - slack && p.x <= area.high.x + slack && p.y >= area.low.y - slack &&
         p.y <= area.high.y + slack;
}

}  // namespace

// A line is judged by its middle: one that follows the margin is where it should be.
void lint_margins(const LintPage& page, double least_text_height, Faults& faults) {
  const auto fault = [&](const char* rule, const std::string& text) {
    faults.push_back({rule, page.page->label, text});
  };
  const Paper& paper = page.page->paper;
  for (const InkedText& text : page.texts) {
    const Rect area = allowed(paper, text.frame);
    if (!std::all_of(text.box.begin(), text.box.end(), [&](Vec2 p) { return inside(area, p); }))
      fault("outside-margins", quoted(*text.text) + " leaves the margins");
    if (text.text->height < least_text_height - 1e-9)
      fault("small-text", quoted(*text.text) + " is " + plain_number(text.text->height, 2) +
                              " mm high, least is " + plain_number(least_text_height, 2));
  }
  std::size_t reported = 0;  // a curve has many pieces: one fault for each item
  for (const InkedLine& line : page.lines) {
    const Rect area = allowed(paper, line.frame);
    if (line.order == reported || (inside(area, line.from) && inside(area, line.to))) continue;
    reported = line.order;
    fault("outside-margins", "a line from " + place_text(line.from) + " to " + place_text(line.to) +
                                 " leaves the margins");
  }
  for (const InkedPatch& patch : page.patches) {
    const Rect area = allowed(paper, patch.frame);
    if (!inside(area, patch.bounds.low) || !inside(area, patch.bounds.high))
      fault("outside-margins", "a fill from " + place_text(patch.bounds.low) + " to " +
                                   place_text(patch.bounds.high) + " leaves the margins");
  }
}

}  // namespace splay::ink
