#include <stdlib.h>  // NOLINT(modernize-deprecated-headers): setenv is POSIX
#include <time.h>    // NOLINT(modernize-deprecated-headers): tzset is POSIX

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <clocale>
#include <cstdio>
#include <limits>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <stdexcept>

#include "writers/tools.h"
#include "writers/writers.h"

using namespace splay;
using namespace splay::ink;
using namespace splay::writer_tests;
using writers::pdf;

namespace {

std::multiset<std::string> words_of(const std::string& text) {
  std::istringstream stream(text);
  std::multiset<std::string> words;
  for (std::string word; stream >> word;) words.insert(word);
  return words;
}

Packet packet_of(Page page) {
  Packet packet;
  packet.pages.push_back(std::move(page));
  return packet;
}

Packet packet_of(Item item) { return packet_of(page_of("Page", "1", {std::move(item)})); }

nlohmann::json qpdf_json(const Folder& folder, const Packet& packet) {
  const std::string path = folder.save("it.pdf", pdf(packet, FontSet()));
  const Ran ran = run("qpdf --json " + path);
  REQUIRE(ran.status == 0);
  return nlohmann::json::parse(ran.output);
}

}  // namespace

TEST_CASE("qpdf finds nothing wrong with a PDF, and no warning either") {
  const Folder folder;
  const std::string path = folder.save("it.pdf", pdf(sample_packet(), FontSet()));
  const Ran ran = run("qpdf --check " + path);
  INFO(ran.output);
  CHECK(ran.status == 0);
  CHECK(ran.output.find("WARNING") == std::string::npos);
  CHECK(ran.output.find("No syntax or stream encoding errors found") != std::string::npos);
  CHECK(ran.output.find("PDF Version: 1.6") != std::string::npos);
}

TEST_CASE("every printed word comes back out of the PDF") {
  const Folder folder;
  const std::string path = folder.save("it.pdf", pdf(sample_packet(), FontSet()));
  const Ran ran = run("pdftotext -enc UTF-8 -raw " + path + " -");
  REQUIRE(ran.status == 0);
  const std::multiset<std::string> found = words_of(ran.output);
  for (const std::string& word : sample_words()) {
    INFO(word << " in\n" << ran.output);
    CHECK(found.count(word) >= 1);
  }
}

TEST_CASE("two characters with one glyph are still two characters") {
  const Folder folder;
  const Text text{
      .at = {30, 100}, .utf8 = "\u03A9 \u2126 \u00B5 \u03BC \u0394 \u2206", .height = 5};
  const std::string path = folder.save("it.pdf", pdf(packet_of(text), FontSet()));
  const Ran ran = run("pdftotext -enc UTF-8 -raw " + path + " -");
  const std::multiset<std::string> found = words_of(ran.output);
  for (const char* word : {"\u03A9", "\u2126", "\u00B5", "\u03BC", "\u0394", "\u2206"})
    CHECK(found.count(word) == 1);
}

TEST_CASE("the fonts are embedded as subsets with a map to Unicode") {
  const Folder folder;
  const std::string path = folder.save("it.pdf", pdf(sample_packet(), FontSet()));
  const Ran ran = run("pdffonts " + path);
  std::istringstream rows(ran.output);
  int count = 0;
  for (std::string row; std::getline(rows, row);) {
    if (row.find('+') == std::string::npos) continue;
    ++count;
    INFO(row);
    CHECK(row.find("CID TrueType") != std::string::npos);
    CHECK(row.find("yes yes yes") != std::string::npos);
  }
  CHECK(count == 4);
}

TEST_CASE("a page without text needs no font") {
  const Folder folder;
  const std::string path = folder.save(
      "it.pdf", pdf(packet_of(Stroke{Path{}.move({0, 0}).line({50, 50}), {}}), ink::FontSet{}));
  CHECK(run("qpdf --check " + path).status == 0);
  CHECK(run("pdffonts " + path).output.find('+') == std::string::npos);
}

TEST_CASE("the same packet makes the same bytes under another locale and time zone") {
  const FontSet fonts;
  const std::string before = pdf(sample_packet(), fonts);
  CHECK(pdf(sample_packet(), FontSet()) == before);

  const Folder folder;
  REQUIRE(run("localedef -i de_DE -f UTF-8 " + folder.path() + "/de_DE.UTF-8").status == 0);
  setenv("LOCPATH", folder.path().c_str(), 1);
  setenv("TZ", "Pacific/Chatham", 1);
  tzset();
  REQUIRE(std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr);
  std::array<char, 16> comma{};
  std::snprintf(comma.data(), comma.size(), "%.1f", 0.5);
  const std::string after = pdf(sample_packet(), FontSet());
  std::setlocale(LC_ALL, "C");
  unsetenv("LOCPATH");
  unsetenv("TZ");
  tzset();
  CHECK(std::string(comma.data()) == "0,5");  // the locale did change
  CHECK(after == before);
}

TEST_CASE("the identity makes the file's ID and nothing else makes it differ") {
  Packet packet = sample_packet();
  const FontSet fonts;
  const std::string before = pdf(packet, fonts);
  packet.identity = "014 C";
  const std::string after = pdf(packet, fonts);
  REQUIRE(before.size() == after.size());
  const std::size_t id = before.find("/ID [");
  REQUIRE(id != std::string::npos);
  CHECK(before.substr(0, id) == after.substr(0, id));
  CHECK(before != after);
}

