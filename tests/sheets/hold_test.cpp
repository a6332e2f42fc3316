// The way in on the page: the break of a piece that doesn't pass, and the glue-up that follows it.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "part_pages.h"
#include "writers/report.h"

using namespace splay;

namespace {

test::Built a_table(double door) {
  return test::build(test::job("mm") + test::board("leg", "60 mm") + test::board("oak", "22 mm") +
                     "[room.way.door]\nwidth = " + std::to_string(door) +
                     "\nheight = 1980\n[table.t]\nheight = 740\nwidth = 1000\ndepth = 800\n"
                     "[table.t.leg]\nstock = \"leg\"\nwidth = 50\n[table.t.apron]\nstock = "
                     "\"oak\"\nwidth = 90\n");
}

}  // namespace

TEST_CASE("the break of a piece that doesn't fit through its door is on the page") {
  const test::Built piece = a_table(650);
  REQUIRE(piece.plan.soundness.knock_down.found());
  for (const model::PaperSize paper : {model::PaperSize::a4, model::PaperSize::letter}) {
    const ink::Packet packet = test::binder(piece, paper);
    const auto pages = test::titled(packet, "Hardware, finish, balance");
    CHECK(test::shows(pages, "To be taken apart: a break that passes"));
    for (const fabrication::DryJoint& dry : piece.plan.soundness.knock_down.joints) {
      const auto& joint = piece.plan.assembly.joints[static_cast<std::size_t>(dry.joint)];
      CHECK(test::shows(pages, joint.name));
    }
    CHECK(test::shows(pages, "no glue; a bolt with a cross dowel"));
    // Each piece with its smallest box, as its solids measure, and that it passes.
    for (const fabrication::SubAssembly& part : piece.plan.soundness.knock_down.pieces)
      CHECK(test::shows(pages, piece.project->job.figures().text(part.size.x)));
    CHECK(test::shows(pages, "passes"));
    CHECK(test::page_faults(piece, packet) == "");
  }
}

// Where the whole needs more than the door, each piece of the break passes: by the report alone.
TEST_CASE("the report has the break of a piece that doesn't fit through its door") {
  constexpr double door = 650;
  const test::Built piece = a_table(door);
  const auto report = nlohmann::json::parse(writers::report(piece.plan, nullptr));
  const auto& apart = report.at("soundness").at("knock_down");
  CHECK(apart.at("too_large").empty());
  std::size_t parts = 0;
  for (const auto& each : apart.at("sub_assemblies")) {
    parts += each.at("parts").size();
    std::vector<double> size = each.at("size");
    CHECK(*std::ranges::min_element(size) < door);
  }
  CHECK(parts == piece.plan.assembly.parts.size());
  CHECK(apart.at("dry_joints").size() == piece.plan.soundness.knock_down.joints.size());
  CHECK_FALSE(apart.at("dry_joints").empty());
  const auto whole = nlohmann::json::parse(writers::report(a_table(1200).plan, nullptr));
  CHECK(whole.at("soundness").at("knock_down").is_null());
}

TEST_CASE("no break stands on the page of a piece that passes") {
  const test::Built piece = a_table(1200);
  const ink::Packet packet = test::binder(piece);
  CHECK_FALSE(test::shows(test::titled(packet, "Hardware, finish, balance"), "To be taken apart"));
  CHECK_FALSE(test::shows(test::titled(packet, "Glue-up"), "comes apart"));
}

TEST_CASE("a stage that is joined dry says so, and asks for no clamps and no wait") {
  const test::Built piece = a_table(650);
  const ink::Packet packet = test::binder(piece);
  const auto pages = test::titled(packet, "Glue-up");
  CHECK(test::shows(pages, "(dry: it comes apart again)"));
  CHECK(test::shows(pages, "no glue, no clamps, no wait"));
  CHECK(test::shows(pages, "Left to come apart: mortise and tenon: no glue; a bolt"));
}
