// What the program has to say about a piece that it could read and build.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"

namespace splay {

enum class Level { stop, caution, note };

// stop: the piece must not be cut as drawn, and the shop set is withheld.
// caution: it can be cut, the maker should decide. note: worth knowing.
struct Finding {
  Level level = Level::note;
  std::string code;                // stable word in kebab case
  std::vector<std::string> about;  // names or marks of parts and joints
  std::string text;                // what is so, with its figures
  std::string remedy;              // what can be done about it
  SourceSpan span{};               // where the author wrote what it is about; line 0 when unknown
};

std::string_view word(Level level);

}  // namespace splay
