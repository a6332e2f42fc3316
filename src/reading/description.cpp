#include "reading/description.h"

#include "base/figure.h"
#include "model/as_built.h"
#include "model/top_tables.h"
#include "reading/values.h"

namespace splay::reading {

namespace {

using model::Date;
using model::Field;
using model::Given;
using model::NamedTables;
using model::Range;
using model::Refers;

std::string millimetres(double mm) { return plain_number(mm, 3) + " mm"; }
std::string degrees(double rad) { return plain_number(Angle{rad}.degrees(), 3) + " deg"; }

// A default that the range refuses stands for "not there".
std::string when_in(Range range, double value, const std::string& text) {
  const bool low = range.above_least ? value <= range.least : value < range.least;
  return low || value > range.most ? "none" : text;
}

class Describer : public model::FieldVisitor {
 public:
  std::vector<FieldRow> rows;

  void length(const Field& field, Given<Length>& value, Range range) override {
    add(field, "length, " + range_text(range, length_kind, Unit::millimetre),
        when_in(range, value->mm, millimetres(value->mm)));
  }
  void angle(const Field& field, Given<Angle>& value, Range range) override {
    add(field, "angle, " + range_text(range, angle_kind, Unit::millimetre),
        when_in(range, value->rad, degrees(value->rad)));
  }
  void number(const Field& field, Given<double>& value, Range range) override {
    add(field, "number, " + range_text(range, plain_kind, Unit::millimetre),
        when_in(range, *value, plain_number(*value, 6)));
  }
  void count(const Field& field, Given<int>& value, Range range) override {
    add(field, "whole number, " + range_text(range, plain_kind, Unit::millimetre),
        when_in(range, *value, std::to_string(*value)));
  }
  void flag(const Field& field, Given<bool>& value) override {
    add(field, "true or false", *value ? "true" : "false");
  }
  void text(const Field& field, Given<std::string>& value, Refers refers) override {
    const std::string takes = refers == Refers::to_stock  ? "name of a stock"
                              : refers == Refers::to_item ? "name of an item"
                                                          : "text";
    add(field, takes, value->empty() ? "none" : "\"" + *value + "\"");
  }
  void date(const Field& field, Given<Date>&) override { add(field, "date, 2026-03-02", "none"); }
  void word(const Field& field, Given<int>& index,
            std::span<const std::string_view> words) override {
    std::string takes;
    for (const std::string_view one : words)
      takes.append(takes.empty() ? "\"" : " or \"").append(one).append("\"");
    add(field, takes, "\"" + std::string(words[static_cast<std::size_t>(*index)]) + "\"");
  }
  void texts(const Field& field, Given<std::vector<std::string>>&) override {
    add(field, "list of texts", "none");
  }
  void words(const Field& field, Given<std::vector<Given<int>>>&,
             std::span<const std::string_view> words) override {
    std::string takes = "list of words";
    const char* before = ": \"";
    for (const std::string_view one : words) {
      takes.append(before).append(one).append("\"");
      before = ", \"";
    }
    add(field, takes, "none");
  }
  void lengths(const Field& field, Given<std::vector<Length>>&, Range range) override {
    add(field, "list of lengths, each " + range_text(range, length_kind, Unit::millimetre), "none");
  }
  void angles(const Field& field, Given<std::vector<Angle>>&, Range range) override {
    add(field, "list of angles, each " + range_text(range, angle_kind, Unit::millimetre), "none");
  }
  void points(const Field& field, Given<std::vector<Vec2>>&) override {
    add(field, "list of points [x, y], lengths", "none");
  }
  void table(const Field& field, model::Fields& fields) override {
    add(field, "table", "as its fields say");
    rows.back().table = true;
    rows.back().inner = rows_of(fields);
  }
  void tables(const Field& field, NamedTables& named) override {
    add(field, "tables with names of your own", "none");
    rows.back().table = true;
    rows.back().named = true;
    rows.back().inner = rows_of(*named.sample());
  }

 private:
  void add(const Field& field, std::string takes, std::string fallback) {
    if (!field.when_left_out.empty()) fallback = field.when_left_out;
    if (field.required) fallback = "needed";
    rows.push_back({std::string(field.name),
                    std::move(takes),
                    std::move(fallback),
                    std::string(field.help),
                    false,
                    false,
                    {}});
  }
};

}  // namespace

std::vector<FieldRow> rows_of(model::Fields& fields) {
  Describer describer;
  fields.fields(describer);
  return std::move(describer.rows);
}

std::vector<TopTable> top_tables(const model::Registry& registry) {
  std::vector<TopTable> tables;
  model::Project project;
  for (const model::TopTable& top : model::top_tables(project)) {
    tables.push_back({std::string(top.word), std::string(top.help), top.named != nullptr,
                      top.single != nullptr ? rows_of(*top.single) : rows_of(*top.named->sample()),
                      false});
    if (top.word != "approval") continue;
    model::AsBuilt as_built;
    tables.push_back({"as_built", "what was measured on the finished piece, for the archive", false,
                      rows_of(as_built), false});
  }
  for (const model::ItemKind& kind : registry) {
    const std::unique_ptr<model::Item> item = kind.make();
    tables.push_back({std::string(kind.word), std::string(kind.help), true, rows_of(*item), false});
  }
  return tables;
}

TopTable style_table(std::span<const model::PageKind> pages) {
  model::Style style(pages);
  return {"style", "how pages look, in a file of its own: styles/NAME.toml", false, rows_of(style),
          true};
}

std::vector<std::string> about_sizes() {
  return {
      "A number without a unit is in the job's unit; an angle without one is in degrees.",
      R"(A text takes fractions and units: "23 1/4", "3/8 in", "2 ft 6 1/2 in", '6"', "590 mm".)",
      R"(Lengths in metres and centimetres are taken too: "1.2 m", "59 cm".)",
      R"(Angles: "12.5 deg", "12.5°"; a slope "1 in 6" or "10 %" is the angle it rises at.)",
      R"(Arithmetic over the names of [sizes]: "width - 2*overhang", with + - * / and ( ).)",
      "Functions: min, max, abs, sqrt, sin, cos, tan, asin, acos, atan; angles in degrees.",
      "A name of [sizes] starts with a letter and has letters, digits and _.",
      "Sizes may refer to each other in any order, but not in a circle.",
      R"(In [sizes] a number without a unit is a length; a plain number is written "3 times".)",
      "Units are checked: no length is added to an angle; two lengths multiplied are no length."};
}

}  // namespace splay::reading
