// splaybook: from one text file that describes a piece of furniture to the binder it is built from.
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <iostream>

#include "constructs/construct.h"
#include "pipeline.h"
#include "reading/reading.h"
#include "sheets/packet.h"
#include "writers/files.h"
#include "writers/report.h"
#include "writers/writers.h"

namespace {

namespace fs = std::filesystem;
using namespace splay;

enum Exit { done = 0, wrong_project = 1, wrong_call = 2, no_file = 3 };

struct Call {
  std::string file, style = "bench", paper, out = "output", word;
  std::int64_t effort = 0;
};

const std::map<std::string, model::PaperSize> papers = {{"A4", model::PaperSize::a4},
                                                        {"Letter", model::PaperSize::letter},
                                                        {"A3", model::PaperSize::a3},
                                                        {"Tabloid", model::PaperSize::tabloid}};

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

Piece open_piece(const Call& call) {
  Overrides overrides;
  overrides.effort = effort_of(call);
  if (!call.paper.empty()) overrides.paper = papers.at(call.paper);
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

int check(const Call& call) {
  const Piece piece = open_piece(call);
  if (!piece.project) return wrong_project;
  show_findings(piece, std::cout);
  std::cout << piece.plan.assembly.parts.size() << " parts in " << piece.plan.rows.size()
            << " kinds, " << piece.plan.joints.size() << " joints, " << piece.plan.findings.size()
            << " findings\n";
  return piece.plan.stopped() ? wrong_project : done;
}

std::vector<fs::path> style_folders(const Call& call) {
  return {fs::path(call.file).parent_path() / "styles", SPLAYBOOK_INSTALLED_STYLES,
          SPLAYBOOK_SOURCE_STYLES};
}

int print(const Call& call) {
  const Piece piece = open_piece(call);
  if (!piece.project) return wrong_project;
  if (piece.plan.stopped()) {
    show_findings(piece, std::cerr);
    std::cerr << "Nothing is printed while a finding says stop.\n";
    return wrong_project;
  }
  const model::Style style = find_style(call.style, style_folders(call));
  const ink::FontSet fonts;
  const ink::Packet packet = sheets::make_packet(piece.plan, style, fonts);
  const std::string faults = page_faults(piece.plan, packet, fonts);
  if (!faults.empty())
    std::cerr << "The drawing hand failed on these pages; look at them before you cut:\n" << faults;
  const std::string name =
      fs::path(call.file).stem().string() + "-" + *piece.project->job.revision + "-shop.pdf";
  writers::write_files(call.out, {{name, writers::pdf(packet, fonts)}});
  std::cout << (fs::path(call.out) / name).string() << ": " << packet.pages.size() << " pages\n";
  return done;
}

int report(const Call& call) {
  const Piece piece = open_piece(call);
  if (!piece.project) return wrong_project;
  if (piece.plan.stopped()) {
    std::cout << writers::report(piece.plan, nullptr);
    return wrong_project;
  }
  const ink::FontSet fonts;
  const ink::Packet packet =
      sheets::make_packet(piece.plan, find_style(call.style, style_folders(call)), fonts);
  std::cout << writers::report(piece.plan, &packet);
  return done;
}

int explain(const Call& call) {
  const std::string text = reading::explain(call.word, constructs::registry());
  if (text.empty()) {
    std::cerr << "No such word: " << call.word << "\n"
              << reading::explain("", constructs::registry());
    return wrong_call;
  }
  std::cout << text;
  return done;
}

using Act = int (*)(const Call&);

// The commands and their options; the chosen one is left in `act`.
void describe_commands(CLI::App& app, Call& call, Act& act) {
  const auto command = [&](const char* name, const char* help, Act function) {
    CLI::App* sub = app.add_subcommand(name, help);
    sub->callback([&act, function] { act = function; });
    return sub;
  };
  const auto on_file = [&](CLI::App* sub) {
    sub->add_option("FILE", call.file, "the project file")->required();
    sub->add_option("--paper", call.paper, "paper, over what the file says")
        ->check(CLI::IsMember({"A4", "Letter", "A3", "Tabloid"}));
    sub->add_option(
           "--effort", call.effort,
           "steps of search for better layouts of sheets and boards; 0: the first good one")
        ->check(CLI::Range(0, 10000000));
    sub->add_option("--style", call.style, "a style of the styles folder, or its path");
    return sub;
  };
  on_file(command("check", "read, build and plan; print the findings", check));
  on_file(command("print", "print the shop binder as PDF", print))
      ->add_option("--out", call.out, "the folder to write to");
  on_file(command("report", "everything computed, as JSON on standard output", report));
  command("explain", "the fields of a table of the project file", explain)
      ->add_option("WORD", call.word, "case, case.shelf, stock, job, ...");
  app.require_subcommand(1);
}

}  // namespace

int main(int argc, char** argv) try {
  CLI::App app{"splaybook: the binder a small furniture shop builds from, out of one text file"};
  Call call;
  Act act = nullptr;
  describe_commands(app, call, act);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? done : wrong_call;
  }
  return act(call);
} catch (const std::exception& error) {
  std::fputs((std::string(error.what()) + '\n').c_str(), stderr);
  return no_file;
}
