// splaybook: from one text file that describes a piece of furniture to the binder it is built from.
#include <CLI/CLI.hpp>

#include "commands.h"

namespace {

using namespace splay;

using Act = int (*)(const Call&);

// Options of every command that plans a piece.
CLI::App* on_file(CLI::App* sub, Call& call) {
  sub->add_option("FILE", call.file, "the project file")->required();
  sub->add_option("--paper", call.paper, "paper, over what the file says")
      ->check(CLI::IsMember({"A4", "Letter", "A3", "Tabloid"}));
  sub->add_option("--effort", call.effort,
                  "steps of search for better layouts of sheets and boards; 0: the first good one")
      ->check(CLI::Range(0, 10000000));
  sub->add_option("--style", call.style, "a style of the styles folder, or its path");
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
  printing->add_option("--for", call.whom, "whom it is for: the shop's binder or the client's set")
      ->check(CLI::IsMember({"shop", "client"}));
  printing->add_option("--out", call.out, "the folder to write to");
  on_file(command("report", "everything computed, as JSON on standard output", report), call);
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
  return splay::no_file;
}
