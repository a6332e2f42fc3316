// Figures from a seed, the same on every machine, for tests that try many pieces.
#pragma once

#include <algorithm>
#include <initializer_list>
#include <random>
#include <string>

#include "base/figure.h"

namespace splay::test {

// Not std::uniform_real_distribution, whose figures differ from library to library.
class Chance {
 public:
  explicit Chance(unsigned seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
  }
  bool coin() { return between(0, 1) < 0.5; }
  const char* word(std::initializer_list<const char*> words) {
    const auto at = static_cast<std::size_t>(between(0, 1) * static_cast<double>(words.size()));
    return words.begin()[std::min(at, words.size() - 1)];
  }
  // As a project file writes them: a length in the job's unit, an angle in degrees.
  std::string mm(double low, double high) { return plain_number(between(low, high), 3); }
  std::string degrees(double low, double high) {
    return "\"" + plain_number(between(low, high), 3) + " deg\"";
  }

 private:
  std::mt19937 engine_;
};

}  // namespace splay::test
