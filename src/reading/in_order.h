// The keys of a table as the author wrote them; toml++ keeps them sorted by name.
#pragma once

#include <toml++/toml.h>
#include <string>
#include <string_view>
#include <vector>

namespace splay::reading {

struct Entry {
  const toml::key* key;
  const toml::node* node;
};
std::vector<Entry> in_order(const toml::table& table);

// A word of the author's as part of a message: cut when long, without control characters.
std::string shown(std::string_view word);

std::string_view type_name(const toml::node& node);  // "a text", "a number", "a table" ...

}  // namespace splay::reading
