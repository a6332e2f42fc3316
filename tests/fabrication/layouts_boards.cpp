// Layouts of boards: kerf and end trims, defects, glue-ups, resawing, rough thickness.
#include <cmath>

#include "fabrication/shop.h"
#include "fabrication/trade_sizes.h"

using namespace splay;
using test::layout;

namespace {

std::string boards(const std::string& rest, const std::string& thickness = "3/4 in") {
  return "[stock.oak]\nkind = \"board\"\nthickness = \"" + thickness + "\"\n" + rest;
}

test::Built made(const std::string& stock, const std::string& items) {
  return test::build(test::bare_job() + stock + items);
}

constexpr double inch = Length::mm_per_inch;

}  // namespace

// sawdustzone.org, an eight-sided planter: eight staves of 8 3/4 in from 72 in. Eight lengths and
// seven kerfs are 70 7/8, with an eighth off each end 71 1/8; at 9 in it would be 72 7/8.
TEST_CASE("eight staves from a six-foot board") {
  const std::string six_foot = "size = [72, 6]\nend_trim = \"1/8 in\"\n";
  const auto staves = [&](const std::string& length) {
    return made(boards(six_foot), test::panels("stave", 8, "oak", length, "6"));
  };
  const test::Built fits = staves("8 3/4");
  CHECK(layout(fits, "oak").bought == 1);
  CHECK_THAT(test::verified(layout(fits, "oak")), Catch::Equals(""));
  double end = 0;
  for (const packing::PlacedPart& part : layout(fits, "oak").sheets[0].parts)
    end = std::max(end, part.x + part.width);
  CHECK(end / inch == Approx(71.125 - 0.125));
  const test::Built longer = staves("9");
  CHECK(layout(longer, "oak").bought == 2);
  CHECK(layout(longer, "oak").bound == 2);
}

// protocolostomy.com, "Heartbreaking screwup": two shelves of 10 5/8 in come from a board of 23 in,
// cut on the right side of the line.
TEST_CASE("two shelves from a short board") {
  const auto on = [](const std::string& length) {
    return made(boards("size = [" + length + ", 8]\nend_trim = 0\n"),
                test::panels("shelf", 2, "oak", "10 5/8", "8"));
  };
  CHECK(layout(on("23"), "oak").bought == 1);
  CHECK(layout(on("21.375"), "oak").bought == 1);  // exactly two and a kerf
  CHECK(layout(on("21.37"), "oak").bought == 2);
}

TEST_CASE("boards on the rack go first, their defects are cut out") {
  const std::string rack =
      "end_trim = \"1/2 in\"\nlengths = [\"96 in\"]\nwidths = [6, 9]\n"
      "[stock.oak.rack.knotty]\nlength = 84\nwidth = 7\ndefects = [20, 24, 50, 51]\n"
      "[stock.oak.rack.clear]\nlength = 60\nwidth = 6\ncount = 2\n";
  const test::Built piece = made(boards(rack), test::panels("rail", 6, "oak", "28 1/2", "5 1/2"));
  const fabrication::StockLayout& used = layout(piece, "oak");
  CHECK_THAT(test::verified(used), Catch::Equals(""));
  CHECK(used.on_hand == 3);
  CHECK(used.bought == 1);
  int pieces = 0;
  bool knotty = false;
  for (const fabrication::CutSheet& each : used.sheets) {
    pieces += each.count * static_cast<int>(each.parts.size());
    const bool here = used.supplies[each.supply].name == "knotty";
    knotty = knotty || here;
    for (const packing::PlacedPart& part : each.parts) {
      CHECK(part.y + part.height <= used.supplies[each.supply].width + 1e-6);
      CHECK(part.x >= 0.5 * inch - 1e-6);
      if (!here) continue;
      for (const auto& [from, to] : {std::pair{20.0, 24.0}, std::pair{50.0, 51.0}})
        CHECK((part.x + part.width <= from * inch + 1e-6 || part.x >= to * inch - 1e-6));
    }
  }
  CHECK(knotty);
  CHECK(pieces == 6);
}

