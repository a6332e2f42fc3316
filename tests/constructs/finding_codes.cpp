// Every code of a fault or finding has a test that provokes it: what the other tests don't, stands
// here, as a starter with one thing changed for the worse; and a search of the sources for codes
// that no test names.
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "fabrication/as_built.h"
#include "fabrication/steps_checks.h"
#include "support/piece.h"

using namespace splay;

namespace {

std::string file_text(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE(file.good());
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

struct Change {
  std::string from, to;
};

struct Spoilt {
  std::string code;
  std::string starter;
  std::vector<Change> changes;
  std::string more;  // tables at the end of the file
};

std::string text_of(const Spoilt& spoilt) {
  std::string text = file_text(std::filesystem::path(SPLAYBOOK_SOURCE_DIR) / "projects/starters" /
                               (spoilt.starter + ".toml"));
  for (const Change& change : spoilt.changes) {
    CAPTURE(change.from);
    const std::size_t at = text.find(change.from);
    REQUIRE(at != std::string::npos);
    text.replace(at, change.from.size(), change.to);
  }
  return text + "\n" + spoilt.more;
}

std::vector<Spoilt> faults() {
  const std::string outline =
      "bottom = \"width\", height = \"height\", lean_in = [\"lean\", \"lean\"]";
  return {
      {"impossible-outline", "case", {{"lean = \"3 deg\"", "lean = \"40 deg\""}}, ""},
      {"impossible-outline",
       "case",
       {{outline, "corners = [[0, 0], [800, 600], [800, 0], [0, 600]]"}},
       ""},
      {"mixed-outline",
       "case",
       {{outline, "bottom = 800, corners = [[0, 0], [8, 0], [8, 6]]"}},
       ""},
      {"no-length", "stick", {{"to = [\"long\", 0, 0]", "to = [0, 0, 0]"}}, ""},
  };
}

std::vector<Spoilt> pieces() {
  const std::string frame =
      "[stock.oak]\nkind = \"board\"\nthickness = 20\n"
      "[case.body.frame]\nstock = \"oak\"\nwidth = 40\n";
  return {
      {"bar-does-not-fit",
       "case",
       {},
       frame + "[case.body.frame.rail.high]\nat = 900\nwidth = 40\n"},
      {"blocks-beside-housing",
       "case",
       {},
       "[stock.oak]\nkind = \"board\"\nthickness = 20\n[case.body.partition.mid]\ncentre_at = 400\n"
       "between = [\"bottom\", \"middle\"]\nlower = { housing = 6 }\nblocks = { stock = \"oak\", "
       "at = \"lower\", along_host = 20, along_partition = 20 }\n"},
      {"clothing-storage",
       "door",
       {{"height = 600", "height = 900"}, {"depth = 300", "depth = 500"}},
       ""},
      {"no-bottom", "drawer", {{"bottom = \"thin\"", "bottom = \"thin\", into = 11"}}, ""},
      {"no-front", "drawer", {{"gap = 3", "gap = 80"}}, ""},
      {"no-height", "table", {{"height = \"high\"", "height = 24.5"}}, ""},
      {"no-lean",
       "stand",
       {{"outline = { bottom = \"width\", height = 300 }",
         "outline = { corners = [[0, 0], [700, 0], [350, 500]], names = [\"floor\", \"one\", "
         "\"other\"] }"}},
       ""},
      {"no-outline",
       "top",
       {{"outline = { front = \"long\", deep = \"deep\" }",
         "outline = { corners = [[0, 0], [800, 0], [800, 400], [420, 400], [420, 100], [400, 100], "
         "[400, 400], [0, 400]] }\noverhang = { all = 50 }"}},
       ""},
      {"nothing-on-it",
       "stand",
       {{"under = \"chest\"", "under = \"late\""}},
       "[case.late]\noutline = { bottom = 700, height = 300 }\ndepth = 350\nstock = \"panel\"\n"
       "corners = \"mitre\"\n"},
      {"nothing-to-close",
       "door",
       {{"of = \"body\"", "of = \"late\""}},
       "[case.late]\noutline = { bottom = 400, height = 500 }\ndepth = 250\nstock = \"panel\"\n"
       "corners = \"mitre\"\n"},
      {"panel-stands-out",
       "frame",
       {{"corners = \"mortise and tenon\"", "corners = \"mitre\""},
        {"panel = { stock = \"panel\", fit = \"groove\", into = 9, clearance = 1 }",
         "rebate = { width = 9, depth = 4 }\npanel = { stock = \"panel\", fit = \"rebate\", "
         "clearance = 1 }"}},
       ""},
      {"split-still-too-long",
       "case",
       {{"tilt = \"47 deg\"", "tilt = \"45 deg\"\nlongest_on_end = 250\nbeyond = \"split\""},
        {"lean = \"3 deg\"", "lean = \"12 deg\""}},
       ""},
      {"tips-easily", "case", {{"depth = 300", "depth = 80"}}, ""},
  };
}

std::set<std::string> found(const std::vector<Finding>& findings) {
  std::set<std::string> codes;
  for (const Finding& each : findings) codes.insert(each.code);
  return codes;
}

std::string listed(const std::set<std::string>& codes) {
  std::string text;
  for (const std::string& code : codes) text += code + " ";
  return text;
}

// Words with a hyphen in the folders that make findings: codes, unless they name something else.
std::set<std::string> codes_of_the_sources() {
  const std::set<std::string> others{"left-top"};
  const std::regex word(R"re("([a-z]+(-[a-z]+)+)")re");
  std::set<std::string> codes;
  for (const char* folder : {"parts", "joinery", "constructs", "fabrication"}) {
    const std::filesystem::path path = std::filesystem::path(SPLAYBOOK_SOURCE_DIR) / "src" / folder;
    for (const auto& entry : std::filesystem::directory_iterator(path)) {
      if (entry.path().extension() != ".cpp") continue;
      const std::string text = file_text(entry.path());
      for (std::sregex_iterator it(text.begin(), text.end(), word), end; it != end; ++it)
        if (!others.contains((*it)[1])) codes.insert((*it)[1]);
    }
  }
  return codes;
}

}  // namespace

TEST_CASE("a fault of each code, provoked") {
  for (const Spoilt& spoilt : faults()) {
    CAPTURE(spoilt.code);
    const reading::ProjectReading result =
        reading::read_project(text_of(spoilt), "test.toml", constructs::registry());
    std::set<std::string> codes;
    for (const Diagnostic& each : result.diagnostics) codes.insert(each.code);
    CAPTURE(listed(codes));
    CHECK(codes.contains(spoilt.code));
  }
}

TEST_CASE("a finding of each code, provoked") {
  for (const Spoilt& spoilt : pieces()) {
    CAPTURE(spoilt.code);
    const test::Built built = test::build(text_of(spoilt));
    CAPTURE(listed(found(built.plan.findings)));
    CHECK(built.found(spoilt.code));
  }
}

TEST_CASE("a record of a part that isn't there is a fault") {
  const test::Built built = test::build(text_of({"", "case", {}, ""}));
  model::AsBuilt record;
  record.parts.add("Z9");
  const std::vector<Diagnostic> said = fabrication::as_built_faults(built.plan, record);
  REQUIRE(said.size() == 1);
  CHECK(said.front().code == "unknown-mark");
}

// No file of an author should ever lead here, so the plan is doctored.
TEST_CASE("a step that was not proven stops the print") {
  test::Built built = test::build(text_of({"", "case", {}, ""}));
  REQUIRE(built.stops().empty());
  REQUIRE_FALSE(built.plan.steps.empty());
  built.plan.steps.front().proven = false;
  built.plan.steps.front().unproven_why = "doctored";
  fabrication::check_proofs(built.plan);
  CHECK(built.found("unproven-steps"));
  CHECK(built.plan.stopped());
}

TEST_CASE("no code is without a test that names it") {
  std::string tests;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(
           std::filesystem::path(SPLAYBOOK_SOURCE_DIR) / "tests"))
    if (entry.path().extension() == ".cpp" || entry.path().extension() == ".h")
      tests += file_text(entry.path());
  const std::set<std::string> codes = codes_of_the_sources();
  CHECK(codes.size() > 100);
  for (const std::string& code : codes)
    if (tests.find('"' + code + '"') == std::string::npos) FAIL_CHECK("no test names " << code);
}
