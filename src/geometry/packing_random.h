// A small generator of pseudo-random numbers for searches: the same start gives the same sequence
// on every machine. SplitMix64: G. Steele, D. Lea, C. Flood, "Fast splittable pseudorandom number
// generators", OOPSLA 2014.
#pragma once

#include <cstdint>

namespace splay::packing {

class Random {
 public:
  explicit Random(std::uint64_t start) : state_(start) {}

  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9e3779b97f4a7c15U);
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31U);
  }
  // In [0, 1).
  double fraction() { return static_cast<double>(next() >> 11U) * 0x1p-53; }
  // In [0, count); count is at least 1.
  int below(int count) {
    return static_cast<int>(((next() >> 32U) * static_cast<std::uint64_t>(count)) >> 32U);
  }

 private:
  std::uint64_t state_;
};

}  // namespace splay::packing
