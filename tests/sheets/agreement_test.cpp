// The pages of a demo as PDF, PNG and SVG, drawn by renderers that are not ours; what is printed
// measured on them.
#include <cmath>
#include <map>
#include <regex>

#include "sheets/part_pages.h"
#include "writers/picture.h"
#include "writers/tools.h"
#include "writers/writers.h"

using namespace splay;

namespace {

constexpr double dpi = 150;

const char* const demos[] = {"canted-tea-cabinet",  "plain-bookcase", "six-sided-tea-tray",
                             "six-sided-wall-case", "splayed-stool",  "tall-legged-tea-cabinet"};

std::string path_of(const char* demo) { return std::string("projects/") + demo + ".toml"; }

// Poppler's own renderer for the PDF, librsvg for the SVG, ours for the PNG.
struct Pictures {
  writer_tests::Picture pdf, svg, png;
};
Pictures pictures_of(const ink::Packet& packet, std::size_t page) {
  const writer_tests::Folder folder;
  ink::Packet one = packet;
  one.pages = {packet.pages[page]};
  std::erase_if(one.pages[0].items,
                [](const ink::Item& item) { return std::holds_alternative<ink::Link>(item); });
  for (ink::Item& item : one.pages[0].items)
    if (auto* group = std::get_if<ink::Group>(&item))
      std::erase_if(group->items,
                    [](const ink::Item& each) { return std::holds_alternative<ink::Link>(each); });
  const std::string pdf = folder.save("it.pdf", writers::pdf(one, test::fonts()));
  const std::string svg = folder.save("it.svg", writers::svg(one.pages[0], test::fonts()));
  const writer_tests::Ran poppler =
      writer_tests::run("pdftoppm -gray -r 150 -singlefile " + pdf + " " + folder.path() + "/pdf");
  const writer_tests::Ran rsvg =
      writer_tests::run("rsvg-convert -d 150 -p 150 -o " + folder.path() + "/svg.png " + svg);
  INFO(poppler.output << rsvg.output);
  REQUIRE(poppler.status == 0);
  REQUIRE(rsvg.status == 0);
  return {writer_tests::from_pgm(writer_tests::slurp(folder.path() + "/pdf.pgm")),
          writer_tests::from_png(writer_tests::slurp(folder.path() + "/svg.png")),
          writer_tests::from_png(writers::png(one.pages[0], test::fonts(), dpi))};
}

}  // namespace

TEST_CASE("PDF, PNG and SVG of a demo's pages are one picture, cell by cell") {
  const test::Built piece = test::piece_from(path_of("splayed-stool"));
  const ink::Packet packet = test::binder(piece);
  for (std::size_t page = 0; page < packet.pages.size(); page += 4) {
    INFO("page " << packet.pages[page].label);
    const Pictures pictures = pictures_of(packet, page);
    const writer_tests::Difference by_pdf = writer_tests::compare(pictures.png, pictures.pdf);
    const writer_tests::Difference by_svg = writer_tests::compare(pictures.png, pictures.svg);
    CHECK(by_pdf.inked > 0.01);
    CHECK(by_pdf.largest < 0.40);
    CHECK(by_pdf.mean < 0.0035);
    CHECK(by_svg.largest < 0.40);
    CHECK(by_svg.mean < 0.0035);
  }
}

// A figure wrongly carried is seen when the chain is added up against its overall:
// https://ukworkshop.co.uk/threads/the-wrong-sort-of-metric-tape.135096
TEST_CASE("every chain printed in a binder adds up to the overall printed with it") {
  int chains = 0;
  for (const char* demo : demos) {
    const test::Built piece = test::piece_from(path_of(demo));
    for (const ink::Page& page : test::binder(piece).pages) {
      struct Sum {
        std::int64_t parts = 0, whole = -1;
      };
      std::map<std::string, Sum> sums;
      for (const auto& claim : test::all_of<ink::DimensionClaim>(page)) {
        if (claim.chain.empty() || claim.running) continue;
        const std::string key = claim.chain + "/" +
                                std::to_string(std::lround(claim.along.x * 1e6)) + "/" +
                                std::to_string(std::lround(claim.along.y * 1e6));
        if (claim.overall)
          sums[key].whole = claim.steps;
        else
          sums[key].parts += claim.steps;
      }
      for (const auto& [name, sum] : sums) {
        INFO(demo << ", page " << page.label << ", chain " << name);
        if (sum.parts == 0) continue;
        ++chains;
        CHECK(sum.parts == sum.whole);
      }
    }
  }
  CHECK(chains > 10);
}

// A sheet printed "to fit" is told by a known line in both directions:
// https://help.seamwork.com/hc/en-us/articles/360004182294-The-test-square-on-my-digital-pattern-is-too-small
// At 72 points to the inch (ISO 32000-1) 4 in are 288 points, on every page, across and up.
TEST_CASE("a bar of four inches lies across every page and another up it, measured in the PDF") {
  const test::Built piece = test::piece_from(path_of("splayed-stool"));
  const ink::Packet packet = test::binder(piece);
  const writer_tests::Folder folder;
  const std::string pdf = folder.save("it.pdf", writers::pdf(packet, test::fonts()));
  const std::string plain = folder.path() + "/plain.pdf";
  REQUIRE(writer_tests::run("qpdf --qdf --object-streams=disable " + pdf + " " + plain).status ==
          0);
  const std::string raw = writer_tests::slurp(plain);
  // Straight lines in the page's own points.
  const std::regex line(R"(([-0-9.]+) ([-0-9.]+) m\s+([-0-9.]+) ([-0-9.]+) l)");
  std::size_t across = 0, up = 0;
  for (std::sregex_iterator it(raw.begin(), raw.end(), line), end; it != end; ++it) {
    const double dx = std::abs(std::stod((*it)[3]) - std::stod((*it)[1]));
    const double dy = std::abs(std::stod((*it)[4]) - std::stod((*it)[2]));
    across += std::abs(dx - 288) < 0.01 && dy < 0.01;
    up += std::abs(dy - 288) < 0.01 && dx < 0.01;
  }
  CHECK(across >= packet.pages.size());
  CHECK(up >= packet.pages.size());
}
