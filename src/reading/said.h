// Everything a project file says, in the author's own words.
#pragma once

#include <string_view>
#include <vector>

#include "model/said.h"

namespace splay::reading {

// Value by value in the order of the file; a list is one value. Empty for a text that can't be
// read (read_project says why).
std::vector<model::Said> all_said(std::string_view source);

}  // namespace splay::reading
