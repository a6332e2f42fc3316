#include "reading/table_reader.h"

#include <algorithm>

namespace splay::reading {

namespace {

using model::Date;
using model::Field;
using model::FieldVisitor;
using model::Given;
using model::NamedTables;
using model::Range;
using model::Refers;

std::string listed(std::span<const std::string_view> words) {
  constexpr std::size_t most = 600;
  std::string text;
  for (const std::string_view word : words) {
    if (text.size() > most) return text + " ...";
    text.append(text.empty() ? "" : ", ").append(word);
  }
  return text.empty() ? "nothing" : text;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string_view>& known) {
  const std::string_view near = nearest_word(word, known);
  if (near.empty()) return "";
  return std::string("did you mean \"").append(near).append("\"?");
}

class TableReader : public FieldVisitor {
 public:
  TableReader(const Place& place, const ValueReader& values, const Known& known)
      : place_(place), values_(values), known_(known) {}

  void length(const Field& field, Given<Length>& value, Range range) override {
    if (const auto* node = find(field))
      give(value, *node, wrap<Length>(values_.quantity(*node, field.name, length_kind, range)));
  }
  void angle(const Field& field, Given<Angle>& value, Range range) override {
    if (const auto* node = find(field))
      give(value, *node, wrap<Angle>(values_.quantity(*node, field.name, angle_kind, range)));
  }
  void number(const Field& field, Given<double>& value, Range range) override {
    if (const auto* node = find(field))
      give(value, *node, values_.quantity(*node, field.name, plain_kind, range));
  }
  void count(const Field& field, Given<int>& value, Range range) override {
    if (const auto* node = find(field)) give(value, *node, values_.whole(*node, field.name, range));
  }
  void flag(const Field& field, Given<bool>& value) override {
    if (const auto* node = find(field)) give(value, *node, values_.flag(*node, field.name));
  }
  void date(const Field& field, Given<Date>& value) override {
    if (const auto* node = find(field)) give(value, *node, values_.date(*node, field.name));
  }
  void text(const Field& field, Given<std::string>& value, Refers refers) override {
    const auto* node = find(field);
    if (node == nullptr) return;
    give(value, *node, values_.text(*node, field.name));
    if (value.given) check_reference(value, refers);
  }
  void word(const Field& field, Given<int>& index,
            std::span<const std::string_view> words) override {
    if (const auto* node = find(field)) give(index, *node, word_of(*node, field.name, words));
  }
  void texts(const Field& field, Given<std::vector<std::string>>& value) override {
    list<std::string>(field, value, "a list of texts: [\"left\", \"right\"]",
                      [&](const toml::node& node) { return values_.text(node, field.name); });
  }
  void words(const Field& field, Given<std::vector<Given<int>>>& indices,
             std::span<const std::string_view> words) override {
    list<Given<int>>(
        field, indices,
        "a list of words: [\"" + std::string(words.empty() ? "" : words.front()) + "\"]",
        [&](const toml::node& node) -> std::optional<Given<int>> {
          Given<int> one;
          give(one, node, word_of(node, field.name, words));
          return one.given ? std::optional(one) : std::nullopt;
        });
  }
  void lengths(const Field& field, Given<std::vector<Length>>& value, Range range) override {
    list<Length>(field, value, "a list of lengths: [96, 48]", [&](const toml::node& node) {
      return wrap<Length>(values_.quantity(node, field.name, length_kind, range));
    });
  }
  void angles(const Field& field, Given<std::vector<Angle>>& value, Range range) override {
    list<Angle>(field, value, "a list of angles: [\"12 deg\", 0]", [&](const toml::node& node) {
      return wrap<Angle>(values_.quantity(node, field.name, angle_kind, range));
    });
  }
  void points(const Field& field, Given<std::vector<Vec2>>& value) override {
    list<Vec2>(field, value, "a list of points: [[0, 0], [24, 0]]",
               [&](const toml::node& node) { return point_of(node, field.name); });
  }
  void table(const Field& field, model::Fields& fields) override {
    const auto* node = find(field);
    if (node == nullptr) return;
    const auto* table = node->as_table();
    if (table == nullptr) {
      refuse(*node, field.name, "a table: { ... } or [" + path_to(field.name) + "]");
      return;
    }
    read_table(place_of(*entry_, *table, path_to(field.name), values_.source()), fields, values_,
               known_);
  }
  void tables(const Field& field, NamedTables& named) override {
    const auto* node = find(field);
    if (node == nullptr) return;
    const std::string path = path_to(field.name);
    const auto* table = node->as_table();
    if (table == nullptr) {
      refuse(*node, field.name, "tables with names: [" + path + ".NAME]");
      return;
    }
    for (const Entry& entry : in_order(*table)) read_named(entry, path, named);
  }

  void refuse_unknown() {
    const std::vector<std::string_view> names(names_.begin(), names_.end());
    const std::string allowed = listed(names);
    for (const Entry& entry : in_order(place_.table)) {
      const std::string_view key = entry.key->str();
      if (std::find(names.begin(), names.end(), key) != names.end()) continue;
      const std::string where =
          place_.path.empty() ? " in this file" : " in [" + shown(place_.path) + "]";
      values_.faults().complain({values_.source().span(entry.key->source()), "unknown-key",
                                 "unknown key \"" + shown(key) + "\"" + where, allowed,
                                 did_you_mean(key, names)});
    }
  }

 private:
  template <class T>
  static std::optional<T> wrap(std::optional<double> value) {
    return value ? std::optional<T>(T{*value}) : std::nullopt;
  }

  template <class T>
  void give(Given<T>& value, const toml::node& node, std::optional<T> read) {
    value.span = values_.span(node);
    if (!read) return;
    value.value = std::move(*read);
    value.given = true;
  }

