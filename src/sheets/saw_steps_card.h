// One step on the page: its head, the two drawings, the strip of settings, the words. Internal to
// src/sheets.
#pragma once

#include "drafting/flow.h"
#include "sheets/saw_steps_work.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// The first step's framed block, then a row for each other step that is the same cut; only between
// rows may it be broken. `as_before`: all is set as for the card above it, whose strip of settings
// it shares.
drafting::Story step_cards(const Context& context, const JoinedSteps& steps, double width,
                           bool as_before);

}  // namespace splay::sheets
