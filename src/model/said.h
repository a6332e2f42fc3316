// What a project file says, value by value, to lay two files side by side.
#pragma once

#include <string>
#include <vector>

namespace splay::model {

struct Said {
  std::string field;  // "case.body.outline.height"
  std::string value;  // in the author's own words: "26 1/2"
};

struct Changed {
  std::string field, before, now;  // "" where nothing is said
};
// In the order of `now`, then what is no longer said. Fields are named once in each.
std::vector<Changed> changes(const std::vector<Said>& before, const std::vector<Said>& now);

}  // namespace splay::model
