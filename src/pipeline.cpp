#include "pipeline.h"

#include "constructs/construct.h"
#include "fabrication/as_built.h"
#include "ink/lint.h"
#include "reading/as_built.h"
#include "reading/reading.h"
#include "writers/files.h"

namespace splay {

Piece make_piece(const std::filesystem::path& file, const Overrides& overrides) {
  // One byte more than reading takes, so that reading itself says what is too large.
  return make_piece(writers::read_file(file, reading::largest_file + 1), file.string(), overrides);
}

Piece make_piece(std::string source, std::string file_name, const Overrides& overrides) {
  Piece piece{std::move(file_name), std::move(source), {}, {}, {}, {}};
  reading::ProjectReading result =
      reading::read_project(piece.source, piece.file_name, constructs::registry());
  piece.diagnostics = std::move(result.diagnostics);
  if (!result.project) return piece;
  reading::AsBuiltReading record = reading::read_as_built(piece.source, *result.project->job.units);
  piece.as_built = std::move(record.as_built);
  piece.diagnostics = std::move(record.diagnostics);
  if (!piece.diagnostics.empty()) return piece;
  piece.project = std::make_unique<model::Project>(std::move(*result.project));
  if (overrides.paper) {
    piece.project->job.paper.value = *overrides.paper;
    piece.project->job.paper.given = true;
  }
  piece.plan =
      fabrication::make_plan(*piece.project, constructs::build(*piece.project), overrides.effort);
  piece.diagnostics = fabrication::as_built_faults(piece.plan, piece.as_built);
  if (!piece.diagnostics.empty()) piece.project.reset();
  return piece;
}

std::string page_faults(const ink::Packet& packet, const ink::FontSet& fonts,
                        const ink::PartsWanted& wanted) {
  std::string text;
  for (const ink::LintFault& fault : ink::lint(packet, fonts, wanted))
    text += "page " + fault.page + ": " + fault.rule + ": " + fault.text + "\n";
  return text;
}

}  // namespace splay
