// One step on the page: its head, the two drawings, the strip of settings, the words. Internal to
// src/sheets.
#pragma once

#include "drafting/flow.h"
#include "sheets/saw_steps_work.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// A framed block of the given width that is never broken. `as_before`: all is set as for the card
// above it, whose strip of settings it shares.
drafting::Picture step_card(const Context& context, const StepWork& work, double width,
                            bool as_before);

}  // namespace splay::sheets
