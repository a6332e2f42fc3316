// Pieces at the edges of what a shop makes: very wide, very small, many shelves, long names.
#include <catch2/catch.hpp>

#include "ink/lint.h"
#include "sheets/packet.h"
#include "support/piece.h"

using namespace splay;

namespace {

std::string faults_on_all_papers(const std::string& text) {
  static const ink::FontSet fonts;
  test::Built piece = test::build(text);
  REQUIRE_THAT(piece.stops(), Catch::Equals(""));
  std::vector<std::string> marks;
  for (const fabrication::PartRow& row : piece.plan.rows) marks.push_back(row.mark);
  std::string found;
  for (const auto paper : {model::PaperSize::a4, model::PaperSize::letter, model::PaperSize::a3,
                           model::PaperSize::tabloid}) {
    piece.project->job.paper.value = paper;
    const ink::Packet packet = sheets::make_packet(piece.plan, model::Style{}, fonts);
    CHECK(packet.pages.size() >= 5);
    for (const ink::LintFault& fault : ink::lint(packet, fonts, marks))
      found += packet.pages.front().paper.name + ", page " + fault.page + ": " + fault.rule + ": " +
               fault.text + "\n";
  }
  return found;
}

std::string case_text(const std::string& unit, const std::string& outline, const std::string& depth,
                      const std::string& more) {
  return test::job(unit) + test::sheet("panel", "18 mm") + "[case.body]\noutline = " + outline +
         "\ndepth = \"" + depth + "\"\nstock = \"panel\"\ncorners = \"mitre\"\n" + more;
}

std::string shelf(const std::string& name, const std::string& at) {
  return "[case.body.shelf." + name + "]\ntop_at = \"" + at +
         "\"\nends = { housing = \"6 mm\", floor = \"square to walls\" }\n";
}

}  // namespace

TEST_CASE("a very wide low case") {
  CHECK_THAT(faults_on_all_papers(case_text(
                 "mm", "{ bottom = 2400, height = 220, lean_in = [\"20 deg\", \"20 deg\"] }",
                 "200 mm", "")),
             Catch::Equals(""));
}

TEST_CASE("a tall narrow case with many shelves close together") {
  std::string shelves;
  for (int i = 0; i < 9; ++i)
    shelves += shelf("number" + std::to_string(i), std::to_string(120 + 60 * i) + " mm");
  CHECK_THAT(faults_on_all_papers(case_text(
                 "mm", "{ bottom = 420, height = 1900, lean_in = [\"3 deg\", \"3 deg\"] }",
                 "300 mm", shelves)),
             Catch::Equals(""));
}

TEST_CASE("a box as small as a hand") {
  CHECK_THAT(faults_on_all_papers(case_text(
                 "in", "{ bottom = \"6\", height = \"4\", lean_in = [\"10 deg\", \"10 deg\"] }",
                 "3 in", "")),
             Catch::Equals(""));
}

TEST_CASE("long names, a long title, notes in several languages") {
  std::string text =
      case_text("in", "{ bottom = \"40\", height = \"30\", lean_in = [\"8 deg\", \"4 deg\"] }",
                "14 in", shelf("the_shelf_for_the_largest_books_of_all", "12 in"));
  const std::string job =
      "title = \"A cabinet whose title is so long that no one would ever write it on a drawing\"\n"
      "client = \"Société des Amis de la Menuiserie Ancienne, Zürich–Łódź (invented)\"\n"
      "maker = \"Tischlerei Übermaß & Söhne (invented)\"\nnumber = \"2026-000145-XL\"\n"
      "notes = [\"Ausführung in Eiche, geölt. Größe ±0,5 mm.\", \"Поставка: июнь\", \"Έτοιμο\"]\n";
  text.replace(text.find("title = \"Test\"\n"), 15, job);
  CHECK_THAT(faults_on_all_papers(text), Catch::Equals(""));
}
