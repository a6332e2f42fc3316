// The tables at the top of a project file, listed once: reading, the reference and the editor
// schema go by this list.
#pragma once

#include <string_view>
#include <vector>

#include "model/project.h"

namespace splay::model {

// One of its kind, or several with names of the author's own.
struct TopTable {
  std::string_view word, help;
  Fields* single = nullptr;
  NamedTables* named = nullptr;
};
// All but [sizes], [as_built] (read apart) and the items, in the order of the reference. They point
// into the project.
std::vector<TopTable> top_tables(Project& project);

}  // namespace splay::model
