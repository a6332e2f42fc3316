#include "writers/project_schema.h"

#include <nlohmann/json.hpp>

#include "model/as_built.h"
#include "model/top_tables.h"
#include "writers/json_words.h"

namespace splay::writers {

namespace {

using Json = nlohmann::ordered_json;
using model::Date;
using model::Field;
using model::Given;
using model::Range;
using model::Refers;

Json table_of(model::Fields& fields);

Json named_tables(Json of) { return {{"type", "object"}, {"additionalProperties", std::move(of)}}; }

Json quantity() { return {{"type", Json::array({"number", "string"})}}; }

// A field that must be one of some words, as if the author had written this one.
struct Pick {
  std::string field;
  std::size_t word = 0;
};

class SchemaMaker : public model::FieldVisitor {
 public:
  explicit SchemaMaker(Pick pick = {}) : pick_(std::move(pick)) {}
  Json properties = Json::object();
  Json required = Json::array();
  std::vector<Pick> choices;  // every word of every required field of words

  void length(const Field& field, Given<Length>&, Range) override { add(field, quantity()); }
  void angle(const Field& field, Given<Angle>&, Range) override { add(field, quantity()); }
  void number(const Field& field, Given<double>&, Range) override { add(field, quantity()); }
  void count(const Field& field, Given<int>&, Range) override { add(field, quantity()); }
  void flag(const Field& field, Given<bool>& value) override {
    add(field, {{"type", "boolean"}, {"default", *value}});
  }
  void text(const Field& field, Given<std::string>&, Refers) override {
    add(field, {{"type", "string"}});
  }
  // A TOML date comes to a schema as text.
  void date(const Field& field, Given<Date>&) override {
    add(field, {{"type", "string"}, {"format", "date"}});
  }
  void word(const Field& field, Given<int>& index,
            std::span<const std::string_view> words) override {
    Json one = {{"enum", Json::array()}};
    const bool picked = field.name == pick_.field;
    if (picked) {
      index = Given<int>(static_cast<int>(pick_.word));
      index.given = true;
    }
    for (std::size_t i = 0; i < words.size(); ++i) {
      if (field.required) choices.push_back({std::string(field.name), i});
      if (!picked || i == pick_.word) one["enum"].push_back(words[i]);
    }
    if (!field.required) one["default"] = words[static_cast<std::size_t>(*index)];
    add(field, std::move(one));
  }
  void texts(const Field& field, Given<std::vector<std::string>>&) override {
    add(field, list_of({{"type", "string"}}));
  }
  void words(const Field& field, Given<std::vector<Given<int>>>&,
             std::span<const std::string_view> words) override {
    Json one = {{"enum", Json::array()}};
    for (const std::string_view word : words) one["enum"].push_back(word);
    add(field, list_of(std::move(one)));
  }
  void lengths(const Field& field, Given<std::vector<Length>>&, Range) override {
    add(field, list_of(quantity()));
  }
  void angles(const Field& field, Given<std::vector<Angle>>&, Range) override {
    add(field, list_of(quantity()));
  }
  void points(const Field& field, Given<std::vector<Vec2>>&) override {
    Json point = list_of(quantity());
    point["minItems"] = 2;
    point["maxItems"] = 2;
    add(field, list_of(std::move(point)));
  }
  void table(const Field& field, model::Fields& fields) override { add(field, table_of(fields)); }
  void tables(const Field& field, model::NamedTables& named) override {
    add(field, named_tables(table_of(*named.sample())));
  }

 private:
  void add(const Field& field, Json type) {
    type["description"] = field.help;
    const std::string name(field.name);
    properties[name] = std::move(type);
    if (field.required) required.push_back(name);
  }

  Pick pick_;
};

Json table_of(SchemaMaker maker) {
  Json table = {{"type", "object"},
                {"additionalProperties", false},
                {"properties", std::move(maker.properties)}};
  if (!maker.required.empty()) table["required"] = std::move(maker.required);
  return table;
}

Json table_of(model::Fields& fields) {
  SchemaMaker maker;
  fields.fields(maker);
  return table_of(std::move(maker));
}

// What can be built: where a word decides which fields there are, one form for each word.
Json item_of(const model::ItemKind& kind) {
  SchemaMaker plain;
  kind.make()->fields(plain);
  Json forms = Json::array();
  bool other = false;
  for (const Pick& pick : plain.choices) {
    SchemaMaker picked(pick);
    kind.make()->fields(picked);
    other = other || picked.properties.size() != plain.properties.size();
    forms.push_back(table_of(std::move(picked)));
  }
  return other ? Json{{"anyOf", std::move(forms)}} : table_of(std::move(plain));
}

}  // namespace

std::string project_schema(const model::Registry& registry) {
  Json properties = Json::object();
  properties["sizes"] = {{"type", "object"},
                         {"description", "names for sizes, to be used anywhere in the file"},
                         {"additionalProperties", quantity()}};
  const auto add = [&](std::string_view word, std::string_view help, Json table) {
    table["description"] = help;
    properties[std::string(word)] = std::move(table);
  };
  model::AsBuilt as_built;
  add("as_built", "what was measured on the finished piece, for the archive", table_of(as_built));
  model::Project project;
  for (const model::TopTable& top : model::top_tables(project))
    add(top.word, top.help,
        top.single != nullptr ? table_of(*top.single)
                              : named_tables(table_of(*top.named->sample())));
  for (const model::ItemKind& kind : registry)
    add(kind.word, kind.help, named_tables(item_of(kind)));
  const Json schema = {{"$schema", "http://json-schema.org/draft-07/schema#"},
                       {"title", "A splaybook project file"},
                       {"type", "object"},
                       {"required", Json::array({"job"})},
                       {"additionalProperties", false},
                       {"properties", std::move(properties)}};
  return schema.dump(2) + "\n";
}

}  // namespace splay::writers
