// Joints that come apart again: made up without glue and clamps when what they join is dry, and
// where a piece doesn't pass its way whole, so are those of the break.
#include <algorithm>

#include "fabrication/glue_up.h"
#include "fabrication/hardware.h"
#include "support/piece.h"

using namespace splay;
using fabrication::Bond;
using fabrication::GlueStage;
using fabrication::Joining;

namespace {

// A table whose long rails are 1000 over the legs and whose short ones are 800.
std::string a_table(const std::string& more) {
  return test::job("mm") + test::board("leg", "60 mm") + test::board("oak", "22 mm") +
         "[table.t]\nheight = 740\nwidth = 1000\ndepth = 800\n[table.t.leg]\nstock = "
         "\"leg\"\nwidth = 50\n[table.t.apron]\nstock = \"oak\"\nwidth = 90\n" +
         more;
}

std::string names_of(const test::Built& built, const std::vector<int>& parts) {
  std::string names;
  for (const int part : parts)
    names += built.plan.assembly.parts[static_cast<std::size_t>(part)].name + ", ";
  return names;
}

// Told from the stages alone: which joints are undone never has glue, clamps or time to cure, and
// everything glued is made before the piece that it belongs to is joined dry.
void check_undone(const test::Built& built, const std::vector<int>& undone) {
  const fabrication::GlueUpPlan& glue_up = built.plan.glue_up;
  CHECK(glue_up.undone == undone);
  std::vector<int> seen;
  bool dry_yet = false;
  for (const GlueStage& stage : glue_up.stages) {
    INFO(names_of(built, stage.parts));
    const bool any = std::ranges::any_of(
        stage.joints, [&](int joint) { return std::ranges::binary_search(undone, joint); });
    CHECK(stage.undone == any);
    if (!any) {
      // No glue after the first joint was drawn home dry.
      CHECK((!dry_yet || !stage.glued));
      continue;
    }
    dry_yet = true;
    CHECK_FALSE(stage.glued);
    CHECK(stage.clampings.empty());
    CHECK(stage.cure == 0);
    CHECK(stage.spreading == 0);
    CHECK(stage.frees == Approx(stage.starts + stage.minutes));
    for (const int need : stage.needs)
      CHECK(glue_up.stages[static_cast<std::size_t>(need)].frees <= stage.starts + 1e-9);
    for (const int joint : stage.joints) {
      CHECK(fabrication::bond_of(built.plan, joint) == Bond::undone);
      seen.push_back(joint);
    }
  }
  std::ranges::sort(seen);
  CHECK(seen == undone);
}

std::vector<int> joints_named(const test::Built& built, const std::string& part) {
  std::vector<int> found;
  const auto& all = built.plan.assembly;
  for (std::size_t j = 0; j < all.joints.size(); ++j)
    for (const int p : all.joints[j].between)
      if (all.parts[static_cast<std::size_t>(p)].name == part) found.push_back(static_cast<int>(j));
  return found;
}

}  // namespace

TEST_CASE("Rails that are bolted to their legs are drawn home dry, when the leg frames are glued") {
  const test::Built built =
      test::build(a_table("[glue_up]\nundone = [\"front apron\", \"back apron\"]\n"));
  INFO(built.stops());
  REQUIRE_FALSE(built.found("undone-unknown"));
  std::vector<int> undone = joints_named(built, "front apron");
  for (const int joint : joints_named(built, "back apron")) undone.push_back(joint);
  std::ranges::sort(undone);
  REQUIRE(undone.size() == 4);
  check_undone(built, undone);
  // Two leg frames are glued, each of two legs and a rail.
  int frames = 0;
  for (const GlueStage& stage : built.plan.glue_up.stages)
    frames += stage.glued && stage.parts.size() == 3;
  CHECK(frames == 2);
  // The surfaces of four tenons less are spread.
  const test::Built glued = test::build(a_table(""));
  CHECK(glued.plan.glue_up.undone.empty());
  CHECK(fabrication::glued_area(built.plan) == Approx(fabrication::glued_area(glued.plan) / 2));
}

TEST_CASE("A joint is named by itself, by its two parts, or not at all") {
  const test::Built one =
      test::build(a_table("[glue_up]\nundone = [\"front apron to left front leg\"]\n"));
  std::string names;
  for (const parts::Joint& joint : one.plan.assembly.joints) names += joint.name + "; ";
  INFO(names);
  REQUIRE(one.plan.glue_up.undone.size() == 1);
  const std::string own =
      one.plan.assembly.joints[static_cast<std::size_t>(one.plan.glue_up.undone[0])].name;
  CHECK(test::build(a_table("[glue_up]\nundone = [\"" + own + "\"]\n")).plan.glue_up.undone ==
        one.plan.glue_up.undone);
  CHECK(test::build(a_table("[glue_up]\nundone = [\"left front leg to front apron\"]\n"))
            .plan.glue_up.undone == one.plan.glue_up.undone);
  const test::Built none = test::build(a_table("[glue_up]\nundone = [\"the moon\"]\n"));
  CHECK(none.found("undone-unknown"));
  CHECK(none.plan.glue_up.undone.empty());
}

TEST_CASE("The break of a piece that doesn't pass is joined dry, and no glue after it") {
  const test::Built built = test::build(a_table("[room.way.door]\nwidth = 650\nheight = 1980\n"));
  INFO(built.stops());
  const fabrication::KnockDown& apart = built.plan.soundness.knock_down;
  REQUIRE(apart.found());
  std::vector<int> undone;
  for (const fabrication::DryJoint& dry : apart.joints) undone.push_back(dry.joint);
  REQUIRE(undone.size() == 4);
  check_undone(built, undone);
  // What is made up with glue is what is carried in.
  for (const fabrication::SubAssembly& piece : apart.pieces) {
    if (piece.parts.size() < 2) continue;
    const bool made = std::ranges::any_of(built.plan.glue_up.stages, [&](const GlueStage& stage) {
      return stage.glued && stage.parts == piece.parts;
    });
    INFO(names_of(built, piece.parts));
    CHECK(made);
  }
}

TEST_CASE("What an author takes apart anyway is where the break goes") {
  // By itself the break leaves the rails of one direction dry; asked for the others, it takes
  // those.
  const test::Built asked =
      test::build(a_table("[glue_up]\nundone = [\"left apron\", \"right apron\"]\n" +
                          std::string("[room.way.door]\nwidth = 500\nheight = 1980\n")));
  INFO(asked.stops());
  std::vector<int> undone = joints_named(asked, "left apron");
  for (const int joint : joints_named(asked, "right apron")) undone.push_back(joint);
  std::ranges::sort(undone);
  REQUIRE(asked.plan.soundness.knock_down.found());
  std::vector<int> dry;
  for (const fabrication::DryJoint& each : asked.plan.soundness.knock_down.joints)
    dry.push_back(each.joint);
  CHECK(dry == undone);
  check_undone(asked, undone);
}

TEST_CASE("A back that would have to come into grooves all round closed before is told") {
  const std::string shut =
      test::job("mm") + test::sheet("panel", "18 mm") +
      "[case.c]\noutline = { bottom = 800, height = 600 }\ndepth = 300\n"
      "stock = \"panel\"\ncorners = \"mitre\"\n"
      "[case.c.back]\nstock = \"panel\"\nfit = \"groove\"\ninto = 6\nset_in = 12\n";
  CHECK_FALSE(test::build(shut).found("undone-closed"));
  const test::Built built = test::build(shut + "[glue_up]\nundone = [\"back\"]\n");
  INFO(built.stops());
  CHECK(built.found("undone-closed"));
  CHECK(built.plan.glue_up.order.complete());
}
