// The commands as a person calls them: exit status, messages, files.
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "program/run.h"
#include "writers/files.h"

using namespace splay;

namespace {

const std::string cabinet = "canted-tea-cabinet";

std::string write(const test::Folder& folder, const std::string& name, const std::string& text) {
  std::ofstream(folder / name) << text;
  return folder / name;
}

}  // namespace

TEST_CASE("exit status: done, wrong project, wrong call, no file") {
  test::Folder folder;
  CHECK(test::run(test::program() + " check " + test::project(cabinet)).status == 0);
  CHECK(test::run(test::program() + " --help").status == 0);
  CHECK(test::run(test::program()).status == 2);
  CHECK(test::run(test::program() + " carve x.toml").status == 2);
  CHECK(test::run(test::program() + " print x.toml --paper A7").status == 2);
  CHECK(test::run(test::program() + " check " + (folder / "missing.toml")).status == 3);
  CHECK(test::run(test::program() + " check " + folder.path()).status == 3);
  CHECK(test::run(test::program() + " explain").status == 0);
  CHECK(test::run(test::program() + " explain case.shelf").status == 0);
  CHECK(test::run(test::program() + " explain nonsense").status == 2);
  const std::string wrong = write(folder, "wrong.toml", "[job]\ntitel = \"x\"\n");
  const test::Run run = test::run(test::program() + " check " + wrong);
  CHECK(run.status == 1);
  CHECK(run.output.find("wrong.toml:2:1") != std::string::npos);
  CHECK(run.output.find("did you mean \"title\"") != std::string::npos);
}

TEST_CASE("a finding of level stop withholds the binder: nothing is written, check says why") {
  test::Folder folder;
  const std::string text =
      "[job]\ntitle = \"x\"\ndate = 2026-01-01\nunits = \"mm\"\n[stock.p]\nkind = \"sheet\"\n"
      "material = \"ply\"\nthickness = 18\nsize = [1000, 500]\n[case.a]\noutline = { bottom = "
      "1500, "
      "height = 400 }\ndepth = 300\nstock = \"p\"\n";
  const std::string file = write(folder, "large.toml", text);
  const test::Run print =
      test::run(test::program() + " print " + file + " --out " + (folder / "out"));
  CHECK(print.status == 1);
  CHECK_FALSE(std::filesystem::exists(folder / "out"));
  CHECK(print.output.find("too-large-for-stock") != std::string::npos);
  const test::Run check = test::run(test::program() + " check " + file);
  CHECK(check.status == 1);
  CHECK(check.output.find("too-large-for-stock") != std::string::npos);
}

TEST_CASE("report has its keys, in millimetres and degrees") {
  const test::Run run = test::run(test::program() + " report " + test::project(cabinet));
  REQUIRE(run.status == 0);
  const auto report = nlohmann::json::parse(run.output);
  for (const char* key : {"job", "parts", "joints", "stock", "findings", "pages"})
    CHECK(report.contains(key));
  bool found = false;
  for (const auto& part : report["parts"]) {
    if (part["name"] != "bottom panel") continue;
    found = true;
    CHECK(part["length"].get<double>() == Approx(48 * 25.4));
    CHECK(part["hand"] == "none");
    CHECK(part["quantity"] == 1);
    CHECK(part["blank"]["length"].get<double>() > part["length"].get<double>());
  }
  CHECK(found);
  for (const auto& joint : report["joints"]) CHECK(joint["gap_mm"].get<double>() < 1e-6);
  for (const auto& finding : report["findings"]) {
    CHECK(finding["level"] != "stop");
    CHECK_FALSE(finding["remedy"].get<std::string>().empty());
  }
}
