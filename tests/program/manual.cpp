// The manual page and the completion name what the program's own help names, and nothing else.
#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

#include "run.h"

using namespace splay;

namespace {

using Words = std::set<std::string>;

std::string manual(const std::string& name) {
  std::ifstream in(std::string(SPLAYBOOK_SOURCE_DIR) + "/src/manual/" + name);
  REQUIRE(in.good());
  return {std::istreambuf_iterator<char>(in), {}};
}

Words all(const std::string& text, const std::string& pattern) {
  Words found;
  const std::regex regex(pattern);
  for (std::sregex_iterator i(text.begin(), text.end(), regex), end; i != end; ++i)
    found.insert((*i)[1]);
  return found;
}

// Commands stand in the general help after "Subcommands:", one a line.
Words commands() {
  const std::string help = test::run(test::program() + " --help").output;
  const std::size_t from = help.find("Subcommands:");
  REQUIRE(from != std::string::npos);
  return all(help.substr(from), "\n  ([a-z]+) ");
}

Words options_of(const std::string& command) {
  return all(test::run(test::program() + " " + command + " --help").output, "(--[a-z-]+)");
}

// What bash offers for the words typed so far, the last of them unfinished.
Words offered(const std::string& typed) {
  const test::Folder folder;
  std::ofstream script(folder / "ask");
  script << "source " << SPLAYBOOK_SOURCE_DIR << "/src/manual/splaybook.bash\n"
         << "COMP_WORDS=(splaybook " << typed << ")\nCOMP_CWORD=$((${#COMP_WORDS[@]} - 1))\n"
         << "_splaybook\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n";
  script.close();
  return all(test::run("bash " + (folder / "ask")).output, "([^\n]+)\n");
}

}  // namespace

TEST_CASE("the manual page describes every command and option there is") {
  std::string page = manual("splaybook.1.in");
  page = std::regex_replace(page, std::regex("\\\\-"), "-");
  CHECK(all(page, "\n\\.BI \"([a-z]+) \"") == commands());
  Words options = options_of("");
  for (const std::string& command : commands()) options.merge(options_of(command));
  CHECK(all(page, "\n\\.BI? (--[a-z-]+)") == options);
}

TEST_CASE("completion offers every command and its options") {
  Words first = commands();
  first.merge(Words{"--help", "--version"});
  CHECK(offered("''") == first);
  for (const std::string& command : commands()) {
    INFO(command);
    CHECK(offered(command + " --") == options_of(command));
  }
  const std::string kinds = test::run(test::program() + " print --help").output;
  CHECK(offered("print --as ''") == all(kinds, "(?:commas: |; )([a-z]+):"));
}

TEST_CASE("the version is said") {
  const test::Run run = test::run(test::program() + " --version");
  CHECK(run.status == 0);
  CHECK(std::regex_match(run.output, std::regex("[0-9]+\\.[0-9]+\\.[0-9]+\n")));
}
