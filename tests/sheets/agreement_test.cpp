// The pages of a demo as PDF, PNG and SVG, drawn by renderers that are not ours; what is printed
// measured on them.
#include <cmath>
#include <map>
#include <regex>

#include "sheets/part_pages.h"
#include "support/demos.h"
#include "writers/picture.h"
#include "writers/tools.h"
#include "writers/writers.h"

using namespace splay;

namespace {

constexpr double dpi = 150;

// The items without those of one type, groups searched.
template <class T>
std::vector<ink::Item> without(std::vector<ink::Item> items) {
  std::erase_if(items, [](const ink::Item& item) { return std::holds_alternative<T>(item); });
  for (ink::Item& item : items)
    if (auto* group = std::get_if<ink::Group>(&item)) group->items = without<T>(group->items);
  return items;
}

ink::Packet only(const ink::Packet& packet, std::size_t page) {
  ink::Packet one = packet;
  one.pages = {packet.pages[page]};
  one.pages[0].items = without<ink::Link>(one.pages[0].items);  // they lead to other pages
  return one;
}

writer_tests::Picture drawn(const std::string& command, const std::string& file,
                            const std::string& bytes) {
  const writer_tests::Folder folder;
  const std::string from = folder.save(file, bytes), to = folder.path() + "/out";
  std::string line = command;
  line.replace(line.find("<from>"), 6, "'" + from + "'");
  line.replace(line.find("<to>"), 4, to);
  const writer_tests::Ran ran = writer_tests::run(line);
  INFO(ran.output);
  REQUIRE(ran.status == 0);
  const bool grey_map = command.starts_with("pdftoppm");
  return grey_map ? writer_tests::from_pgm(writer_tests::slurp(to + ".pgm"))
                  : writer_tests::from_png(writer_tests::slurp(to + ".png"));
}

void check_same(const writer_tests::Picture& a, const writer_tests::Picture& b, double largest,
                double mean) {
  const writer_tests::Difference difference = writer_tests::compare(a, b);
  CHECK(difference.inked > 0.01);
  CHECK(difference.largest < largest);
  CHECK(difference.mean < mean);
}

}  // namespace

// The bounds are what is measured with room to spare, and under the 0.4 that a line or a letter out
// of place makes (tests/writers). Words are compared where letters are not moved to whole dots: in
// the PDF through Poppler and Cairo. Lines and tones also by Poppler's own renderer, and in the SVG
// by librsvg.
TEST_CASE("PDF and PNG and SVG of a demo's pages are one picture") {
  const test::Built piece = test::piece_from("projects/splayed-stool.toml");
  const ink::Packet packet = test::binder(piece);
  for (std::size_t page = 0; page < packet.pages.size(); page += 4) {
    INFO("page " << packet.pages[page].label);
    ink::Packet one = only(packet, page);
    check_same(drawn("pdftocairo -png -gray -r 150 -singlefile <from> <to>", "it.pdf",
                     writers::pdf(one, test::fonts())),
               writer_tests::from_png(writers::png(one.pages[0], test::fonts(), dpi)), 0.30, 0.001);
    one.pages[0].items = without<ink::Text>(one.pages[0].items);
    const writer_tests::Picture png =
        writer_tests::from_png(writers::png(one.pages[0], test::fonts(), dpi));
    check_same(drawn("pdftoppm -gray -r 150 -singlefile <from> <to>", "it.pdf",
                     writers::pdf(one, test::fonts())),
               png, 0.40, 0.008);
    check_same(drawn("rsvg-convert -d 150 -p 150 <from> -o <to>.png", "it.svg",
                     writers::svg(one.pages[0], test::fonts())),
               png, 0.16, 0.001);
  }
}

// A figure wrongly carried is seen when the chain is added up against its overall:
// https://ukworkshop.co.uk/threads/the-wrong-sort-of-metric-tape.135096
TEST_CASE("every chain printed in a binder adds up to the overall printed with it") {
  int chains = 0;
  for (const std::string& demo : test::demo_names()) {
    const test::Built piece = test::piece_from("projects/" + demo + ".toml");
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
  const test::Built piece = test::piece_from("projects/splayed-stool.toml");
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