TEST_CASE("a board with defects is cut as its drawing says") {
  const std::string rack =
      "end_trim = 1\nsize = [20, 6]\n"
      "[stock.oak.rack.knotty]\nlength = 84\nwidth = 7\ndefects = [30, 33]\n";
  const test::Built piece = made(boards(rack), test::panels("rail", 3, "oak", "25", "3"));
  // Only the knotty board is long enough: one stretch of 1 to 30, one of 33 to 83.
  CHECK(layout(piece, "oak").plan.unplaced.empty());
  REQUIRE(layout(piece, "oak").sheets.size() == 1);
  const fabrication::CutSheet& board = layout(piece, "oak").sheets[0];
  // Made one after the other, the cuts free every part: a plain second witness in two dimensions.
  struct Region {
    double x, y, w, h;
  };
  std::vector<Region> regions = {{0, 0, 84 * inch, 7 * inch}};
  const double kerf = inch / 8;
  for (const packing::SheetCut& cut : board.cuts) {
    bool done = false;
    for (std::size_t i = 0; i < regions.size() && !done; ++i) {
      Region& r = regions[i];
      const bool across = cut.axis == packing::Axis::x;
      const double from = across ? r.y : r.x, to = from + (across ? r.h : r.w);
      const double begin = across ? r.x : r.y, end = begin + (across ? r.w : r.h);
      if (std::abs(from - cut.from) > 0.01 || std::abs(to - cut.to) > 0.01) continue;
      if (cut.at < begin - kerf || cut.at > end) continue;
      Region far = r;
      (across ? r.w : r.h) = cut.at - begin;
      (across ? far.x : far.y) = cut.at + kerf;
      (across ? far.w : far.h) = end - cut.at - kerf;
      regions.push_back(far);
      done = true;
    }
    CHECK(done);
  }
  for (const packing::PlacedPart& part : board.parts)
    CHECK(std::any_of(regions.begin(), regions.end(), [&](const Region& r) {
      return std::abs(r.x - part.x) < 0.01 && std::abs(r.y - part.y) < 0.01 &&
             std::abs(r.w - part.width) < 0.01 && std::abs(r.h - part.height) < 0.01;
    }));
  REQUIRE(board.defects.size() == 3);  // both ends and the knot
}

TEST_CASE("a wide panel is glued up from strips as wide as the boards give") {
  // 20 in from boards of 6: three strips of 20/3 + 1/4 are 6.92, four of 5.25 fit.
  const test::Built piece = made(boards("size = [96, 6]\nend_trim = 1\njointing = \"1/4 in\"\n"),
                                 test::panels("top", 2, "oak", "40", "20"));
  const fabrication::StockLayout& used = layout(piece, "oak");
  REQUIRE(used.wanted.size() == 1);
  CHECK(used.wanted[0].strips == 4);
  CHECK(used.task.parts[0].height / inch == Approx(5.25));
  CHECK(used.task.parts[0].count == 8);
  CHECK(used.bought == 4);  // two of 40 from each 96
  CHECK(used.bound == 4);
  CHECK_THAT(test::said(piece, "glued-up"), Catch::Contains("4 strips"));
  CHECK_THAT(test::verified(used), Catch::Equals(""));
}

TEST_CASE("parts glued up from as many strips share a note") {
  const test::Built piece =
      made(boards("size = [96, 6]\nend_trim = 1\njointing = \"1/4 in\"\n"),
           test::panels("top", 1, "oak", "40", "20") + test::panels("side", 1, "oak", "30", "20") +
               test::panels("shelf", 1, "oak", "30", "10"));
  std::size_t notes = 0;
  for (const Finding& finding : piece.plan.findings)
    if (finding.code == "glued-up") {
      ++notes;
      const bool both = finding.text.find("each is glued up from 4") != std::string::npos;
      CHECK(finding.about.size() == (both ? 2 : 1));
    }
  CHECK(notes == 2);
}

// Boards differ in colour: what is to look alike comes from one board, though others have room.
TEST_CASE("parts named as a match come from one board") {
  const std::string racks =
      "[stock.oak.rack.first]\nlength = 40\nwidth = 6\n"
      "[stock.oak.rack.second]\nlength = 62\nwidth = 6\n";
  const std::string match =
      "[stock.oak.match.fronts]\nparts = [\"front1\", \"front2\", \"front3\"]\n"
      "run = \"end to end\"\n";
  const test::Built piece =
      made(boards("end_trim = \"1/2 in\"\n" + racks + match),
           test::panels("rail", 1, "oak", "36", "5") + test::panels("front", 3, "oak", "18", "5"));
  const fabrication::StockLayout& used = layout(piece, "oak");
  REQUIRE(used.task.sequences.size() == 1);
  CHECK(used.task.sequences[0].axis == packing::Axis::x);
  CHECK_THAT(test::verified(used), Catch::Equals(""));
  CHECK_FALSE(piece.found("match-broken"));
  const auto parts_of = [&](const std::string& board) {
    std::size_t parts = 0;
    for (const fabrication::CutSheet& each : used.sheets)
      if (used.supplies[each.supply].name == board) parts += each.parts.size();
    return parts;
  };
  CHECK(parts_of("second") == 3);
  CHECK(parts_of("first") == 1);
}

TEST_CASE("thin parts are resawn from thick stock") {
  // 1 7/8 rough: two of 5/8 + 3/16 and a kerf are 1 3/4; three would be 2 11/16.
  const std::string rough =
      "size = [96, 6]\nend_trim = 1\nrough = \"1 7/8 in\"\nplaning = \"3/16 in\"\n";
  const test::Built piece =
      made(boards(rough, "1 3/4 in"),
           test::panels("slat", 5, "oak", "30", "5", "thickness = \"5/8\"\n"));
  const fabrication::StockLayout& used = layout(piece, "oak");
  CHECK(used.wanted[0].layers == 2);
  CHECK(used.task.parts[0].count == 3);  // five slats from three pieces
  CHECK_FALSE(piece.found("thin-rough-stock"));
  const test::Built thick = made(boards(rough, "1 3/4 in"), test::panels("leg", 5, "oak", "30", "5",
                                                                         "thickness = \"1 in\"\n"));
  CHECK(layout(thick, "oak").wanted[0].layers == 1);
  CHECK(layout(thick, "oak").task.parts[0].count == 5);
}

