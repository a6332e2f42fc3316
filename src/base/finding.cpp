#include "base/finding.h"

namespace splay {

std::string_view word(Level level) {
  switch (level) {
    case Level::stop:
      return "stop";
    case Level::caution:
      return "caution";
    case Level::note:
      break;
  }
  return "note";
}

}  // namespace splay
