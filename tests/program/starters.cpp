// new: a starter for each thing that can be asked for, and each of them sound.
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "program/run.h"
#include "writers/files.h"

using namespace splay;

namespace {

// The words after "stock" in the schema are the things to build.
std::vector<std::string> constructs() {
  const auto schema =
      nlohmann::ordered_json::parse(test::run(test::program() + " schema project").output);
  std::vector<std::string> words;
  bool after = false;
  for (const auto& [word, table] : schema["properties"].items()) {
    if (after) words.push_back(word);
    after = after || word == "stock";
  }
  return words;
}

}  // namespace

TEST_CASE("every construct has a starter that checks without a stop or a caution") {
  const std::vector<std::string> words = constructs();
  REQUIRE(words.size() >= 11);
  for (const std::string& word : words) {
    test::Folder folder;
    const std::string file = folder / ("my-" + word + ".toml");
    const test::Run made =
        test::run(test::program() + " new " + (folder / ("my-" + word)) + " --from " + word);
    INFO(word << ": " << made.output);
    REQUIRE(made.status == 0);
    const std::string text = writers::read_file(file, 1u << 20);
    CHECK(text.find("\n[" + word + ".") != std::string::npos);
    CHECK(text.find("title = \"My " + word + "\"") != std::string::npos);
    const test::Run check = test::run(test::program() + " check " + file);
    INFO(check.output);
    CHECK(check.status == 0);
    CHECK(check.output.find("caution ") == std::string::npos);
    const test::Run print =
        test::run(test::program() + " print " + file + " --out " + (folder / "out"));
    INFO(print.output);
    CHECK(print.status == 0);
    CHECK(print.output.find("drawing hand") == std::string::npos);
  }
}

TEST_CASE("new never writes over a file and knows its starters") {
  test::Folder folder;
  std::ofstream(folder / "mine.toml") << "mine";
  CHECK(test::run(test::program() + " new " + (folder / "mine")).status == 3);
  CHECK(writers::read_file(folder / "mine.toml", 100) == "mine");
  const test::Run unknown = test::run(test::program() + " new " + (folder / "x") + " --from sofa");
  CHECK(unknown.status == 2);
  CHECK(unknown.output.find(" ring ") != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(folder / "x.toml"));
}
