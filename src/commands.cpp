#include "commands.h"

#include <unistd.h>

#include <algorithm>
#include <iostream>
#include <stdexcept>

#include "constructs/construct.h"
#include "reading/reading.h"
#include "reading/signed_text.h"
#include "sheets/sheet.h"
#include "writers/digest.h"

namespace splay {

namespace fs = std::filesystem;

namespace {

// Better layouts on request. On a terminal a line tells how far they are; a file gets none.
packing::Effort effort_of(const Call& call) {
  packing::Effort effort{call.effort, {}};
  if (call.effort > 0 && isatty(STDERR_FILENO) != 0)
    effort.progress = [](std::int64_t done, double) {
      std::cerr << "\rlayouts: " << done << " steps " << std::flush;
      return true;
    };
  return effort;
}

model::PaperSize paper_named(const std::string& word) {
  const auto found = std::ranges::find(model::paper_words, word);
  if (found == model::paper_words.end()) throw std::invalid_argument("no paper called " + word);
  return static_cast<model::PaperSize>(found - model::paper_words.begin());
}

}  // namespace

Overrides overrides_of(const Call& call) {
  Overrides overrides;
  overrides.effort = effort_of(call);
  if (!call.paper.empty()) overrides.paper = paper_named(call.paper);
  return overrides;
}

Piece open_piece(const Call& call) {
  const Overrides overrides = overrides_of(call);
  Piece piece = make_piece(call.file, overrides);
  if (overrides.effort.progress) std::cerr << "\r\x1b[K";
  for (const Diagnostic& fault : piece.diagnostics)
    std::cerr << describe(fault, piece.file_name, piece.source);
  return piece;
}

void show_findings(const Piece& piece, std::ostream& out) {
  for (const Finding& finding : piece.plan.findings) {
    out << word(finding.level) << ' ' << finding.code;
    if (finding.span.line > 0) out << " (" << piece.file_name << ":" << finding.span.line << ")";
    out << ": " << finding.text << "\n  remedy: " << finding.remedy << '\n';
  }
}

bool withheld(const Piece& piece) {
  if (!piece.plan.stopped()) return false;
  show_findings(piece, std::cerr);
  std::cerr << "Nothing is printed while a finding says stop.\n";
  return true;
}

std::vector<fs::path> shared_folders(const std::string& name, const fs::path& in_source) {
  std::error_code none;
  const fs::path program = fs::read_symlink("/proc/self/exe", none);
  return {program.parent_path().parent_path() / SPLAYBOOK_DATA / name, in_source};
}

fs::path style_path(const Call& call, const std::string& whom) {
  const std::string usual = whom == "client" ? "client" : "bench";
  const std::string name = call.style.empty() ? usual : call.style;
  std::vector<fs::path> folders = shared_folders("styles", SPLAYBOOK_SOURCE_STYLES);
  folders.insert(folders.begin(), fs::path(call.file).parent_path() / "styles");
  fs::path path = name;
  for (const fs::path& folder : folders)
    if (!fs::exists(path)) path = folder / (name + ".toml");
  return path;
}

Look look_of(const Call& call) { return look_of(read_style_file(style_path(call, call.whom))); }

std::string check_figure(const Piece& piece) {
  return writers::sha256(reading::signed_text(*piece.project));
}

std::string base_name(const Call& call, const Piece& piece) {
  return fs::path(call.file).stem().string() + "-" + *piece.project->job.revision;
}

int check(const Call& call) {
  if (is_archive(call.file)) return check_archive(call);
  const Piece piece = open_piece(call);
  if (!piece.project) return wrong_project;
  show_findings(piece, std::cout);
  std::cout << piece.plan.assembly.parts.size() << " parts in " << piece.plan.rows.size()
            << " kinds, " << piece.plan.joints.size() << " joints, " << piece.plan.findings.size()
            << " findings\n";
  return piece.plan.stopped() ? wrong_project : done;
}

int explain(const Call& call) {
  const std::string text =
      reading::explain(call.word, constructs::registry(), sheets::page_kinds());
  if (text.empty()) {
    std::cerr << "No such word: " << call.word << "\n"
              << reading::explain("", constructs::registry(), sheets::page_kinds());
    return wrong_call;
  }
  std::cout << text;
  return done;
}

}  // namespace splay
