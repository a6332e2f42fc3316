// Columns of tables: of texts, and of figures, which are never broken. Internal to src/sheets.
#pragma once

#include "drafting/table.h"

namespace splay::sheets {

inline drafting::Column words(const char* head, double share = 1) {
  return {.head = head, .share = share};
}
inline drafting::Column figures(const char* head) {
  return {.head = head, .align = ink::Align::right, .share = 0, .wrap = false};
}

// mm: a row to write words in by hand (common practice, no source: forms are ruled a third of an
// inch apart).
inline constexpr double written_line = 8.5;

}  // namespace splay::sheets
