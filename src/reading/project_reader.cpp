#include "reading/project_reader.h"

#include <algorithm>

#include "model/top_tables.h"
#include "reading/in_order.h"
#include "reading/sizes.h"
#include "reading/table_reader.h"

namespace splay::reading {

namespace {

// A table the author named, of a stock or an item.
struct Named {
  std::string_view word;
  const model::ItemKind* kind;  // null for a stock
  Entry entry;
  const toml::table* table;
};

class ProjectReader {
 public:
  ProjectReader(const toml::table& root, const SourceText& source, const model::Registry& registry,
                Faults& faults)
      : root_(root), source_(source), registry_(registry), faults_(faults) {}

  model::Project read() {
    model::Project project;
    refuse_unknown_tables();
    // The job first: its unit is what every bare number means.
    Evaluator job_evaluator(Unit::millimetre);
    const Sizes no_sizes;
    read_single("job", project.job, ValueReader(source_, job_evaluator, no_sizes, faults_));
    if (!root_.contains("job"))
      faults_.complain(
          {{}, "missing-table", "there is no [job]", "[job] with a title and a date", ""});
    Evaluator evaluator(*project.job.units);
    Sizes sizes;
    if (const Entry* entry = find("sizes"))
      if (const auto* table = table_of(*entry))
        sizes = read_sizes(*table, source_, evaluator, faults_);
    const ValueReader values(source_, evaluator, sizes, faults_);
    for (const model::TopTable& top : model::top_tables(project)) {
      if (top.single != nullptr && top.single != &project.job)
        read_single(top.word, *top.single, values);
      if (top.named != nullptr && top.named != &project.stocks)
        read_group(top.word, *top.named, values);
    }
    collect(values);
    for (const Named& named : named_) read_named(named, project, values);
    if (items_seen_ == 0)
      faults_.complain({{},
                        "nothing-to-build",
                        "the file says nothing of what to build",
                        "one table or more of " + kinds(),
                        ""});
    return project;
  }

 private:
  const Entry* find(std::string_view key) {
    const auto found =
        std::find_if(top_.begin(), top_.end(), [&](const Entry& e) { return e.key->str() == key; });
    return found == top_.end() ? nullptr : &*found;
  }

  std::string kinds() const {
    std::string text;
    for (const model::ItemKind& kind : registry_)
      text.append(text.empty() ? "[" : ", [").append(kind.word).append(".NAME]");
    return text;
  }

  void refuse_unknown_tables() {
    std::vector<std::string_view> words{"sizes", "as_built"};  // the latter is read apart
    std::string allowed = "[sizes], [as_built], ";
    model::Project any;
    for (const model::TopTable& top : model::top_tables(any)) {
      words.push_back(top.word);
      allowed.append("[").append(top.word).append(top.named != nullptr ? ".NAME], " : "], ");
    }
    for (const model::ItemKind& kind : registry_) words.push_back(kind.word);
    for (const Entry& entry : top_) {
      const std::string_view key = entry.key->str();
      if (std::find(words.begin(), words.end(), key) != words.end()) continue;
      const std::string_view near = nearest_word(key, words);
      std::string hint;
      if (!near.empty()) hint.append("did you mean [").append(near).append("]?");
      const bool table = entry.node->is_table() || entry.node->is_array_of_tables();
      if (!table && hint.empty()) hint = "a value stands below the header of its table";
      faults_.complain({source_.span(entry.key->source()), "unknown-table",
                        table ? "unknown table [" + shown(key) + "]"
                              : "\"" + shown(key) + "\" stands outside every table",
                        allowed + kinds(), hint});
    }
  }

  const toml::table* table_of(const Entry& entry) {
    if (const auto* table = entry.node->as_table()) return table;
    const std::string key(entry.key->str());
    faults_.complain({source_.span(entry.key->source()), "wrong-type",
                      key + " is " + std::string(type_name(*entry.node)), "a table: [" + key + "]",
                      entry.node->is_array_of_tables() ? "in single brackets" : ""});
    return nullptr;
  }

