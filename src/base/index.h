// Numbers of things in lists: stored as 32 or plain ints, -1 for none, used as places in a vector.
#pragma once

#include <cstddef>

namespace splay {

constexpr std::size_t index(int number) { return static_cast<std::size_t>(number); }

}  // namespace splay
