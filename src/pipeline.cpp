#include "pipeline.h"

#include <stdexcept>

#include "constructs/construct.h"
#include "ink/lint.h"
#include "reading/reading.h"
#include "writers/files.h"

namespace splay {

Piece make_piece(const std::filesystem::path& file, const Overrides& overrides) {
  // One byte more than reading takes, so that reading itself says what is too large.
  return make_piece(writers::read_file(file, reading::largest_file + 1), file.string(), overrides);
}

Piece make_piece(std::string source, std::string file_name, const Overrides& overrides) {
  Piece piece{std::move(file_name), std::move(source), {}, {}, {}};
  reading::ProjectReading result =
      reading::read_project(piece.source, piece.file_name, constructs::registry());
  piece.diagnostics = std::move(result.diagnostics);
  if (!result.project) return piece;
  piece.project = std::make_unique<model::Project>(std::move(*result.project));
  if (overrides.paper) piece.project->job.paper.value = *overrides.paper;
  piece.plan =
      fabrication::make_plan(*piece.project, constructs::build(*piece.project), overrides.effort);
  return piece;
}

StyleFile find_style(const std::string& name, const std::vector<std::filesystem::path>& folders) {
  std::filesystem::path path = name;
  for (const std::filesystem::path& folder : folders)
    if (!std::filesystem::exists(path)) path = folder / (name + ".toml");
  return {path.string(), writers::read_file(path, reading::largest_file)};
}

model::Style read_style(const StyleFile& file) {
  reading::StyleReading result =
      reading::read_style(file.text, std::filesystem::path(file.path).stem().string());
  std::string faults;
  for (const Diagnostic& fault : result.diagnostics)
    faults += describe(fault, file.path, file.text);
  if (!result.style) throw std::runtime_error(faults);
  return std::move(*result.style);
}

std::string page_faults(const fabrication::Plan& plan, const ink::Packet& packet,
                        const ink::FontSet& fonts, bool with_parts) {
  std::vector<std::string> marks;
  for (const fabrication::PartRow& row : plan.rows)
    if (with_parts) marks.push_back(row.mark);
  std::string text;
  for (const ink::LintFault& fault : ink::lint(packet, fonts, marks))
    text += "page " + fault.page + ": " + fault.rule + ": " + fault.text + "\n";
  return text;
}

}  // namespace splay
