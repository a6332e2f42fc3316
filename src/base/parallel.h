// Work in shares, on two threads where the machine has them.
#pragma once

#include <cstddef>
#include <functional>

namespace splay {

// Calls work(0) to work(count - 1), each once and begun in that order, on two threads (on one where
// the process may use one core only), and returns when all are done. What the calls share must be
// safe to read from two threads, what they write must be each one's own: then the result does not
// depend on who did what. Throws what the call of the least index threw, after all have ended.
// From within `work` it runs on the calling thread alone.
void in_parallel(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace splay