  void read_single(std::string_view key, model::Fields& fields, const ValueReader& values) {
    const Entry* entry = find(key);
    if (entry == nullptr) return;
    if (const auto* table = table_of(*entry))
      read_table(place_of(*entry, *table, std::string(key), source_), fields, values, known_);
  }

  // Finds all names first, so that one may be mentioned before it is described.
  void collect(const ValueReader& values) {
    collect_word("stock", nullptr, values);
    for (const model::ItemKind& kind : registry_) collect_word(kind.word, &kind, values);
    std::stable_sort(named_.begin(), named_.end(), [&](const Named& a, const Named& b) {
      return a.entry.key->source().begin < b.entry.key->source().begin;
    });
    for (const Named& named : named_) {
      const std::string name(named.entry.key->str());
      const bool fresh = named.kind == nullptr ? known_.stocks.insert(name).second
                                               : known_.items.insert(name).second;
      if (!fresh)
        faults_.complain({source_.span(named.entry.key->source()), "repeated-name",
                          "a second item has the name \"" + shown(name) + "\"",
                          "one name for one item, whatever its kind", ""});
    }
  }

  void collect_word(std::string_view word, const model::ItemKind* kind, const ValueReader& values) {
    items_seen_ += kind != nullptr && find(word) != nullptr ? 1 : 0;
    for (const Entry& entry : named_tables(word, values))
      named_.push_back({word, kind, entry, entry.node->as_table()});
  }

  // The entries of [word] that are tables with sound names.
  std::vector<Entry> named_tables(std::string_view word, const ValueReader& values) {
    std::vector<Entry> found;
    const Entry* group = find(word);
    if (group == nullptr) return found;
    const std::string path(word);
    const auto* table = group->node->as_table();
    if (table == nullptr) {
      faults_.complain(
          {source_.span(group->key->source()), "missing-name",
           path + " is " + std::string(type_name(*group->node)),
           "tables with names: [" + path + ".NAME]",
           group->node->is_array_of_tables() ? "in single brackets, with a name" : ""});
      return found;
    }
    for (const Entry& entry : in_order(*table)) {
      if (!entry.node->is_table()) {
        faults_.complain({source_.span(entry.key->source()), "missing-name",
                          "\"" + shown(entry.key->str()) + "\" is " +
                              std::string(type_name(*entry.node)) + " in [" + path +
                              "], which holds tables with names",
                          "[" + path + ".NAME]", "give the table a name"});
      } else if (check_name(entry, "a name in [" + path + "]", values)) {
        found.push_back(entry);
      }
    }
    return found;
  }

  // Tables with names that nothing else in the file refers to.
  void read_group(std::string_view word, model::NamedTables& group, const ValueReader& values) {
    for (const Entry& entry : named_tables(word, values)) {
      const std::string name(entry.key->str());
      const Place place = place_of(entry, *entry.node->as_table(),
                                   std::string(word).append(".").append(name), source_);
      read_table(place, group.add(name), values, known_);
    }
  }

  void read_named(const Named& named, model::Project& project, const ValueReader& values) {
    const std::string name(named.entry.key->str());
    const Place place = place_of(named.entry, *named.table,
                                 std::string(named.word).append(".").append(name), source_);
    if (named.kind == nullptr) {
      read_table(place, project.stocks.add(name), values, known_);
      return;
    }
    std::unique_ptr<model::Item> item = named.kind->make();
    item->kind = named.word;
    item->name = name;
    read_table(place, *item, values, known_);
    project.items.push_back(std::move(item));
  }

  const toml::table& root_;
  const SourceText& source_;
  const model::Registry& registry_;
  Faults& faults_;
  std::vector<Entry> top_ = in_order(root_);
  std::vector<Named> named_;
  Known known_;
  int items_seen_ = 0;
};

}  // namespace

model::Project read_tables(const toml::table& root, const SourceText& source,
                           const model::Registry& registry, Faults& faults) {
  return ProjectReader(root, source, registry, faults).read();
}

}  // namespace splay::reading
