// The tutorial is followed to the letter: files written as it says, commands run, answers compared.
//
// In projects/tutorial.md a block ```toml is added to the end of the file, ```toml replace N takes
// the place of its line N; a block ```console holds commands after "$ " and what they answer, where
// a line "..." stands for any lines, and "..." at the end of a line for the rest of it.
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>
#include <vector>

#include "run.h"

using namespace splay;

namespace {

using Lines = std::vector<std::string>;

Lines lines_of(const std::string& text) {
  Lines lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

bool alike(const std::string& said, const std::string& wanted) {
  constexpr std::string_view rest = "...";
  if (!wanted.ends_with(rest)) return said == wanted;
  return said.starts_with(wanted.substr(0, wanted.size() - rest.size()));
}

// Whether `said` from line i on is what `wanted` from line k on allows.
bool answers(const Lines& said, std::size_t i, const Lines& wanted, std::size_t k) {
  if (k == wanted.size()) return i == said.size();
  if (wanted[k] == "...") {
    for (std::size_t next = i; next <= said.size(); ++next)
      if (answers(said, next, wanted, k + 1)) return true;
    return false;
  }
  return i < said.size() && alike(said[i], wanted[k]) && answers(said, i + 1, wanted, k + 1);
}

class Follower {
 public:
  // One fenced block: what stands behind the fence, and its lines.
  void follow(const std::string& kind, const Lines& block) {
    if (kind == "toml") {
      if (!file_.empty()) file_.emplace_back();
      file_.insert(file_.end(), block.begin(), block.end());
    } else if (kind.starts_with("toml replace ")) {
      const std::size_t line = std::stoul(kind.substr(std::string("toml replace ").size()));
      REQUIRE(line <= file_.size());
      REQUIRE(block.size() == 1);
      file_[line - 1] = block[0];
    } else {
      REQUIRE(kind == "console");
      converse(block);
    }
  }
  int commands() const { return commands_; }
  const test::Folder& folder() const { return folder_; }

 private:
  void converse(const Lines& block) {
    std::ofstream out(folder_ / "keepsake-shelf.toml");
    for (const std::string& line : file_) out << line << '\n';
    out.close();
    for (std::size_t i = 0; i < block.size();) {
      const std::string prompt = "$ splaybook ";
      REQUIRE(block[i].starts_with(prompt));
      const std::string arguments = block[i++].substr(prompt.size());
      Lines wanted;
      while (i < block.size() && !block[i].starts_with("$ ")) wanted.push_back(block[i++]);
      const test::Run run =
          test::run("cd " + folder_.path() + " && " + test::program() + " " + arguments);
      INFO(arguments << "\n" << run.output);
      CHECK(answers(lines_of(run.output), 0, wanted, 0));
      ++commands_;
    }
  }

  test::Folder folder_;
  Lines file_;
  int commands_ = 0;
};

}  // namespace

TEST_CASE("the tutorial does what it says") {
  std::ifstream in(std::string(SPLAYBOOK_SOURCE_DIR) + "/projects/tutorial.md");
  REQUIRE(in.good());
  Follower follower;
  Lines block;
  std::string kind;
  bool inside = false;
  for (std::string line; std::getline(in, line);) {
    const bool fence = line.starts_with("```");
    if (fence && inside) follower.follow(kind, block);
    if (fence) {
      inside = !inside;
      kind = line.substr(3);
      block.clear();
    } else if (inside) {
      block.push_back(line);
    }
  }
  CHECK_FALSE(inside);
  CHECK(follower.commands() == 5);
  CHECK(std::filesystem::exists(follower.folder() / "binder/keepsake-shelf-A-shop.pdf"));
}
