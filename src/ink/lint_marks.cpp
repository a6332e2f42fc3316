#include <algorithm>
#include <map>
#include <set>

#include "ink/lint_page.h"

namespace splay::ink {

namespace {

struct Seen {
  bool row = false, view = false, mark = false;  // mark: anything but a row
  std::string row_page, mark_page;
};

void note(Seen& seen, const PartClaim& claim, const std::string& page) {
  if (claim.what == "row") {
    if (!seen.row) seen.row_page = page;
    seen.row = true;
    return;
  }
  if (!seen.mark) seen.mark_page = page;
  seen.mark = true;
  seen.view = seen.view || claim.what == "view";
}

bool overlap(const Rect& a, const Rect& b) {
  constexpr double slack = 0.01;
  return a.low.x < b.high.x - slack && b.low.x < a.high.x - slack && a.low.y < b.high.y - slack &&
         b.low.y < a.high.y - slack;
}

bool on_sheet(const Paper& paper, const Rect& area) {
  return area.low.x >= 0 && area.low.y >= 0 && area.high.x <= paper.width &&
         area.high.y <= paper.height && area.width() > 0 && area.height() > 0;
}

void check_link_areas(const LintPage& page, Faults& faults) {
  const auto broken = [&](const std::string& text) {
    faults.push_back({"broken-link", page.page->label, text});
  };
  for (std::size_t i = 0; i < page.links.size(); ++i) {
    const Link& link = *page.links[i];
    if (!on_sheet(page.page->paper, link.area))
      broken("the link to \"" + link.target + "\" has no area on the sheet");
    for (std::size_t k = 0; k < i; ++k)
      if (overlap(link.area, page.links[k]->area))
        broken("the links to \"" + link.target + "\" and \"" + page.links[k]->target +
               "\" lie over each other");
  }
}

}  // namespace

void lint_marks(const std::vector<LintPage>& pages, const PartsWanted& wanted, Faults& faults) {
  std::map<std::string, Seen> seen;
  for (const std::string& mark : wanted.marks) seen[mark];
  for (const LintPage& page : pages)
    for (const PartClaim* claim : page.parts) note(seen[claim->mark], *claim, page.page->label);
  const std::set<std::string> named(wanted.marks.begin(), wanted.marks.end());
  for (const auto& [mark, found] : seen) {
    if (wanted.listed && !found.row && (found.mark || named.contains(mark)))
      faults.push_back({"mark-without-row", found.mark_page, "part " + mark + " is in no list"});
    if (wanted.drawn && found.row && !found.mark)
      faults.push_back({"row-without-mark", found.row_page,
                        "part " + mark + " is listed but marked on no drawing"});
    if (wanted.drawn && !found.view && named.contains(mark))
      faults.push_back({"part-not-drawn", found.row_page, "part " + mark + " is in no view"});
  }
}

void lint_links(const std::vector<LintPage>& pages, Faults& faults) {
  std::set<std::string> places;
  for (const LintPage& page : pages)
    for (const Anchor* anchor : page.anchors)
      if (!places.insert(anchor->name).second)
        faults.push_back(
            {"broken-link", page.page->label, "two places are named \"" + anchor->name + "\""});
  for (const LintPage& page : pages) {
    for (const Link* link : page.links)
      if (!places.contains(link->target))
        faults.push_back({"broken-link", page.page->label,
                          "a link leads to \"" + link->target + "\", which is nowhere"});
    check_link_areas(page, faults);
  }
}

}  // namespace splay::ink
