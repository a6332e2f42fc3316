// One step on the page: its head, the two drawings, the strip of settings, the words. Internal to
// src/sheets.
#pragma once

#include <memory>
#include <vector>

#include "drafting/flow.h"
#include "sheets/saw_steps_work.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// Where a card stands.
struct CardPlace {
  bool as_before = false;  // all is set as for the card above, whose strip of settings it shares
  std::vector<fabrication::Flag> said;            // cautions that stand over the whole setting
  std::shared_ptr<const drafting::Picture> head;  // the setting again, on top of a later page
};

// The first step's framed block, then a row for each other step that is the same cut; only between
// rows may it be broken.
drafting::Story step_cards(const Context& context, const JoinedSteps& steps, double width,
                           const CardPlace& place);

}  // namespace splay::sheets
