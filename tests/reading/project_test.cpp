#include <array>
#include <catch2/catch.hpp>

#include "furniture.h"

using namespace reading_test;

TEST_CASE("a sound file becomes a project") {
  const std::string text = R"(# a remark
[job]
title = "Canted crate"
number = "014"
date = 2026-03-02
units = "in"
notes = ["one", "two"]

[shop]
blank_allowance = "3/4"
[shop.saw]
tilt = "47 deg"

[stool.late]          # a table may stand before what it needs
height = "18 in"

[sizes]
slant = "width / 4"
width = 48
cant = "1 in 6"
number = "3 times"

[crate.body]
outline = { bottom = "width", lean = ["cant", 5] }
depth = "17 1/4"
cant = 12.5
count = "number"
stock = "panel"
beside = "late"
through = ["left", "right"]
plan = [[0, 0], ["width / 2", "12 mm"]]
lid = true
bought = 2025-12-31

[crate.body.ledge.upper]
top_at = "9 3/4"
ends = "housed"
[crate.body.ledge.'a lower one']
top_at = "slant"

[stock.panel]
thickness = "0.713"
size = [96, 48]
)";
  const auto reading = read(text);
  INFO(all_text(reading, text));
  REQUIRE(reading.project);
  const model::Project& project = *reading.project;
  CHECK(project.file_name == "made-up.toml");
  CHECK(project.source == text);
  CHECK(*project.job.title == "Canted crate");
  CHECK(*project.job.units == Unit::inch);
  CHECK(project.job.figures().text(project.shop.blank_allowance->mm) == "3/4");
  CHECK(project.job.date->month == 3);
  CHECK(project.job.notes->size() == 2);
  CHECK(project.shop.saw.tilt->degrees() == Approx(47));
  CHECK_FALSE(project.shop.saw.kerf.given);
  REQUIRE(project.stocks.find("panel") != nullptr);
  CHECK(project.stocks[0].size->at(0).inches() == Approx(96));
  REQUIRE(project.items.size() == 2);
  CHECK(project.items[0]->name == "late");
  CHECK(project.items[0]->kind == "stool");
  const auto& body = dynamic_cast<const Crate&>(*project.items[1]);
  CHECK(body.span == SourceSpan{23, 1, 12});
  CHECK(body.outline.span == SourceSpan{24, 1, 7});
  CHECK(body.outline.bottom->inches() == Approx(48));
  CHECK(body.outline.lean->at(0).degrees() == Approx(9.4623).margin(1e-4));
  CHECK(body.outline.lean->at(1).degrees() == Approx(5));
  CHECK(body.cant->degrees() == Approx(12.5));
  CHECK(*body.count == 3);
  CHECK(body.plan->at(1).x == Approx(24 * 25.4));
  CHECK(body.plan->at(1).y == Approx(12));
  REQUIRE(body.ledges.size() == 2);
  CHECK(body.ledges[0].name == "upper");
  CHECK(*body.ledges[0].ends == Ends::housed);
  CHECK(body.ledges[1].name == "a lower one");
  CHECK(body.ledges[1].top_at->inches() == Approx(12));
  CHECK(body.ledges[1].span.line == 38);
}

TEST_CASE("tables and items keep the order of the file") {
  const auto reading = read(file_with(
      "[stool.zebra]\nheight = 1\n[crate.mule]\noutline.bottom = 1\ndepth = 1\nstock = 'panel'\n"
      "ledge.z.top_at = 1\nledge.a.top_at = 1\n[stool.ant]\nheight = 1\n"));
  REQUIRE(reading.project);
  std::string names;
  for (const auto& item : reading.project->items) names += item->name + " ";
  CHECK(names == "zebra mule ant ");
  const auto& mule = dynamic_cast<const Crate&>(*reading.project->items[1]);
  CHECK(mule.ledges[0].name == "z");
  CHECK(mule.ledges[1].name == "a");
  CHECK(mule.outline.bottom->inches() == Approx(1));
}

TEST_CASE("all faults are told at once, in file order, and nothing is given") {
  const std::string text = file_with(
      "[crate.body]\noutline = { botom = 1 }\ndepth = -3\nstock = \"panle\"\n[crates.x]\n");
  const auto reading = read(text);
  CHECK_FALSE(reading.project);
  std::string codes;
  int line = 0;
  for (const Diagnostic& d : reading.diagnostics) {
    codes += d.code + " ";
    CHECK(d.span.line >= line);
    line = d.span.line;
  }
  CHECK(codes == "missing-field unknown-key out-of-range unknown-stock unknown-table ");
  CHECK(all_text(reading, text).find("did you mean \"bottom\"?") != std::string::npos);
  CHECK(all_text(reading, text).find("did you mean \"panel\"?") != std::string::npos);
  CHECK(all_text(reading, text).find("did you mean [crate]?") != std::string::npos);
}