  std::string path_to(std::string_view name) const {
    return place_.path.empty() ? std::string(name) : place_.path + "." + std::string(name);
  }

  // The field's value, or null after complaining when it must be there.
  const toml::node* find(const Field& field) {
    names_.emplace_back(field.name);
    const auto found = place_.table.find(field.name);
    if (found != place_.table.end()) {
      entry_ = Entry{&found->first, &found->second};
      return &found->second;
    }
    if (field.required)
      values_.faults().complain(
          {place_.span, "missing-field",
           (place_.path.empty() ? "the file" : "[" + shown(place_.path) + "]") + " has no " +
               std::string(field.name),
           std::string(field.name) + ": " + std::string(field.help), ""});
    return nullptr;
  }

  void refuse(const toml::node& node, std::string_view name, std::string allowed) const {
    const bool repeated = node.is_array_of_tables();
    values_.wrong_type(node, name, std::move(allowed),
                       repeated ? "every table has a name of its own, in single brackets" : "");
  }

  std::optional<int> word_of(const toml::node& node, std::string_view name,
                             std::span<const std::string_view> words) const {
    const auto* text = node.as_string();
    if (text == nullptr) {
      values_.wrong_type(node, name, "one of the words " + listed(words), "put it in quotes");
      return std::nullopt;
    }
    const auto found = std::find(words.begin(), words.end(), text->get());
    if (found != words.end()) return static_cast<int>(found - words.begin());
    values_.faults().complain(
        {values_.span(node), "unknown-word",
         std::string(name) + " is \"" + shown(text->get()) + "\"", listed(words),
         did_you_mean(text->get(), std::vector<std::string_view>(words.begin(), words.end()))});
    return std::nullopt;
  }

  std::optional<Vec2> point_of(const toml::node& node, std::string_view name) const {
    const auto* pair = node.as_array();
    if (pair == nullptr || pair->size() != 2) {
      values_.wrong_type(node, name, "two lengths for each point: [24, 0]");
      return std::nullopt;
    }
    const auto x = values_.quantity(*pair->get(0), name, length_kind, Range::place());
    const auto y = values_.quantity(*pair->get(1), name, length_kind, Range::place());
    if (!x || !y) return std::nullopt;
    return Vec2{*x, *y};
  }

  template <class T, class Read>
  void list(const Field& field, Given<std::vector<T>>& value, const std::string& allowed,
            Read read) {
    const auto* node = find(field);
    if (node == nullptr) return;
    const auto* array = node->as_array();
    if (array == nullptr) {
      values_.wrong_type(*node, field.name, allowed);
      return;
    }
    std::vector<T> all;
    for (const toml::node& element : *array)
      if (auto one = read(element)) all.push_back(std::move(*one));
    if (all.size() == array->size()) {
      give(value, *node, std::optional<std::vector<T>>(std::move(all)));
    }
  }

  void check_reference(Given<std::string>& value, Refers refers) const {
    if (refers == Refers::to_nothing) return;
    const bool stock = refers == Refers::to_stock;
    const auto& names = stock ? known_.stocks : known_.items;
    if (names.contains(value.value)) return;
    const std::vector<std::string_view> words(names.begin(), names.end());
    const std::string what = stock ? "stock" : "item";
    values_.faults().complain({value.span, stock ? "unknown-stock" : "unknown-item",
                               "there is no " + what + " named \"" + shown(value.value) + "\"",
                               listed(words), did_you_mean(value.value, words)});
  }

  void read_named(const Entry& entry, const std::string& path, NamedTables& named) const {
    const auto* table = entry.node->as_table();
    const std::string name(entry.key->str());
    if (table == nullptr) {
      values_.faults().complain({values_.source().span(entry.key->source()), "missing-name",
                                 "\"" + shown(name) + "\" is " +
                                     std::string(type_name(*entry.node)) + " in [" + shown(path) +
                                     "], which holds tables with names",
                                 "[" + shown(path) + ".NAME]", "give the table a name"});
      return;
    }
    if (!check_name(entry, "a name in [" + shown(path) + "]", values_)) return;
    const std::string inner = path + "." + name;
    read_table(place_of(entry, *table, inner, values_.source()), named.add(name), values_, known_);
  }

  const Place& place_;
  const ValueReader& values_;
  const Known& known_;
  std::vector<std::string> names_;  // of all fields so far
  std::optional<Entry> entry_;      // of the field that was found last
};

}  // namespace

Place place_of(const Entry& entry, const toml::table& table, std::string path,
               const SourceText& source) {
  const std::string_view row = source.line(static_cast<int>(table.source().begin.line));
  const std::size_t first = row.find_first_not_of(" \t");
  const bool header = first != std::string_view::npos && row[first] == '[' && !table.is_inline() &&
                      table.source().begin.column == first + 1;
  const toml::source_region& region = header ? table.source() : entry.key->source();
  return {table, std::move(path), source.span(region)};
}

void read_table(const Place& place, model::Fields& fields, const ValueReader& values,
                const Known& known) {
  fields.given = true;
  fields.span = place.span;
  const std::size_t before = values.faults().count();
  TableReader reader(place, values, known);
  fields.fields(reader);
  reader.refuse_unknown();
  if (values.faults().count() == before) fields.check(values.faults());
}

bool check_name(const Entry& entry, std::string_view what, const ValueReader& values) {
  constexpr std::size_t longest_name = 40;
  auto refusal = refuse_text(entry.key->str(), what, longest_name);
  if (!refusal) return true;
  refusal->span = values.source().span(entry.key->source());
  refusal->allowed = "a name of 1 to 40 letters, digits, marks and spaces";
  refusal->code = "bad-name";
  values.faults().complain(std::move(*refusal));
  return false;
}

}  // namespace splay::reading
