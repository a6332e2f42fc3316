// The client's set as a person asks for it, and what an approval does to the shop's pages.
#include <catch2/catch.hpp>
#include <fstream>

#include "program/run.h"
#include "writers/files.h"

using namespace splay;

TEST_CASE("print --for client writes the client's set and nothing else") {
  test::Folder folder;
  const test::Run run =
      test::run(test::program() + " print " + test::project("canted-tea-cabinet") +
                " --for client --out " + (folder / "out"));
  CHECK(run.status == 0);
  CHECK(run.output.find("drawing hand failed") == std::string::npos);
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder / "out")) {
    ++files;
    CHECK(entry.path().filename() == "canted-tea-cabinet-B-client.pdf");
  }
  CHECK(files == 1);
  CHECK(test::run(test::program() + " print x.toml --for nobody").status == 2);
}

TEST_CASE("an approval without a check figure is refused with its place") {
  test::Folder folder;
  std::ofstream(folder / "x.toml")
      << writers::read_file(test::project("canted-tea-cabinet"), 1u << 20)
      << "\n[approval]\nby = \"A. Client\"\ndate = 2026-03-04\nsha256 = \"abc\"\n";
  const test::Run run = test::run(test::program() + " check " + (folder / "x.toml"));
  CHECK(run.status == 1);
  CHECK(run.output.find("wrong-check-figure") != std::string::npos);
}
