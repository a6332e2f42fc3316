// The stories that share the pages on hardware, finish and how the piece holds. Each is empty when
// there is nothing to say. The context is for_reading().
#pragma once

#include "drafting/table.h"
#include "sheets/sheet.h"

namespace splay::sheets {

drafting::Story hardware_story(const Context& context, double width);
drafting::Story finish_story(const Context& context, double width);
drafting::Story soundness_story(const Context& context, double width);

// Columns of their tables: of texts, and of figures, which are never broken.
inline drafting::Column words(const char* head, double share = 1) {
  return {.head = head, .share = share};
}
inline drafting::Column figures(const char* head) {
  return {.head = head, .align = ink::Align::right, .share = 0, .wrap = false};
}

}  // namespace splay::sheets