// woodweb.com knowledge base, "Rough-sawn thickness versus planed thickness": boards of 7/8 in as
// dried do not clean up at 3/4 in when 1/4 in goes in planing.
TEST_CASE("rough stock too thin for its part is a caution before it is bought") {
  const auto from = [](const std::string& rough, const std::string& planing) {
    return made(boards("rough = \"" + rough + "\"\nplaning = \"" + planing + "\"\n"),
                test::panels("rail", 1, "oak", "30", "3"));
  };
  const test::Built thin = from("7/8 in", "1/4 in");
  CHECK_THAT(test::said(thin, "thin-rough-stock"), Catch::Contains("wants 1 in"));
  CHECK_FALSE(thin.plan.stopped());
  CHECK_FALSE(from("1 in", "1/4 in").found("thin-rough-stock"));
  CHECK_FALSE(from("15/16 in", "3/16 in").found("thin-rough-stock"));
}

// NHLA rules as quoted by a wood scientist (4/4, 5/4) and by lumber sellers: least dry rough
// thickness, inches.
TEST_CASE("dry rough thicknesses of hardwood lumber") {
  const double table[][2] = {{1, 15.0 / 16}, {1.25, 1.1875}, {1.5, 1.4375},
                             {2, 1.9375},    {2.5, 2.4375},  {3, 2.9375}};
  for (const auto& [named, least] : table)
    CHECK(fabrication::least_dry_rough(named * inch) / inch == Approx(least));
  const auto sold = [](const std::string& rough) {
    return made(boards("sold_as = \"5/4 in\"\nrough = \"" + rough + "\"\n"),
                test::panels("rail", 1, "oak", "30", "3"));
  };
  CHECK_FALSE(sold("1 3/16 in").found("off-its-name"));
  CHECK(sold("1 1/8 in").found("off-its-name"));
}

TEST_CASE("boards that nobody named are bought to suit the longest part") {
  const test::Built usual = made(boards(""), test::panels("rail", 1, "oak", "30", "3"));
  CHECK(layout(usual, "oak").task.sheets[0].width / inch == Approx(96));
  CHECK_FALSE(layout(usual, "oak").boards_named);
  const test::Built longer =
      made(boards("end_trim = 2\n"), test::panels("rail", 1, "oak", "118", "3"));
  CHECK(layout(longer, "oak").task.sheets[0].width / inch == Approx(132));  // 122 in, whole feet
  CHECK(layout(longer, "oak").plan.unplaced.empty());
  const test::Built named = made(boards("lengths = [\"8 ft\"]\nend_trim = 0\n"),
                                 test::panels("rail", 1, "oak", "118", "3"));
  CHECK(named.found("fits-no-stock"));
}

TEST_CASE("a wide board on the rack is used whole, and never counted on twice") {
  const std::string rack =
      "lengths = [96]\nwidths = [5, 9]\njointing = \"1/4 in\"\nend_trim = 1\n"
      "[stock.oak.rack.wide]\nlength = 50\nwidth = 12\n";
  const test::Built one = made(boards(rack), test::panels("top", 1, "oak", "40", "11"));
  CHECK(layout(one, "oak").wanted[0].strips == 1);
  CHECK(layout(one, "oak").on_hand == 1);
  CHECK(layout(one, "oak").bought == 0);
  // Two such tops: one wide board is not enough, so that both are glued up from what the yard has.
  const test::Built two = made(boards(rack), test::panels("top", 2, "oak", "40", "11"));
  CHECK_FALSE(two.plan.stopped());
  CHECK(layout(two, "oak").wanted[0].strips == 3);
  CHECK_THAT(test::verified(layout(two, "oak")), Catch::Equals(""));
}

TEST_CASE("a clear stretch that is not used goes back to the rack") {
  const std::string rack =
      "end_trim = 1\nsize = [20, 6]\n"
      "[stock.oak.rack.knotty]\nlength = 84\nwidth = 7\ndefects = [30, 33]\n";
  const test::Built piece = made(boards(rack), test::panels("rail", 1, "oak", "25", "3"));
  REQUIRE(layout(piece, "oak").sheets.size() == 1);
  const fabrication::CutSheet& board = layout(piece, "oak").sheets[0];
  REQUIRE(board.parts.size() == 1);
  double kept = 0;
  for (const fabrication::Leftover& left : board.off_cuts) kept = std::max(kept, left.place.width);
  // Either stretch may have been taken: 1 to 30, or 33 to 83 of 84.
  CHECK(kept >= 29 * inch);
  for (const packing::OffCut& defect : board.defects) CHECK(defect.width < 5 * inch);
}
