#include "reading/reading.h"

#include "reading/guards.h"
#include "reading/project_reader.h"
#include "reading/syntax.h"
#include "reading/table_reader.h"

namespace splay::reading {

namespace {

// Everything up to the tables: nothing when the text could not be parsed.
std::optional<toml::table> guarded_parse(const SourceText& source, Faults& faults) {
  if (auto refusal = refuse_unreadable(source)) {
    faults.complain(std::move(*refusal));
    return std::nullopt;
  }
  return parse(source, faults);
}

}  // namespace

ProjectReading read_project(std::string_view source, std::string_view file_name,
                            const model::Registry& registry) {
  const SourceText text(source);
  Faults faults;
  ProjectReading reading;
  if (const auto root = guarded_parse(text, faults)) {
    model::Project project = read_tables(*root, text, registry, faults);
    if (faults.none()) {
      project.file_name = file_name;
      project.source = source;
      reading.project = std::move(project);
    }
  }
  reading.diagnostics = std::move(faults).finish();
  return reading;
}

StyleReading read_style(std::string_view source, std::string_view name,
                        std::span<const model::PageKind> pages) {
  const SourceText text(source);
  Faults faults;
  StyleReading reading;
  if (const auto root = guarded_parse(text, faults)) {
    model::Style style(pages);
    style.name = name;
    Evaluator evaluator(Unit::millimetre);
    const Sizes no_sizes;
    const ValueReader values(text, evaluator, no_sizes, faults);
    read_table({*root, "", {}}, style, values, {});
    if (faults.none()) reading.style = std::move(style);
  }
  reading.diagnostics = std::move(faults).finish();
  return reading;
}

}  // namespace splay::reading
