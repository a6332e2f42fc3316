// The files beside the PDF, read back by readers that are not ours.
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "program/run.h"
#include "support/demos.h"
#include "writers/files.h"

using namespace splay;

namespace {

namespace fs = std::filesystem;

const std::string scripts = std::string(SPLAYBOOK_SOURCE_DIR) + "/tests/program/";

std::string revision_of(const std::string& demo) {
  const std::string text = writers::read_file(test::project(demo), 1u << 20);
  const std::size_t at = text.find("\nrevision = \"") + 13;
  return text.substr(at, text.find('"', at) - at);
}

}  // namespace

// RFC 4180 for the cut list; the DXF reference and SVG 1.1 through their readers.
TEST_CASE("cut list, part drawings and report of every demo agree for other readers") {
  for (const std::string& demo : test::demo_names()) {
    INFO(demo);
    test::Folder folder;
    const test::Run print = test::run(test::program() + " print " + test::project(demo) +
                                      " --as csv,svg,dxf,json --out " + folder.path());
    INFO(print.output);
    REQUIRE(print.status == 0);
    const test::Run read = test::run("/usr/bin/python3 " + scripts + "read_parts.py " +
                                     folder.path() + " " + demo + "-" + revision_of(demo));
    INFO(read.output);
    CHECK(read.status == 0);
    CHECK(read.output.find("parts agree") != std::string::npos);
    CHECK(read.output.find(" 0 by volume") == std::string::npos);
    CHECK(test::run("xmllint --noout " + folder.path() + "/*.svg").status == 0);
  }
}

TEST_CASE("a part's SVG drawn by another renderer has the part's true size") {
  test::Folder folder;
  REQUIRE(test::run(test::program() + " print " + test::project("splayed-stool") +
                    " --as svg --out " + folder.path())
              .status == 0);
  int drawn = 0;
  for (const auto& entry : fs::directory_iterator(folder.path())) {
    const std::string svg = writers::read_file(entry.path(), 1u << 24);
    const std::size_t at = svg.find("viewBox=\"0 0 ") + 13;
    const double width = std::stod(svg.substr(at));
    const std::string png = folder / "it.png";
    REQUIRE(test::run("rsvg-convert -d 254 -p 254 -o " + png + " '" + entry.path().string() + "'")
                .status == 0);
    // Ten dots to the millimetre; the width stands in the header (PNG specification, W3C).
    const std::string bytes = writers::read_file(png, 1u << 26);
    unsigned long dots = 0;
    for (std::size_t i = 16; i < 20; ++i) dots = dots * 256 + static_cast<unsigned char>(bytes[i]);
    CHECK(std::abs(static_cast<double>(dots) - 10 * width) <= 1);
    ++drawn;
    fs::remove(png);
  }
  CHECK(drawn >= 5);
}

TEST_CASE("pictures of every page and one of all") {
  test::Folder folder;
  REQUIRE(test::run(test::program() + " print " + test::project("splayed-stool") +
                    " --as pdf,png --out " + folder.path())
              .status == 0);
  int pages = 0, sheets = 0;
  for (const auto& entry : fs::directory_iterator(folder.path())) {
    const std::string name = entry.path().filename().string();
    pages += name.find("-page-") != std::string::npos;
    sheets += name.ends_with("-pages.png");
  }
  CHECK(sheets == 1);
  const test::Run info =
      test::run("pdfinfo " + (folder / "splayed-stool-A-shop.pdf") + " | grep '^Pages:'");
  CHECK(std::stoi(info.output.substr(6)) == pages);
}

TEST_CASE("every demo's report fits the published schema, and a spoilt one does not") {
  test::Folder folder;
  test::save(folder / "schema.json", test::run(test::program() + " schema report").output);
  std::string files;
  for (const std::string& demo : test::demo_names()) {
    const std::string file = folder / (demo + ".json");
    test::save(file, test::run(test::program() + " report " + test::project(demo)).output);
    files += " " + file;
  }
  const std::string validate =
      "/usr/bin/python3 " + scripts + "validate.py " + (folder / "schema.json");
  const test::Run sound = test::run(validate + files);
  INFO(sound.output);
  CHECK(sound.status == 0);
  auto report = nlohmann::json::parse(
      writers::read_file(folder / (test::demo_names().front() + ".json"), 1u << 26));
  const auto refused = [&](const nlohmann::json& spoilt) {
    test::save(folder / "spoilt.json", spoilt.dump());
    return test::run(validate + " " + (folder / "spoilt.json")).status == 1;
  };
  auto spoilt = report;
  spoilt["parts"][0].erase("length");
  CHECK(refused(spoilt));
  spoilt = report;
  spoilt["steps"][0]["tilt_deg"] = "12";
  CHECK(refused(spoilt));
  spoilt = report;
  spoilt["findings"].push_back({{"level", "shout"}});
  CHECK(refused(spoilt));
}

TEST_CASE("project files fit the editor's schema, and a slip of the pen does not") {
  test::Folder folder;
  test::save(folder / "schema.json", test::run(test::program() + " schema project").output);
  const std::string validate =
      "/usr/bin/python3 " + scripts + "validate.py " + (folder / "schema.json");
  std::string files;
  for (const std::string& demo : test::demo_names()) files += " " + test::project(demo);
  const test::Run sound = test::run(validate + files);
  INFO(sound.output);
  CHECK(sound.status == 0);
  const std::string text = writers::read_file(test::project("splayed-stool"), 1u << 20);
  for (const auto& [from, to] : std::map<std::string, std::string>{
           {"title =", "titel ="},
           {"kind = \"board\"", "kind = \"plank\""},
           {"paper = \"a4\"", "paper = 4"},
           {"splay = [\"8 deg\", \"6 deg\"]", "splay = { x = 1 }"}}) {
    std::string slip = text;
    REQUIRE(slip.find(from) != std::string::npos);
    slip.replace(slip.find(from), from.size(), to);
    test::save(folder / "slip.toml", slip);
    INFO(from);
    CHECK(test::run(validate + " " + (folder / "slip.toml")).status == 1);
  }
}
