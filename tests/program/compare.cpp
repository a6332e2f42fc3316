// compare: one size changed, and what it touches.
#include <catch2/catch.hpp>
#include <fstream>
#include <regex>

#include "program/run.h"
#include "writers/files.h"

using namespace splay;

namespace {

int pages_in(const std::string& pdf) {
  return std::stoi(test::run("pdfinfo '" + pdf + "' | grep '^Pages:'").output.substr(6));
}

// The demo bookcase and a changed copy of it.
struct Pair {
  test::Folder folder;
  std::string before = test::project("plain-bookcase"), now = folder / "plain-bookcase.toml";
  std::string out = folder / "out";
  std::string compare = test::program() + " compare " + before + " " + now + " --out " + out;
};

}  // namespace

// https://duckworksmw.com/the-hidden-cost-of-rushing-millwork-production/ : built from drawings
// that had changed. Every page carries the revision, what changed is listed, and only the parts it
// touches; the old pages are voided.
TEST_CASE("a size that changes is listed with the parts, steps and pages it touches, no others") {
  Pair pair;
  std::string text = writers::read_file(pair.before, 1u << 20);
  const std::regex revision("\nrevision = \"[^\"]*\"");
  text = std::regex_replace(text, revision, "\nrevision = \"Z\"");
  text = test::changed(text, "height = 300, bottom = \"thin\"", "height = 290, bottom = \"thin\"");
  test::save(pair.now, text);
  const test::Run run = test::run(pair.compare);
  INFO(run.output);
  REQUIRE(run.status == 0);
  CHECK(test::has(run, "job.revision: "));
  CHECK(test::has(run, "drawer.drawer.box.height: 300 -> 290"));
  CHECK(test::has(run, "width 300 to 290 mm"));
  for (const char* other : {"(books ", "(door", "(plinth "}) CHECK_FALSE(test::has(run, other));
  const std::string pdf = pair.out + "/plain-bookcase-Z-shop-changes.pdf";
  const int all = pages_in(pdf);
  const std::string words = test::run("pdftotext -layout '" + pdf + "' -").output;
  CHECK(words.find("What is wanted otherwise") != std::string::npos);
  for (int page = 1; page <= all; ++page) {
    const std::string number = std::to_string(page);
    const test::Run one =
        test::run("pdftotext -layout -f " + number + " -l " + number + " '" + pdf + "' -");
    INFO("page " << page);
    CHECK(std::regex_search(one.output, std::regex("\\bZ\\b")));
  }
  // Pages of the old revision, each of them void.
  std::string old_pdf;
  for (const auto& entry : std::filesystem::directory_iterator(pair.out))
    if (entry.path().string().ends_with("-void.pdf")) old_pdf = entry.path().string();
  const std::string old_words = test::run("pdftotext -layout '" + old_pdf + "' -").output;
  int voids = 0;
  for (std::size_t at = 0; (at = old_words.find("VOID", at)) != std::string::npos; ++at) ++voids;
  CHECK(voids == pages_in(old_pdf));
  // Only what changed.
  REQUIRE(test::run(pair.compare + " --only-changed").status == 0);
  CHECK(pages_in(pdf) < all);
  CHECK(test::run("qpdf --check '" + pdf + "'").status == 0);
}

TEST_CASE("the same file twice has no difference, and two states of one revision are told") {
  Pair pair;
  const std::string text = writers::read_file(pair.before, 1u << 20);
  test::save(pair.now, text);
  const test::Run same = test::run(pair.compare);
  CHECK(same.status == 0);
  CHECK(same.output == "No difference.\n");
  CHECK_FALSE(std::filesystem::exists(pair.out));
  test::save(pair.now, test::changed(text, "length = 250", "length = 240"));
  CHECK(test::has(test::run(pair.compare), "Both files say revision"));
}

TEST_CASE("a client is told what is wanted otherwise, not the shop's steps") {
  Pair pair;
  std::string text = writers::read_file(pair.before, 1u << 20);
  text = test::changed(text, "plinth = 100", "plinth = 110");
  text = test::changed(text, "[shop.saw]\n", "[shop.saw]\nwidest_stack = 21\n");
  test::save(pair.now, text);
  const test::Run run = test::run(pair.compare + " --for client");
  INFO(run.output);
  REQUIRE(run.status == 0);
  std::string pdf;
  for (const auto& entry : std::filesystem::directory_iterator(pair.out))
    if (entry.path().string().ends_with("-client-changes.pdf")) pdf = entry.path().string();
  const std::string words = test::run("pdftotext -enc UTF-8 -layout '" + pdf + "' -").output;
  CHECK(words.find("sizes › plinth") != std::string::npos);
  CHECK(words.find("shop › saw") == std::string::npos);
  CHECK(words.find("Parts it touches") == std::string::npos);
}

TEST_CASE("a change too small for the fraction is told in the job's unit") {
  Pair pair;
  pair.before = test::project("canted-tea-cabinet");
  const std::string text = writers::read_file(pair.before, 1u << 20);
  test::save(pair.now, test::changed(test::changed(text, "revision = \"B\"", "revision = \"C\""),
                                     "\"0.713\"", "\"0.728\""));
  const test::Run run = test::run(test::program() + " compare " + pair.before + " " + pair.now +
                                  " --out " + pair.out);
  INFO(run.output);
  REQUIRE(run.status == 0);
  CHECK(test::has(run, "thickness 0.015 in more"));
  CHECK_FALSE(test::has(run, " mm"));
  // On paper no word of the file's grammar.
  const std::string pdf = pair.out + "/plain-bookcase-C-shop-changes.pdf";
  const std::string words = test::run("pdftotext -enc UTF-8 -layout -l 2 '" + pdf + "' -").output;
  CHECK(words.find("stock › panel › thickness") != std::string::npos);
  CHECK(words.find("stock.panel") == std::string::npos);
}
