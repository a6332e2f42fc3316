#include "base/parallel.h"

#include <atomic>
#include <exception>
#include <system_error>
#include <thread>
#include <vector>

namespace splay {

namespace {

thread_local bool sharing = false;

struct Shares {
  std::size_t count;
  const std::function<void(std::size_t)>& work;
  std::vector<std::exception_ptr> thrown;
  std::atomic<std::size_t> next{0};

  void take() {
    sharing = true;
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        thrown[i] = std::current_exception();
      }
    }
    sharing = false;
  }
};

}  // namespace

void in_parallel(std::size_t count, const std::function<void(std::size_t)>& work) {
  if (sharing) {
    for (std::size_t i = 0; i < count; ++i) work(i);
    return;
  }
  Shares shares{count, work, std::vector<std::exception_ptr>(count)};
  std::jthread second;
  if (count > 1 && std::thread::hardware_concurrency() > 1) {
    try {
      second = std::jthread([&shares] { shares.take(); });
    } catch (const std::system_error&) {
      // No more threads are to be had: this one does everything.
    }
  }
  shares.take();
  if (second.joinable()) second.join();
  for (const std::exception_ptr& each : shares.thrown)
    if (each) std::rethrow_exception(each);
}

}  // namespace splay