TEST_CASE("bookmarks are nested by the level of the pages") {
  const Folder folder;
  const nlohmann::json json = qpdf_json(folder, sample_packet());
  const nlohmann::json& top = json["outlines"];
  REQUIRE(top.size() == 1);
  CHECK(top[0]["title"] == "Cover ∠ and index");
  CHECK(top[0]["destpageposfrom1"] == 1);
  REQUIRE(top[0]["kids"].size() == 2);
  CHECK(top[0]["kids"][0]["title"] == "Elevations");
  CHECK(top[0]["kids"][0]["kids"][0]["title"] == "Part B-L");
  CHECK(top[0]["kids"][0]["kids"][0]["destpageposfrom1"] == 3);
  CHECK(top[0]["kids"][1]["title"] == "2");  // no title: its label
}

TEST_CASE("every page has its own label") {
  const Folder folder;
  const nlohmann::json json = qpdf_json(folder, sample_packet());
  const std::vector<std::string> labels = {"i", "1", "P-3", "2"};
  REQUIRE(json["pagelabels"].size() == labels.size());
  for (std::size_t i = 0; i < labels.size(); ++i) {
    CHECK(json["pagelabels"][i]["index"] == i);
    CHECK(json["pagelabels"][i]["label"]["/P"] == "u:" + labels[i]);
  }
}

TEST_CASE("pages are true to size and the print dialog is asked not to scale") {
  const Folder folder;
  const std::string path = folder.save("it.pdf", pdf(sample_packet(), FontSet()));
  const std::string info = run("pdfinfo -l 3 -rawdates " + path).output;
  INFO(info);
  CHECK(info.find("Page    1 size:  595.276 x 841.89 pts (A4)") != std::string::npos);
  CHECK(info.find("Page    3 size:  1190.55 x 841.89 pts (A3)") != std::string::npos);
  CHECK(info.find("Title:           Canted tea cabinet ⌀") != std::string::npos);
  CHECK(info.find("CreationDate:    D:20260302000000Z") != std::string::npos);
  CHECK(info.find("ModDate:         D:20260302000000Z") != std::string::npos);
  const std::string catalog = run("qpdf --show-object=1 " + path).output;
  CHECK(catalog.find("/PrintScaling /None") != std::string::npos);
  CHECK(catalog.find("/Duplex /Simplex") != std::string::npos);
}

TEST_CASE("links lead to named places on the right pages") {
  const Folder folder;
  const std::string path = folder.save("it.pdf", pdf(sample_packet(), FontSet()));
  const std::string places = run("pdfinfo -dests " + path).output;
  INFO(places);
  CHECK(places.find("   1 [ XYZ   57  794 null      ] \"cover\"") != std::string::npos);
  CHECK(places.find("   3 [ XYZ   57  709 null      ] \"part B-L\"") != std::string::npos);
  const std::string plain = run("qpdf --qdf --object-streams=disable " + path + " - ").output;
  CHECK(plain.find("/Dest (part B-L)") != std::string::npos);
  CHECK(plain.find("/Subtype /Link") != std::string::npos);
}

TEST_CASE("nothing is drawn that can't be drawn well") {
  const FontSet fonts;
  constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
  const auto refused = [&](const Packet& packet) {
    CHECK_THROWS_AS(pdf(packet, fonts), std::invalid_argument);
  };
  refused(packet_of(Text{.at = {10, 10}, .utf8 = "漢"}));
  refused(packet_of(Text{.at = {10, 10}, .utf8 = "a\x01"}));
  refused(packet_of(Text{.at = {10, 10}, .utf8 = "\xFF"}));
  refused(packet_of(Text{.at = {10, 10}, .utf8 = "a", .turn = not_a_number}));
  refused(packet_of(Stroke{Path{}.move({0, 0}).line({not_a_number, 0}), {}}));
  refused(packet_of(Stroke{Path{}.line({1, 0}), {}}));
  refused(packet_of(Group{"view", {Fill{Path{}.move({1e300, 0}), 0}}}));
  refused(packet_of(Link{{{0, 0}, {5, 5}}, "nowhere"}));
  refused(packet_of(page_of("Page", "1", {Anchor{"a", {}}, Anchor{"a", {}}})));
  Page sizeless;
  sizeless.paper.width = 0;
  refused(packet_of(sizeless));
  refused(packet_of(page_of("\xFF", "1", {})));
  refused(Packet{});
  Packet dateless = sample_packet();
  dateless.month = 13;
  refused(dateless);
}

TEST_CASE("names and titles of any letters survive") {
  const Folder folder;
  const Page page =
      page_of("漢字 🪚", "β-1",
              {Anchor{"パーツ (1)", {20, 20}}, Link{{{20, 20}, {40, 40}}, "パーツ (1)"}});
  const nlohmann::json json = qpdf_json(folder, packet_of(page));
  CHECK(json["outlines"][0]["title"] == "漢字 🪚");
  CHECK(json["pagelabels"][0]["label"]["/P"] == "u:β-1");
  CHECK(run("pdfinfo -dests " + folder.path() + "/it.pdf").output.find("   1 [") !=
        std::string::npos);
}