TEST_CASE("a fault reads as a sentence under its line") {
  const std::string text = file_with(crate("thicknes = 1"));
  CHECK(
      all_text(read(text), text) ==
      "made-up.toml:14:1: unknown key \"thicknes\" in [crate.body] (unknown-key)\n"
      "    14 | thicknes = 1\n"
      "       | ^^^^^^^^\n"
      "  allowed: outline, depth, cant, load, count, lid, stock, beside, remark, bought, through, "
      "sizes, plan, ledge\n");
}

TEST_CASE("the caret stands inside the text") {
  const std::string text =
      file_with(crate("cant = 3\nsizes = [1, \"width - 2*ovrhang\"]"), "width = 40\noverhang = 1");
  CHECK(all_text(read(text), text) ==
        "made-up.toml:16:24: \"ovrhang\" is no name of [sizes] (unknown-name)\n"
        "    16 | sizes = [1, \"width - 2*ovrhang\"]\n"
        "       |                        ^^^^^^^\n"
        "  allowed: overhang, width\n"
        "  hint: did you mean \"overhang\"?\n");
}

TEST_CASE("a bare number of a millimetre job is millimetres") {
  const auto reading = read(
      "[job]\ntitle='x'\ndate=2026-01-01\nunits='mm'\n[stool.a]\nheight=450\n[stool.b]\nheight='1 "
      "ft'\n");
  REQUIRE(reading.project);
  CHECK(dynamic_cast<const Stool&>(*reading.project->items[0]).height->mm == 450);
  CHECK(dynamic_cast<const Stool&>(*reading.project->items[1]).height->mm == Approx(304.8));
}

TEST_CASE("a byte order mark and carriage returns are no fault") {
  std::string text =
      "\xEF\xBB\xBF[job]\r\ntitle='x'\r\ndate=2026-01-01\r\n[stool.a]\r\nheight=450\r\n";
  CHECK(read(text).project);
  text += "oops = 1\r\n";
  const auto reading = read(text);
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics[0].span == SourceSpan{6, 1, 4});
}

TEST_CASE("several slips of syntax are told together") {
  const std::string text =
      file_with("[crate.body]\ndepth = 17 1/4\nstock = panel\ncant = 12 deg\n");
  const auto reading = read(text);
  REQUIRE(reading.diagnostics.size() == 3);
  CHECK(reading.diagnostics[0].hint == "write depth = \"17 1/4\"");
  CHECK(reading.diagnostics[1].hint == "write stock = \"panel\"");
  CHECK(reading.diagnostics[2].hint == "write cant = \"12 deg\"");
  CHECK(reading.diagnostics[0].span == SourceSpan{11, 9, 6});
}

TEST_CASE("a style is read from the top of its file, in millimetres") {
  const auto good = reading::read_style("wide = 0.7\nnarrow = 0.35\n", "bold");
  REQUIRE(good.style);
  CHECK(good.style->name == "bold");
  CHECK(good.style->wide->mm == 0.7);
  CHECK(good.style->lettering->mm == 2.5);
  const auto bad = reading::read_style("wide = 0.7\nnarow = 0.35\nlettering = 1\n", "bold");
  REQUIRE(bad.diagnostics.size() == 2);
  CHECK(bad.diagnostics[0].hint == "did you mean \"narrow\"?");
  CHECK(bad.diagnostics[1].code == "out-of-range");
}

TEST_CASE("a style says its paper, the pages it leaves out and the files of its signs") {
  constexpr std::array<model::PageKind, 3> kinds{
      {{"labels", ""}, {"checks", "carries cautions"}, {"signs", ""}}};
  const auto good = reading::read_style(
      "paper = 'a3'\nleave_out = ['signs']\n[symbols]\nshop = 'marks/shop.svg'\n", "bold", kinds);
  REQUIRE(good.style);
  CHECK(*good.style->paper == model::PaperSize::a3);
  CHECK(good.style->leaves_out("signs"));
  CHECK_FALSE(good.style->leaves_out("labels"));
  CHECK(*good.style->symbols.shop.file == "marks/shop.svg");
  CHECK_FALSE(good.style->symbols.triangle.file.given);
  const auto bad =
      reading::read_style("leave_out = [\n  'labels',\n  'sings', 'checks',\n]\n", "bold", kinds);
  REQUIRE(bad.diagnostics.size() == 1);  // what the words mean together waits until all are known
  CHECK(bad.diagnostics[0].span == SourceSpan{3, 3, 7});
  CHECK(bad.diagnostics[0].allowed == "labels, checks, signs");
  CHECK(bad.diagnostics[0].hint == "did you mean \"signs\"?");
  const auto kept = reading::read_style("leave_out = ['labels', 'checks']\n", "bold", kinds);
  REQUIRE(kept.diagnostics.size() == 1);
  CHECK(kept.diagnostics[0].span == SourceSpan{1, 24, 8});
  CHECK(kept.diagnostics[0].found == "\"checks\" can't be left out: it carries cautions");
  CHECK(kept.diagnostics[0].allowed == "labels, signs");
}
