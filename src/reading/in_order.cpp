#include "reading/in_order.h"

#include <algorithm>

#include "base/utf8.h"

namespace splay::reading {

std::vector<Entry> in_order(const toml::table& table) {
  std::vector<Entry> entries;
  entries.reserve(table.size());
  for (const auto& [key, node] : table) entries.push_back({&key, &node});
  std::stable_sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) {
    return a.key->source().begin < b.key->source().begin;
  });
  return entries;
}

std::string shown(std::string_view word) {
  constexpr std::size_t most = 60;
  std::string out;
  for (std::size_t count = 0; !word.empty(); ++count) {
    if (count == most) return out + "...";
    const Character c = first_character(word);
    const std::size_t bytes = std::max<std::size_t>(c.bytes, 1);
    out +=
        c.bytes == 0 || is_control(c.code) ? to_utf8(0xFFFD) : std::string(word.substr(0, bytes));
    word.remove_prefix(bytes);
  }
  return out;
}

std::string_view type_name(const toml::node& node) {
  switch (node.type()) {
    case toml::node_type::table:
      return "a table";
    case toml::node_type::array:
      return "a list";
    case toml::node_type::string:
      return "a text";
    case toml::node_type::integer:
    case toml::node_type::floating_point:
      return "a number";
    case toml::node_type::boolean:
      return "true or false";
    case toml::node_type::date:
      return "a date";
    case toml::node_type::time:
      return "a time";
    case toml::node_type::date_time:
      return "a date with a time";
    case toml::node_type::none:
      break;
  }
  return "nothing";
}

}  // namespace splay::reading
