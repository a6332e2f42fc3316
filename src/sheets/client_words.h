// Words that pages for the client share. Internal to src/sheets.
#pragma once

#include <string>

#include "sheets/sheet.h"

namespace splay::sheets {

std::string materials_text(const Context& context);  // "Birch plywood, European oak"
std::string drawings_text(const Context& context);   // "014, revision B of 2026-03-02"

}  // namespace splay::sheets
