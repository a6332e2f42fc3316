// Two revisions of one piece laid side by side: what an author said otherwise, the parts, steps and
// pages that it touches, and the new packet with the changes in front and bars in its margins.
#pragma once

#include <string>
#include <vector>

#include "fabrication/changes.h"
#include "ink/changes.h"
#include "model/said.h"
#include "sheets/packet.h"

namespace splay::sheets {

// A revision: its plan and the packet that was made of it.
struct Edition {
  const fabrication::Plan& plan;
  const ink::Packet& packet;
};

struct PageChange {
  std::string label, title;
  bool is_new = false;
  std::vector<ink::Span> spans;  // where ink changed; empty for a new page
};

struct Comparison {
  std::string revision_before, date_before;
  std::vector<model::Changed> said;
  std::vector<fabrication::PartChange> parts;
  std::vector<PageChange> pages;        // of the new packet, those that changed
  std::vector<std::string> gone_pages;  // titles of old pages that have no like
  bool any() const {
    return !said.empty() || !parts.empty() || !pages.empty() || !gone_pages.empty();
  }
};

// Pages are paired by their titles and, among pages of one title, by their order.
Comparison compare(const Edition& before, const Edition& now, std::vector<model::Changed> said,
                   const ink::FontSet& fonts);

// The new packet with a bar beside every change and pages in front, "i", "ii" ..., that list them;
// for a client without parts and steps. `only_changed`: of the numbered pages just those.
ink::Packet marked_packet(const Context& context, const Comparison& comparison, ink::Packet packet,
                          ForWhom whom, bool only_changed);

// The packet with words over every page that say it is replaced.
ink::Packet void_packet(const Context& context, ink::Packet packet, const model::Job& replaced_by);

// Ids of steps as they are said: "A.3, A.4", "R.3 to 37"; three or more that follow each other as
// a run.
std::string steps_words(const std::vector<std::string>& ids);

// Pages that list the changes, without their numbers.
std::vector<ink::Page> make_changes(const Context& context, const Comparison& comparison,
                                    ForWhom whom);

}  // namespace splay::sheets
