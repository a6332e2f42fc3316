// The arrows between the folders of src: every #include and library header is checked against one
// table, so that an arrow the architecture forbids fails here.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>

namespace {

namespace fs = std::filesystem;
using Names = std::set<std::string>;

const std::map<std::string, Names> may_include = {
    {"base", {"base"}},
    {"geometry", {"base", "geometry"}},
    {"model", {"base", "geometry", "model"}},
    {"reading", {"base", "geometry", "model", "reading"}},
    {"parts", {"base", "geometry", "model", "parts"}},
    {"joinery", {"base", "geometry", "model", "parts", "joinery"}},
    {"constructs", {"base", "geometry", "model", "parts", "joinery", "constructs"}},
    {"fabrication", {"base", "geometry", "model", "parts", "fabrication"}},
    {"ink", {"base", "geometry", "ink"}},
    {"drafting", {"base", "geometry", "ink", "drafting"}},
    {"sheets", {"base", "geometry", "model", "parts", "fabrication", "ink", "drafting", "sheets"}},
    {"writers", {"base", "geometry", "ink", "fabrication", "parts", "model", "writers"}},
};

// Outside libraries by the first word of their headers, and the folders that may name them.
const std::map<std::string, Names> library_of = {
    {"toml++", {"reading"}},   {"muParser", {"reading"}},
    {"ft2build", {"ink"}},     {"fontconfig", {"ink"}},
    {"hpdf", {"writers"}},     {"cairo", {"writers"}},
    {"tinyxml2", {"writers"}}, {"zlib", {"writers"}},
    {"nlohmann", {"writers"}}, {"CLI", {}},
    {"unistd", {"writers"}},   {"nettle", {"writers"}},
    {"zip", {"writers"}},
};

// Only these may use packet and plan together with their bytes.
const Names writers_that_know_the_plan = {"report.cpp",         "report.h",
                                          "report_glue_up.h",   "report_hold.cpp",
                                          "report_hold.h",      "report_steps.cpp",
                                          "report_steps.h",     "report_stock.cpp",
                                          "report_stock.h",     "formats.h",
                                          "part_outline.h",     "project_schema.h",
                                          "project_schema.cpp", "zip.h",
                                          "as_built_csv.cpp",   "cut_list_csv.cpp"};

struct Include {
  std::string file, folder, header;
  bool own;
};

std::vector<Include> includes() {
  std::vector<Include> all;
  const fs::path src = fs::path(SPLAYBOOK_SOURCE_DIR) / "src";
  const std::regex line_form(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])");
  for (const auto& entry : fs::recursive_directory_iterator(src)) {
    if (!entry.is_regular_file() || entry.path().parent_path() == src) continue;
    std::ifstream in(entry.path());
    for (std::string line; std::getline(in, line);) {
      std::smatch match;
      if (std::regex_search(line, match, line_form))
        all.push_back({entry.path().filename().string(),
                       entry.path().parent_path().filename().string(), match[2], match[1] == "\""});
    }
  }
  return all;
}

}  // namespace

TEST_CASE("every include follows the arrows of the architecture") {
  const std::vector<Include> all = includes();
  REQUIRE(all.size() > 100);
  for (const Include& include : all) {
    INFO(include.folder << "/" << include.file << " includes " << include.header);
    REQUIRE(may_include.count(include.folder) == 1);
    const std::string head = include.header.substr(0, include.header.find_first_of("/."));
    if (include.own) {
      CHECK(may_include.at(include.folder).count(head) == 1);
      if (include.folder == "writers" &&
          (head == "fabrication" || head == "parts" || head == "model"))
        CHECK(writers_that_know_the_plan.count(include.file) == 1);
    } else if (library_of.count(head) == 1) {
      CHECK(library_of.at(head).count(include.folder) == 1);
    }
  }
}

TEST_CASE("the program's own pipeline stays on one screen") {
  std::ifstream in(fs::path(SPLAYBOOK_SOURCE_DIR) / "src" / "pipeline.cpp");
  int lines = 0;
  for (std::string line; std::getline(in, line);) ++lines;
  CHECK(lines > 10);
  CHECK(lines < 60);
}
