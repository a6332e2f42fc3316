#include "base/parallel.h"

#include <atomic>
#include <catch2/catch.hpp>
#include <numeric>
#include <stdexcept>
#include <vector>

using splay::in_parallel;

TEST_CASE("every share is worked once, whoever takes it") {
  for (const std::size_t count : {0U, 1U, 2U, 1000U}) {
    std::vector<std::size_t> done(count, 0);
    in_parallel(count, [&](std::size_t i) { done[i] += i + 1; });
    CHECK(std::accumulate(done.begin(), done.end(), std::size_t{0}) == count * (count + 1) / 2);
  }
}

TEST_CASE("of what several shares throw the first in order is told, when all have ended") {
  std::atomic<int> ended{0};
  const auto work = [&](std::size_t i) {
    ++ended;
    if (i % 10 == 7) throw std::runtime_error(std::to_string(i));
  };
  CHECK_THROWS_WITH(in_parallel(100, work), "7");
  CHECK(ended == 100);
}

TEST_CASE("shares within shares are worked on the thread that has them") {
  std::vector<int> sums(20, 0);
  in_parallel(sums.size(), [&](std::size_t i) {
    in_parallel(50, [&](std::size_t k) { sums[i] += static_cast<int>(k); });
  });
  CHECK(sums == std::vector<int>(20, 1225));
}
