// The exploded view of what has too many parts for one page.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <map>
#include <set>

#include "ink/lint.h"
#include "sheets/exploded_shares.h"
#include "sheets/kinds.h"
#include "sheets/packet.h"
#include "sheets/part_pages.h"
#include "support/demos.h"
#include "support/piece.h"

namespace {

using namespace splay;

std::string stool_at(const std::string& name, double height, double x) {
  return "[table." + name + "]\nheight = " + std::to_string(height) +
         "\nwidth = 330\ndepth = 250\nsplay = [\"8 deg\", \"6 deg\"]\nat = [" + std::to_string(x) +
         ", 0, 0]\n[table." + name +
         ".leg]\nstock = \"oak\"\nwidth = 40\nfoot_width = 27\nstraight = 75\n[table." + name +
         ".apron]\nstock = \"rail\"\nwidth = 50\n[table." + name +
         ".stretcher.low]\nstock = \"rail\"\nwidth = 26\nat = 150\nsides = [\"left\", \"right\"]\n";
}

// Stools of ten parts, the last two alike.
test::Built room(int stools) {
  std::string text = test::job("mm") + test::board("oak", "40") + test::board("rail", "20");
  for (int i = 0; i < stools; ++i)
    text += stool_at("stool" + std::to_string(i), 430 + std::min(i, stools - 2), 900 * i);
  return test::build(text);
}

std::vector<std::string> balloons(const std::vector<ink::Page>& pages) {
  std::vector<std::string> marks;
  for (const ink::Page& page : pages)
    for (const ink::PartClaim& claim : test::all_of<ink::PartClaim>(page))
      if (claim.what == "balloon") marks.push_back(claim.mark);
  return marks;
}

}  // namespace

TEST_CASE("A room of stools is drawn apart stool by stool, alike ones once, and nothing overlaps") {
  constexpr int stools = 8;
  const test::Built piece = room(stools);
  REQUIRE(piece.stops() == "");
  const sheets::Context context =
      sheets::context_of(piece.plan, model::Style{}, test::fonts(), sheets::Issue{});
  ink::Packet packet;
  packet.pages = sheets::make_exploded(context);
  CHECK(packet.pages.size() == stools - 1);
  const std::vector<std::string> marks = balloons(packet.pages);
  for (const fabrication::PartRow& row : piece.plan.rows)
    CHECK(std::ranges::find(marks, row.mark) != marks.end());
  for (const ink::LintFault& fault : ink::lint(packet, test::fonts(), {}))
    if (fault.rule != "mark-without-row" && fault.rule != "broken-link")
      FAIL_CHECK(fault.page << ": " << fault.rule << ": " << fault.text);
}

TEST_CASE(
    "However few balloons a page takes, each part is drawn apart once and each joint undone") {
  for (const std::filesystem::path& demo : test::demos()) {
    const test::Built piece = test::build(test::text_of(demo));
    for (const std::size_t most : {3U, 8U, 20U}) {
      INFO(demo << ", at most " << most);
      std::map<int, int> single, undone;
      std::set<std::string> named, shown;
      for (const sheets::ExplodedShare& share : sheets::exploded_shares(piece.plan, most)) {
        shown.insert(share.name);
        CHECK(share.blocks.size() <= most);
        for (const int joining : share.joinings) ++undone[joining];
        for (const sheets::ExplodedBlock& block : share.blocks) {
          if (block.parts.size() > 1) named.insert(block.name);
          if (block.parts.size() == 1) ++single[block.parts.front()];
        }
      }
      CHECK(std::ranges::includes(shown, named));
      CHECK(single.size() == piece.plan.assembly.parts.size());
      // What no joint ties stands by itself.
      const auto& joinings = piece.plan.glue_up.order.joinings;
      for (std::size_t j = 0; j < joinings.size(); ++j)
        if (!joinings[j].joints.empty()) CHECK(undone.contains(static_cast<int>(j)));
      for (const auto* counts : {&single, &undone})
        CHECK(std::ranges::all_of(*counts, [](const auto& each) { return each.second == 1; }));
    }
  }
}
