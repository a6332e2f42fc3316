#include "reading/said.h"

#include "base/figure.h"
#include "model/project.h"
#include "reading/guards.h"
#include "reading/in_order.h"
#include "reading/syntax.h"

namespace splay::reading {

namespace {

std::string words_of(const toml::node& node) {
  constexpr int places = 9;
  if (const auto* text = node.as_string()) return **text;
  if (const auto* whole = node.as_integer()) return std::to_string(**whole);
  if (const auto* number = node.as_floating_point()) return plain_number(**number, places);
  if (const auto* flag = node.as_boolean()) return **flag ? "true" : "false";
  if (const auto* date = node.as_date())
    return model::iso_date({(*date)->year, (*date)->month, (*date)->day});
  std::string list;
  if (const auto* array = node.as_array())
    for (const toml::node& each : *array) list += (list.empty() ? "" : ", ") + words_of(each);
  return "[" + list + "]";
}

void add(const toml::table& table, const std::string& path, std::vector<model::Said>& all) {
  for (const Entry& entry : in_order(table)) {
    const std::string field =
        path.empty() ? std::string(entry.key->str()) : path + "." + std::string(entry.key->str());
    if (const auto* inner = entry.node->as_table())
      add(*inner, field, all);
    else
      all.push_back({field, words_of(*entry.node)});
  }
}

}  // namespace

std::vector<model::Said> all_said(std::string_view source) {
  const SourceText text(source);
  Faults faults;
  std::vector<model::Said> all;
  if (refuse_unreadable(text)) return all;
  if (const auto root = parse(text, faults)) add(*root, "", all);
  return all;
}

}  // namespace splay::reading
