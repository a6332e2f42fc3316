// Words that pages for the client share. Internal to src/sheets.
#pragma once

#include <string>

#include "sheets/sheet.h"

namespace splay::sheets {

std::string materials_text(const Context& context);         // "Birch plywood, European oak"
std::string drawings_text(const Context& context);          // "014, revision B of 2026-03-02"
std::string joined(const std::vector<std::string>& words);  // with commas

// A heading and what stands under it, with air before the next.
void add_chapter(const Context& context, drafting::Story& story, const char* title,
                 drafting::Story more, double width);

}  // namespace splay::sheets
