#include "reading/functions.h"

#include <algorithm>
#include <array>

namespace splay::reading {

namespace {

constexpr std::array<Function, 10> all{{{"min", Rule::choice, false},
                                        {"max", Rule::choice, false},
                                        {"abs", Rule::unchanged, false},
                                        {"sqrt", Rule::root, true},
                                        {"sin", Rule::from_angle, false},
                                        {"cos", Rule::from_angle, false},
                                        {"tan", Rule::from_angle, true},
                                        {"asin", Rule::to_angle, true},
                                        {"acos", Rule::to_angle, true},
                                        {"atan", Rule::to_angle, false}}};

}  // namespace

std::span<const Function> functions() { return all; }

const Function* function_of(std::string_view word) {
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const Function& function) { return function.word == word; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace splay::reading
