// Setting-out strips share what can be shared and lose no mark; templates are no larger than they
// must be and say what can be measured on them.
#include <catch2/catch.hpp>
#include <cmath>

#include "part_pages.h"
#include "sheets/rods_marks.h"
#include "sheets/templates_shape.h"

using namespace splay;
using sheets::Rod;
using sheets::RodMark;

namespace {

int pages_titled(const ink::Packet& packet, const std::string& title) {
  return static_cast<int>(std::ranges::count_if(
      packet.pages, [&](const ink::Page& page) { return page.title == title; }));
}

Rod rod(const std::string& mark, double length, const std::vector<double>& marks) {
  Rod rod;
  rod.name = "part";
  rod.of = {mark};
  rod.along = "from the foot";
  rod.length = length;
  rod.needed = true;
  for (const double at : marks) rod.marks.push_back({at, {{"housing", {mark}}}, false});
  return rod;
}

std::string words(const ink::Packet& packet, const std::string& title) {
  std::string all;
  for (const ink::Page& page : packet.pages)
    if (page.title == title)
      for (const ink::Text& text : test::all_of<ink::Text>(page)) all += text.utf8 + "\n";
  return all;
}

}  // namespace

TEST_CASE("parts of one length share a strip, each mark once with all it is said of") {
  const std::vector<Rod> strips = sheets::shared(
      {rod("A", 800, {0, 300, 800}), rod("B", 800, {0, 300, 500, 800}), rod("C", 700, {0, 700})});
  REQUIRE(strips.size() == 2);
  CHECK(strips[0].of == std::vector<std::string>{"A", "B"});
  REQUIRE(strips[0].marks.size() == 4);
  CHECK(strips[0].marks[1].text(strips[0].of) == "housing");
  CHECK(strips[0].marks[2].at == 500);
  CHECK(strips[0].marks[2].text(strips[0].of) == "B housing");
  CHECK(strips[1].of == std::vector<std::string>{"C"});
}

TEST_CASE("a short part's crowded strip is not shared") {
  std::vector<double> many, others;
  for (int i = 1; i < 12; ++i) {
    many.push_back(i * 5.0);
    others.push_back(i * 5.0 - 2);
  }
  CHECK(sheets::shared({rod("A", 60, many), rod("B", 60, others)}).size() == 2);
  CHECK(sheets::shared({rod("A", 60, many), rod("B", 60, many)}).size() == 1);
}

TEST_CASE("the bookcase's strips take less than twelve pages, and no housing is lost") {
  const test::Built piece = test::piece_from("projects/plain-bookcase.toml");
  const FigureStyle figures = piece.project->job.figures();
  for (const model::PaperSize paper : {model::PaperSize::a4, model::PaperSize::letter}) {
    const ink::Packet packet = test::binder(piece, paper);
    CHECK(pages_titled(packet, "Setting-out strips") < 12);
    const std::string all = words(packet, "Setting-out strips");
    for (const parts::Part& part : piece.plan.assembly.parts)
      for (const parts::Operation& operation : part.operations) {
        if (operation.kind != parts::OperationKind::housing) continue;
        for (const Plane& wall : operation.trench.walls) {
          if (std::abs(wall.n.x) < 0.9) continue;
          INFO(part.name << ", " << operation.name);
          CHECK(all.find(figures.text(wall.d / wall.n.x) + "  ") != std::string::npos);
        }
      }
  }
}

TEST_CASE("a small part has one template for all of it") {
  const test::Built piece = test::piece_from("projects/six-sided-tea-tray.toml");
  const std::string& panel = piece.row("tile panel").mark;
  const std::string all = words(test::binder(piece), "Templates");
  CHECK(all.find(panel + ": all of it") != std::string::npos);
  std::size_t count = 0;
  for (std::size_t at = all.find("\n" + panel + ": "); at != std::string::npos;
       at = all.find("\n" + panel + ": ", at + 1))
    ++count;
  CHECK(count == 1);
}

TEST_CASE("a template tells the longest line that can be measured on it") {
  // A leg 900 long, tapered over its length: of the taper the template has a few inches.
  const test::Built piece = test::build(
      test::job("mm") + test::board("leg", "60 mm") + test::board("oak", "22 mm") +
      "[table.t]\nheight = 740\nwidth = 1000\ndepth = 800\nsplay = [\"8 deg\", \"6 deg\"]\n"
      "[table.t.leg]\nstock = \"leg\"\nwidth = 50\nfoot_width = 30\n[table.t.apron]\nstock = "
      "\"oak\"\nwidth = 90\n");
  const ink::Packet packet = test::binder(piece);
  int told = 0;
  for (const ink::Page& page : packet.pages) {
    if (page.title != "Templates") continue;
    for (const ink::Text& text : test::all_of<ink::Text>(page)) {
      const std::string start = "longest cut line ";
      if (!text.utf8.starts_with(start)) continue;
      ++told;
      CHECK(std::stod(text.utf8.substr(start.size())) < 200);
    }
  }
  CHECK(told > 0);
}

