#include "model/said.h"

#include <map>

namespace splay::model {

std::vector<Changed> changes(const std::vector<Said>& before, const std::vector<Said>& now) {
  std::map<std::string, std::string> old;
  for (const Said& said : before) old[said.field] = said.value;
  std::vector<Changed> all;
  for (const Said& said : now) {
    const auto found = old.find(said.field);
    if (found == old.end()) {
      all.push_back({said.field, "", said.value});
      continue;
    }
    if (found->second != said.value) all.push_back({said.field, found->second, said.value});
    old.erase(found);
  }
  for (const Said& said : before)
    if (old.contains(said.field)) all.push_back({said.field, said.value, ""});
  return all;
}

}  // namespace splay::model
