// splaybook: from one text file that describes a piece of furniture to the binder it is built from.
#include <CLI/CLI.hpp>
#include <iostream>
#include <stdexcept>

#include "commands.h"
#include "model/paper.h"
#include "writers/formats.h"

namespace {

using namespace splay;

using Act = int (*)(const Call&);

std::vector<std::string> paper_sizes() {
  return {model::paper_words.begin(), model::paper_words.end()};
}

// Options of every command that plans a piece.
CLI::App* on_file(CLI::App* sub, Call& call) {
  sub->add_option("FILE", call.file, "the project file")->required();
  sub->add_option("--paper", call.paper, "paper, over what the file or the style says")
      ->transform(CLI::IsMember(paper_sizes(), CLI::ignore_case));
  sub->add_option("--effort", call.effort,
                  "steps of search for better layouts of sheets and boards; 0: the first good one")
      ->check(CLI::Range(0, 10000000));
  sub->add_option("--style", call.style, "a style of the styles folder, or its path");
  return sub;
}

CLI::App* with_output(CLI::App* sub, Call& call, bool with_archive = false) {
  std::vector<std::string> whom{"shop", "client"};
  if (with_archive) whom.emplace_back("archive");
  sub->add_option("--for", call.whom, "whom it is for")->check(CLI::IsMember(whom));
  sub->add_option("--out", call.out, "the folder to write to");
  return sub;
}

// The commands and their options; the chosen one is left in `act`.
void describe_commands(CLI::App& app, Call& call, Act& act) {
  const auto command = [&](const char* name, const char* help, Act function) {
    CLI::App* sub = app.add_subcommand(name, help);
    sub->callback([&act, function] { act = function; });
    return sub;
  };
  on_file(command("check", "read, build and plan; print the findings", check), call);
  CLI::App* printing = on_file(command("print", "print a packet of pages as PDF", print), call);
  with_output(printing, call, true);
  std::vector<std::string> words;
  std::string kinds = "kinds of file, with commas:";
  for (const writers::Format& format : writers::formats()) {
    words.emplace_back(format.word);
    kinds.append(words.size() == 1 ? " " : "; ")
        .append(format.word)
        .append(": ")
        .append(format.help);
  }
  printing->add_option("--as", call.formats, kinds)->delimiter(',')->check(CLI::IsMember(words));
  with_output(on_file(command("watch", "print again at every save, until stopped", watch), call),
              call);
  on_file(command("report", "everything computed, as JSON on standard output", report), call);
  CLI::App* comparing =
      command("compare", "what changed from OLD to FILE, and what it touches", compare);
  comparing->add_option("OLD", call.old_file, "the earlier revision's file")->required();
  with_output(on_file(comparing, call), call)
      ->add_flag("--only-changed", call.only_changed, "print only the pages that changed");
  CLI::App* finding = command("jobs", "the archives in a folder, those with all WORDs", jobs);
  finding->add_option("WORD", call.words, "of the client, title, number or date");
  finding->add_option("--out", call.out, "the folder of the archives");
  CLI::App* starting = command("new", "a project file to start from", start_new);
  starting->add_option("NAME", call.file, "the new file; .toml is added")->required();
  starting->add_option("--from", call.starter, "a starter: case, ring, frame, stand, ...");
  command("explain", "the fields of a table of the project file, or of a style", explain)
      ->add_option("WORD", call.word, "case, case.shelf, stock, job, style, ...");
  command("schema", "the JSON Schema of project files, for editors, or of the report", schema)
      ->add_option("OF", call.word, "project or report")
      ->check(CLI::IsMember({"project", "report"}));
  app.set_version_flag("--version", SPLAYBOOK_VERSION);
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
  const int status = act(call);
  if (!std::cout.flush()) throw std::runtime_error("can't write to standard output");
  return status;
} catch (const std::exception& error) {
  std::fputs((std::string(error.what()) + '\n').c_str(), stderr);
  return splay::no_file;
}
