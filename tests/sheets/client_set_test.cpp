// The client's set and its sign-off.
#include <cmath>
#include <numbers>

#include "reading/signed_text.h"
#include "sheets/part_pages.h"
#include "writers/digest.h"

using namespace splay;

namespace {

const std::string piece_text =
    test::job("mm") + test::sheet("ply", "18") +
    "[client]\nchoices = [\"Handles: bronze or oak\"]\nterms = [\"Half is paid before work "
    "begins.\"]\n[case.body]\noutline = { bottom = 800, height = 600 }\ndepth = 300\nstock = "
    "\"ply\"\n";

std::string approval(const std::string& figure) {
  return "\n[approval]\nby = \"A. Client\"\ndate = 2026-01-02\nsha256 = \"" + figure + "\"\n";
}

std::string figure_of(const test::Built& piece) {
  return writers::sha256(reading::signed_text(*piece.project));
}

ink::Packet packet(const test::Built& piece, sheets::ForWhom whom) {
  return sheets::make_packet(piece.plan, model::Style{}, test::fonts(), {whom, figure_of(piece)});
}

std::size_t pages_that_warn(const ink::Packet& packet) {
  return static_cast<std::size_t>(std::ranges::count_if(
      packet.pages, [](const ink::Page& page) { return test::shows(page, "NOT APPROVED"); }));
}

}  // namespace

// FIPS 180-4 has its example messages answered in NIST's "SHA-256 examples" (figures from memory).
TEST_CASE("check figures are those of the standard's examples") {
  CHECK(writers::sha256("abc") ==
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(writers::sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

TEST_CASE("the record of an approval does not change what was signed, all else does") {
  const test::Built plain = test::build(piece_text);
  const std::string figure = figure_of(plain);
  CHECK(figure_of(test::build(piece_text + approval(figure))) == figure);
  const std::string before = approval(figure).substr(1);
  CHECK(figure_of(test::build(before + piece_text)) == figure);
  std::string changed = piece_text;
  changed.replace(changed.find("600"), 3, "601");
  CHECK(figure_of(test::build(changed)) != figure);
}

TEST_CASE("every shop page of an unsigned or changed revision says NOT APPROVED, no other does") {
  const test::Built plain = test::build(piece_text);
  CHECK(pages_that_warn(packet(plain, sheets::ForWhom::shop)) == 0);
  const std::string signed_file = piece_text + approval(figure_of(plain));
  CHECK(pages_that_warn(packet(test::build(signed_file), sheets::ForWhom::shop)) == 0);
  std::string changed = signed_file;
  changed.replace(changed.find("600"), 3, "601");
  std::string asked = piece_text;
  asked.replace(asked.find("[client]\n"), 9, "[client]\nsign_off = true\n");
  for (const std::string& text : {changed, asked}) {
    const test::Built piece = test::build(text);
    const ink::Packet shop = packet(piece, sheets::ForWhom::shop);
    CHECK(pages_that_warn(shop) == shop.pages.size());
    CHECK(test::page_faults(piece, shop).empty());
    CHECK(pages_that_warn(packet(piece, sheets::ForWhom::client)) == 0);
  }
}

TEST_CASE("the client's set shows overall sizes, choices, terms and the check figure only") {
  const test::Built piece = test::build(piece_text);
  const ink::Packet set = packet(piece, sheets::ForWhom::client);
  bool choice = false, term = false, figure = false;
  for (const ink::Page& page : set.pages) {
    choice = choice || test::shows(page, "Handles: bronze or oak");
    term = term || test::shows(page, "Half is paid before work begins.");
    figure = figure || test::shows(page, figure_of(piece).substr(0, 8));
    for (const auto& claim : test::all_of<ink::DimensionClaim>(page)) {
      const double mm = std::abs(claim.exact_mm);
      CHECK((std::abs(mm - 800) < 1e-6 || std::abs(mm - 600) < 1e-6 || std::abs(mm - 300) < 1e-6));
    }
    for (const char* secret : {"Saw", "kerf", "Blank", "Cut list"})
      CHECK_FALSE(test::shows(page, secret));
  }
  CHECK(choice);
  CHECK(term);
  CHECK(figure);
}

TEST_CASE("no demo's client set has a page fault on any paper") {
  for (const char* name : {"canted-tea-cabinet", "plain-bookcase", "six-sided-tea-tray",
                           "six-sided-wall-case", "splayed-stool", "tall-legged-tea-cabinet"}) {
    const test::Built piece = test::piece_from(std::string("projects/") + name + ".toml");
    for (const auto paper : {model::PaperSize::a4, model::PaperSize::letter, model::PaperSize::a3,
                             model::PaperSize::tabloid}) {
      piece.project->job.paper.value = paper;
      std::string faults;
      for (const ink::LintFault& fault :
           ink::lint(packet(piece, sheets::ForWhom::client), test::fonts(), {}))
        faults += "page " + fault.page + ": " + fault.rule + ": " + fault.text + "\n";
      INFO(name << ", paper " << static_cast<int>(paper));
      CHECK_THAT(faults, Catch::Equals(""));
    }
  }
}

TEST_CASE("a client's views are of one scale on at most two pages, each size once on a page") {
  for (const char* name : {"canted-tea-cabinet", "plain-bookcase", "six-sided-wall-case",
                           "six-sided-tea-tray", "splayed-stool", "tall-legged-tea-cabinet"}) {
    const test::Built piece = test::piece_from(std::string("projects/") + name + ".toml");
    for (const auto paper : {model::PaperSize::a4, model::PaperSize::letter}) {
      piece.project->job.paper.value = paper;
      const ink::Packet set = packet(piece, sheets::ForWhom::client);
      INFO(name << ", paper " << static_cast<int>(paper));
      const auto pages = test::titled(set, "Views");
      CHECK(pages.size() >= 1);
      CHECK(pages.size() <= 2);
      std::vector<std::string> scales;
      for (const ink::Page* page : pages) {
        for (const ink::Text& text : test::all_of<ink::Text>(*page))
          if (text.utf8.starts_with("1:")) scales.push_back(text.utf8);
        // Width and height of the front, and the depth.
        CHECK(test::all_of<ink::DimensionClaim>(*page).size() <= 3);
      }
      REQUIRE(scales.size() == pages.size());
      CHECK(std::ranges::count(scales, scales.front()) ==
            static_cast<std::ptrdiff_t>(scales.size()));
    }
  }
}
