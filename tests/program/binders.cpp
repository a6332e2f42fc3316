// The printed binders, judged by tools that are not ours, on every paper.
#include <catch2/catch.hpp>
#include <fstream>
#include <regex>

#include "program/run.h"
#include "support/demos.h"
#include "writers/files.h"

using namespace splay;

namespace {

namespace fs = std::filesystem;

std::string only_pdf(const test::Folder& folder) {
  for (const auto& entry : fs::directory_iterator(folder.path()))
    if (entry.path().extension() == ".pdf") return entry.path().string();
  return {};
}

}  // namespace

// ISO 216: A4 is 210 by 297 mm, A3 297 by 420; ANSI Y14.1: 8.5 by 11 and 11 by 17 in. The larger
// ones lie on their side. In points of 1/72 in.
TEST_CASE("every demo on every paper: sound PDF, fonts embedded, words come back") {
  struct Paper {
    const char* word;
    double width, height;
  };
  constexpr double mm = 72 / 25.4;
  const Paper on = GENERATE_COPY(Paper{"A4", 210 * mm, 297 * mm}, Paper{"letter", 612, 792},
                                 Paper{"A3", 420 * mm, 297 * mm}, Paper{"TABLOID", 1224, 792});
  const std::string paper = on.word;
  for (const std::string& demo : test::demo_names()) {
    INFO(demo << " on " << paper);
    test::Folder folder;
    const test::Run print = test::run(test::program() + " print " + test::project(demo) +
                                      " --paper " + paper + " --out " + folder.path());
    INFO(print.output);
    REQUIRE(print.status == 0);
    const std::string pdf = only_pdf(folder);
    const test::Run check = test::run("qpdf --check '" + pdf + "'");
    CHECK(check.status == 0);
    CHECK(check.output.find("WARNING") == std::string::npos);
    const test::Run info = test::run("pdfinfo '" + pdf + "'");
    std::smatch size;
    REQUIRE(std::regex_search(info.output, size, std::regex("Page size: +([0-9.]+) x ([0-9.]+)")));
    CHECK(std::stod(size[1]) == Approx(on.width).margin(0.1));
    CHECK(std::stod(size[2]) == Approx(on.height).margin(0.1));
    const test::Run fonts = test::run("pdffonts '" + pdf + "'");
    REQUIRE(fonts.status == 0);
    CHECK(fonts.output.find(" no ") ==
          std::string::npos);  // columns: embedded, subset, Unicode map
    const test::Run text = test::run("pdftotext -layout '" + pdf + "' -");
    REQUIRE(text.status == 0);
    for (const char* word : {"Cut list", "Revision", "Cover and index"})
      CHECK(text.output.find(word) != std::string::npos);
    // No replacement character, and every degree sign with its figure.
    CHECK(text.output.find("\xEF\xBF\xBD") == std::string::npos);
    CHECK(text.output.find("\xC2\xB0") != std::string::npos);
    const std::string raw = test::bytes(pdf);
    CHECK(raw.find("/PrintScaling /None") != std::string::npos);
  }
}

TEST_CASE("the same file gives the same bytes under another locale, time zone and time") {
  test::Folder locales, one, two;
  // A locale with a decimal comma, made for this test.
  const test::Run made =
      test::run("localedef -i de_DE -f UTF-8 '" + (locales / "de_DE.UTF-8") + "'");
  INFO(made.output);
  REQUIRE(fs::exists(locales / "de_DE.UTF-8"));
  for (const std::string& demo : test::demo_names()) {
    const std::string print = test::program() + " print " + test::project(demo) + " --out ";
    REQUIRE(test::run("TZ=UTC LC_ALL=C " + print + one.path()).status == 0);
    REQUIRE(test::run("LOCPATH=" + locales.path() +
                      " LC_ALL=de_DE.UTF-8 LANG=de_DE.UTF-8 TZ=Asia/Tokyo " + print + two.path())
                .status == 0);
  }
  int files = 0;
  for (const auto& entry : fs::directory_iterator(one.path())) {
    ++files;
    const std::string name = entry.path().filename().string();
    CHECK(test::bytes(one / name) == test::bytes(two / name));
  }
  CHECK(files >= 2);
}

TEST_CASE("letters and figures are at least 2.5 mm high on paper") {
  test::Folder folder;
  REQUIRE(test::run(test::program() + " print " + test::project("canted-tea-cabinet") + " --out " +
                    folder.path())
              .status == 0);
  const std::string plain = folder / "plain.pdf";
  REQUIRE(
      test::run("qpdf --qdf --object-streams=disable '" + only_pdf(folder) + "' '" + plain + "'")
          .status == 0);
  const std::string raw = test::bytes(plain);
  const std::regex size_form(R"(/F\d+ ([0-9.]+) Tf)");
  double least = 1e9;
  int seen = 0;
  for (std::sregex_iterator it(raw.begin(), raw.end(), size_form), end; it != end; ++it, ++seen)
    least = std::min(least, std::stod((*it)[1]));
  REQUIRE(seen > 100);
  // Liberation Sans Narrow: capitals are 1409 of 2048 units high (read with a font tool).
  CHECK(least * 1409 / 2048 * 25.4 / 72 > 2.5 - 0.005);
}