TEST_CASE("strips and templates of the demos fill their pages") {
  struct Most {
    const char* demo;
    int strips, templates;
  };
  for (const Most& most :
       {Most{"projects/splayed-stool.toml", 5, 4}, Most{"projects/six-sided-tea-tray.toml", 5, 7},
        Most{"projects/canted-tea-cabinet.toml", 4, 4}}) {
    const test::Built piece = test::piece_from(most.demo);
    for (const model::PaperSize paper : {model::PaperSize::a4, model::PaperSize::letter}) {
      const ink::Packet packet = test::binder(piece, paper);
      INFO(most.demo);
      CHECK(pages_titled(packet, "Setting-out strips") <= most.strips);
      CHECK(pages_titled(packet, "Templates") <= most.templates);
    }
  }
}

TEST_CASE("a leg tapered on all four sides has no template at its foot, for its face ends above") {
  // What lies on the blank's own face begins where the taper ends: of the foot there is nothing on
  // it that a template could be laid along.
  const test::Built piece = test::piece_from("projects/six-sided-tea-tray.toml");
  const std::string all = words(test::binder(piece), "Templates");
  const std::string mark = piece.row("left leg").mark;
  CHECK(all.find(mark + ": head") != std::string::npos);
  CHECK(all.find(mark + ": foot") == std::string::npos);
}

TEST_CASE("a strip is joined where no mark stands, in lengths that fit") {
  // One mark where equal lengths would be joined, one beside it; none at the other joins.
  const Rod rail = rod("A", 1000, {500, 502, 700});
  const std::vector<double> joins = sheets::joins_of(rail, 4, 260);
  REQUIRE(joins.size() == 5);
  CHECK(joins.front() == 0);
  CHECK(joins[1] == 250);
  CHECK(joins.back() == 1000);
  for (std::size_t i = 1; i < joins.size(); ++i) CHECK(joins[i] - joins[i - 1] <= 260);
  for (const RodMark& mark : rail.marks)
    for (std::size_t i = 1; i + 1 < joins.size(); ++i) CHECK(std::abs(mark.at - joins[i]) >= 3.5);
  // With no room to move, they are as equal as they can be.
  CHECK(sheets::joins_of(rail, 4, 250)[2] == 500);
}

TEST_CASE("an end that is folded over the edge is drawn there too, and the fold once") {
  const test::Built piece = test::piece_from("projects/splayed-stool.toml");
  const sheets::Context context{piece.plan, {}, drafting::paper_named("A4"), {}};
  int folded = 0;
  for (const fabrication::PartRow& row : piece.plan.rows) {
    const sheets::PartSheet sheet(context, row);
    for (const sheets::Template& made : sheets::templates_of(sheet)) {
      if (!made.edge) continue;
      ++folded;
      INFO(made.title);
      double across = 0, folds = 0;
      for (const sheets::TemplateLine& line : made.lines) {
        // The edge lies to the right of the fold.
        if (line.cut && !line.fold && line.a.x > -1e-4 && line.b.x > -1e-4)
          across += std::abs(line.b.x - line.a.x);
        if (line.fold) folds += std::abs(line.b.y - line.a.y);
      }
      CHECK(across > sheet.part.size.z / 2);
      CHECK(folds <= made.box.height() + 1e-6);
    }
  }
  CHECK(folded >= 6);
}

TEST_CASE("a strip's name up its side stands clear of words and of the signs of joins") {
  constexpr double clear = 1.5;  // mm
  int names = 0;
  for (const char* demo : {"projects/plain-bookcase.toml", "projects/canted-tea-cabinet.toml",
                           "projects/tall-legged-tea-cabinet.toml"}) {
    const test::Built piece = test::piece_from(demo);
    const ink::Packet packet = test::binder(piece, model::PaperSize::letter);
    for (const ink::Page* page : test::titled(packet, "Setting-out strips")) {
      const std::vector<ink::Text> texts = test::all_of<ink::Text>(*page);
      for (const ink::Text& name : texts) {
        // The page's own upright bar has figures only.
        if (name.turn < 1 || name.face != ink::Face::bold) continue;
        ++names;
        const double left = name.at.x - name.height;
        const double top = name.at.y + test::fonts().width(name.utf8, name.height, name.face);
        INFO(demo << ", page " << page->label << ", " << name.utf8);
        for (const ink::Text& words : texts) {
          const double right =
              words.at.x + test::fonts().width(words.utf8, words.height, words.face);
          if (words.turn == 0 && words.at.x < left && words.at.y + words.height > name.at.y &&
              words.at.y < top)
            CHECK(right < left - clear);
        }
        for (const ink::Fill& sign : test::all_of<ink::Fill>(*page)) {
          const ink::Rect box = ink::bounds(sign.path.points);
          constexpr double strip_below = 4;  // mm: the name begins above the strip's foot
          if (box.low.y < name.at.y - strip_below) continue;
          CHECK((box.high.x < left - clear || box.low.x > name.at.x));
        }
      }
    }
  }
  CHECK(names > 20);
}
