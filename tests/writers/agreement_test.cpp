// PDF, PNG and SVG of one page are one picture.
#include <catch2/catch.hpp>
#include <limits>
#include <stdexcept>

#include "writers/picture.h"
#include "writers/tools.h"
#include "writers/writers.h"

using namespace splay;
using namespace splay::ink;
using namespace splay::writer_tests;

namespace {

constexpr double dpi = 150;

// `renderer`: pdftoppm (of its own make; moves large letters to whole dots) or pdftocairo.
Picture of_pdf(const std::string& renderer, const Packet& packet, std::size_t page,
               const FontSet& fonts) {
  const Folder folder;
  const std::string file = folder.save("it.pdf", writers::pdf(packet, fonts));
  const std::string number = std::to_string(page + 1);
  const bool cairo = renderer == "pdftocairo";
  const Ran ran = run(renderer + (cairo ? " -png" : "") + " -gray -r 150 -f " + number + " -l " +
                      number + " -singlefile " + file + " " + folder.path() + "/it");
  INFO(ran.output);
  REQUIRE(ran.status == 0);
  return cairo ? from_png(slurp(folder.path() + "/it.png"))
               : from_pgm(slurp(folder.path() + "/it.pgm"));
}

void check_same(const Difference& difference, double largest, double mean) {
  CHECK(difference.inked > 0.001);
  CHECK(difference.largest < largest);
  CHECK(difference.mean < mean);
}

}  // namespace

TEST_CASE("PDF, PNG and SVG of a page agree") {
  const FontSet fonts;
  const Packet packet = sample_packet();
  for (std::size_t i = 0; i < packet.pages.size(); ++i) {
    INFO("page " << packet.pages[i].label);
    const Picture png = from_png(writers::png(packet.pages[i], fonts, dpi));
    check_same(compare(png, of_pdf("pdftoppm", packet, i, fonts)), 0.40, 0.0015);
    check_same(compare(png, of_pdf("pdftocairo", packet, i, fonts)), 0.06, 0.0002);
    check_same(compare(png, from_svg(writers::svg(packet.pages[i], fonts), dpi)), 0.06, 0.0002);
  }
}

TEST_CASE("the comparison sees a page that is drawn a little wrong") {
  const FontSet fonts;
  const Packet packet = sample_packet();
  const Picture right = from_png(writers::png(packet.pages[0], fonts, dpi));
  Page shifted = packet.pages[0];
  std::get<Text>(shifted.items[0]).at.x += 0.5;
  CHECK(compare(right, from_png(writers::png(shifted, fonts, dpi))).largest > 0.4);
  Page other = packet.pages[0];
  std::get<Text>(other.items[3]).utf8.replace(0, 1, "m");
  CHECK(compare(right, from_png(writers::png(other, fonts, dpi))).largest > 0.4);
  Page missing = packet.pages[0];
  missing.items.erase(missing.items.begin());
  CHECK(compare(right, from_png(writers::png(missing, fonts, dpi))).largest > 0.4);
}

TEST_CASE("letters put together from parts are whole in the PDF subset") {
  const FontSet fonts;
  Packet packet;
  packet.pages.push_back(page_of("Letters", "1", {}));
  double y = 270;
  for (const Face face : {Face::regular, Face::bold, Face::italic})
    for (const char* letters : {"ÀÉÎÕÜÇŹŘŐĄ½⅞", "ǕǗǙǛǞǠẤẦẨẪẮ", "ḀḈḔḜḮṌṐṤ⌀∠"})
      packet.pages[0].items.push_back(
          Text{.at = {25, y -= 25}, .utf8 = letters, .height = 12, .face = face});
  const Picture png = from_png(writers::png(packet.pages[0], fonts, dpi));
  check_same(compare(png, of_pdf("pdftocairo", packet, 0, fonts)), 0.06, 0.0002);
}

TEST_CASE("a picture states its size and has the dots asked for") {
  const FontSet fonts;
  const Page page = page_of("Empty", "1", {});
  const std::string bytes = writers::png(page, fonts, 300);
  CHECK(from_png(bytes).width == 2480);
  CHECK(from_png(bytes).height == 3508);
  CHECK(bytes.substr(37, 4) == "pHYs");
  CHECK(bytes.substr(41, 4) == std::string("\0\0\x2E\x23", 4));  // 11811 dots to the metre
  CHECK(writers::png(page, fonts, 300) == bytes);
  CHECK_THROWS_AS(writers::png(page, fonts, 0), std::invalid_argument);
  CHECK_THROWS_AS(writers::png(page, fonts, std::numeric_limits<double>::quiet_NaN()),
                  std::invalid_argument);
}

TEST_CASE("a picture too large for Cairo is refused") {
  const Page page = page_of("Empty", "1", {});
  CHECK_THROWS_AS(writers::png(page, FontSet(), 9000), std::runtime_error);
}

TEST_CASE("a page that can't be drawn is refused by every writer") {
  const FontSet fonts;
  const Page bad = page_of("Bad", "1", {Text{.at = {20, 20}, .utf8 = "漢"}});
  CHECK_THROWS_AS(writers::svg(bad, fonts), std::invalid_argument);
  CHECK_THROWS_AS(writers::png(bad, fonts, 150), std::invalid_argument);
  const Page endless =
      page_of("Bad", "1", {Fill{Path{}.move({std::numeric_limits<double>::infinity(), 0}), 0}});
  CHECK_THROWS_AS(writers::svg(endless, fonts), std::invalid_argument);
  CHECK_THROWS_AS(writers::png(endless, fonts, 150), std::invalid_argument);
}

TEST_CASE("an SVG holds its text as text and escapes what XML would take for its own") {
  const std::string svg =
      writers::svg(page_of("A < B", "1", {Text{.at = {20, 20}, .utf8 = "<5 & \"6\""}}), FontSet());
  CHECK(svg.find("<title>A &lt; B</title>") != std::string::npos);
  CHECK(svg.find(">&lt;5 &amp; \"6\"</text>") != std::string::npos);
  CHECK(svg.find("width=\"210mm\"") != std::string::npos);
  CHECK(svg.find("viewBox=\"0 0 210 297\"") != std::string::npos);
}
