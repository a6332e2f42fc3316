#include "writers/tools.h"

#include <stdlib.h>  // NOLINT(modernize-deprecated-headers): mkdtemp is POSIX
#include <sys/wait.h>

#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <numbers>
#include <sstream>

namespace splay::writer_tests {

using namespace splay::ink;

Folder::Folder() : path_((std::filesystem::temp_directory_path() / "writers-XXXXXX").string()) {
  if (mkdtemp(path_.data()) == nullptr) throw std::runtime_error("no folder for the test");
}

Folder::~Folder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::string Folder::save(const std::string& name, const std::string& bytes) const {
  const std::string path = path_ + "/" + name;
  std::ofstream file(path, std::ios::binary);
  file << bytes;
  file.close();
  REQUIRE(file);
  return path;
}

std::string slurp(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE(file);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

Ran run(const std::string& command) {
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  Ran ran;
  std::array<char, 4096> part{};
  for (std::size_t got = 0; (got = fread(part.data(), 1, part.size(), pipe)) > 0;)
    ran.output.append(part.data(), got);
  const int status = pclose(pipe);
  ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  INFO(command << "\n" << ran.output);
  REQUIRE(ran.status != 127);  // not installed
  return ran;
}

namespace {

const std::vector<std::string>& lines() {
  static const std::vector<std::string> texts = {
      "Lean 37.50° ∠12 ⌀8 ▲ △ □", "← datum → 12″ 3′ × 4 – 5 ± 1⁄32", "½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ 23 1/4",
      "naïve façade Ǖ œuvre (brackets) back\\slash \"quoted\" <angle> & 100%",
      "office ffl waffle AVAVA Tomato"};
  return texts;
}

Page first_page() {
  Page page = page_of("Cover ∠ and index", "i", {});
  double y = 270;
  for (const std::string& line : lines())
    page.items.push_back(Text{.at = {25, y -= 10}, .utf8 = line, .height = 3.5});
  page.items.push_back(Anchor{"cover", {20, 280}});
  page.items.push_back(Link{{{25, 258}, {80, 266}}, "part B-L"});
  return page;
}

Page second_page() {
  Page page = page_of("Elevations", "1", {});
  page.level = 1;
  Group view{"view", {}};
  double y = 150;
  for (const Dash dash :
       {Dash::continuous, Dash::dashed, Dash::chain, Dash::double_chain, Dash::dotted})
    view.items.push_back(Stroke{Path{}.move({30, y += 6}).line({190, y}), {0.5, dash}});
  view.items.push_back(Stroke{Path{}.arc({100, 80}, 30, 0, 2 * std::numbers::pi).close(), {0.7}});
  view.items.push_back(Fill{Path{}.rect({{30, 30}, {60, 60}}).rect({{40, 40}, {50, 50}}), 0.6});
  view.items.push_back(Stroke{Path{}.polygon({{140, 40}, {180, 40}, {160, 70}}), {1.0, {}, 0.3}});
  page.items.push_back(view);
  page.items.push_back(ink::Text{.at = {30, 220},
                                 .utf8 = "Upright",
                                 .height = 5,
                                 .turn = std::numbers::pi / 2,
                                 .face = Face::bold});
  page.items.push_back(ink::Text{.at = {110, 220},
                                 .utf8 = "Slanted",
                                 .height = 5,
                                 .turn = 0.5,
                                 .align = Align::centre,
                                 .face = Face::italic,
                                 .grey = 0.3});
  return page;
}

Page third_page() {
  Page page = page_of("Part B-L", "P-3", {});
  page.level = 3;
  page.paper.width = 420;
  page.items.push_back(
      Text{.at = {400, 100}, .utf8 = "Rightmost", .height = 7, .align = Align::right});
  page.items.push_back(Anchor{"part B-L", {20, 250}});
  page.items.push_back(Link{{{300, 95}, {400, 110}}, "cover"});
  return page;
}

}  // namespace

Page page_of(const std::string& title, const std::string& label, std::vector<Item> items) {
  Page page;
  page.title = title;
  page.label = label;
  page.items = std::move(items);
  return page;
}

Packet sample_packet() {
  Packet packet;
  packet.title = "Canted tea cabinet ⌀";
  packet.subject = "Shop binder";
  packet.author = "Harbour Lane Workshop (invented)";
  packet.identity = "014 B";
  packet.year = 2026;
  packet.month = 3;
  packet.day = 2;
  packet.pages = {first_page(), second_page(), third_page()};
  Page again = second_page();
  again.title.clear();
  again.label.assign(1, '2');
  packet.pages.push_back(again);
  return packet;
}

std::vector<std::string> sample_words() {
  std::vector<std::string> words = {"Upright", "Slanted", "Rightmost"};
  for (const std::string& line : lines()) {
    std::istringstream stream(line);
    for (std::string word; stream >> word;) words.push_back(word);
  }
  return words;
}

}  // namespace splay::writer_tests
