// How the figures behind the cautions are reckoned, a line for each, with its source. Internal to
// src/sheets.
#pragma once

#include <string>
#include <vector>

#include "sheets/sheet.h"

namespace splay::sheets {

struct Reckoned {
  std::string figure, how;
};

std::vector<Reckoned> movement_reckoned(const Context& context);
// Of shelves: sag and limit; with `joined`, of what is joined along them too.
std::vector<Reckoned> shelves_reckoned(const Context& context, bool joined);

drafting::Story reckoned_table(const Context& context, const std::vector<Reckoned>& lines,
                               double width);

}  // namespace splay::sheets
