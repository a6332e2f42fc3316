// Edging in the glue-up: on its panel before anything else, as the author says when.
#include <algorithm>

#include "fabrication/glue_up.h"
#include "glue_pieces.h"
#include "support/demos.h"

using namespace splay;
using fabrication::GlueStage;
using fabrication::Joining;

namespace {

// A mitred case with a shelf, all their front edges banded.
std::string banded(const std::string& glued, const std::string& more) {
  const std::string front =
      "front = { edge = \"band\", stock = \"band\", glued = \"" + glued + "\" }\n";
  return test::job("mm") + test::sheet("panel", "18 mm") + test::sheet("band", "1 mm") +
         "[case.c]\noutline = { bottom = 800, height = 600, lean_in = [\"12 deg\", \"0 deg\"] }\n"
         "depth = 300\nstock = \"panel\"\ncorners = \"mitre\"\n" +
         front +
         "[case.c.shelf.a]\ntop_at = 300\nends = { housing = 6, floor = "
         "\"square to walls\" }\n" +
         front + more;
}

std::vector<int> made(const test::Built& built, parts::Made when) {
  std::vector<int> joints;
  const auto& all = built.plan.assembly.joints;
  for (std::size_t j = 0; j < all.size(); ++j)
    if (all[j].made == when) joints.push_back(static_cast<int>(j));
  return joints;
}

bool has(const std::vector<int>& list, int value) {
  return std::ranges::find(list, value) != list.end();
}

// Is one of these joints in a joining or a stage, or do its parts ever move apart?
std::string brought(const test::Built& built, const std::vector<int>& joints) {
  const fabrication::GlueUpPlan& plan = built.plan.glue_up;
  for (const int j : joints) {
    const parts::Joint& joint = built.plan.assembly.joints[static_cast<std::size_t>(j)];
    const int strip = joint.between.front(), panel = joint.between.back();
    for (const Joining& joining : plan.order.joinings)
      if (has(joining.joints, j) || has(joining.moving, strip) != has(joining.moving, panel) ||
          has(joining.fixed, strip) != has(joining.fixed, panel))
        return joint.name + " in a joining";
    for (const GlueStage& stage : plan.stages)
      if (has(stage.joints, j)) return joint.name + " in a stage";
  }
  return "";
}

}  // namespace

// What is glued to a panel before its ends are cut is part of the panel when they are cut, and so
// when it is joined to others. Common practice, no source.
TEST_CASE("Edging from before the cuts is one with its panel in every stage") {
  const test::Built built = test::build(banded("before the cuts", ""));
  CHECK(built.stops() == "");
  const std::vector<int> joints = made(built, parts::Made::before_cuts);
  REQUIRE(joints.size() == 5);
  CHECK(brought(built, joints) == "");
  // Four panels and a shelf: as many joinings as without any band.
  CHECK(built.plan.glue_up.order.joinings.size() == 4);
  CHECK(built.plan.glue_up.order.complete());
}

TEST_CASE("Edging from after the cuts has stages of its own, dry when its panel is brought") {
  const test::Built built = test::build(banded("after the cuts", ""));
  const std::vector<int> joints = made(built, parts::Made::before_assembly);
  REQUIRE(joints.size() == 5);
  std::vector<int> edged;
  std::size_t pieces = 0;
  const std::vector<GlueStage>& stages = built.plan.glue_up.stages;
  for (std::size_t s = 0; s < stages.size(); ++s) {
    const bool edges = has(joints, stages[s].joints.front());
    for (const int joint : stages[s].joints) CHECK(has(joints, joint) == edges);
    if (edges) {
      CHECK(stages[s].glued);
      CHECK(edged.size() == pieces);  // nothing else in between
      edged.insert(edged.end(), stages[s].joints.begin(), stages[s].joints.end());
      pieces += stages[s].pieces.size();
      continue;
    }
    for (const GlueStage& other : stages)
      for (const std::vector<int>& piece : other.pieces)
        if (has(joints, other.joints.front()) && std::ranges::includes(stages[s].parts, piece))
          CHECK(stages[s].starts >= other.frees - 1e-9);
  }
  CHECK(pieces == 5);
  CHECK(edged == joints);
}

TEST_CASE("An author's order brings a panel with its band, or a band when he names it") {
  const std::string panels =
      "[glue_up]\norder = [\"left panel\", \"bottom panel\", \"a shelf\", \"top panel\", "
      "\"right panel\"";
  for (const char* when : {"before the cuts", "after the cuts"}) {
    const test::Built built = test::build(banded(when, panels + "]\n"));
    CHECK_FALSE(built.found("order-closed"));
    const std::vector<Joining>& joinings = built.plan.glue_up.order.joinings;
    REQUIRE(joinings.size() >= 4);
    // The last to come: the right panel with its band.
    std::vector<int> both = joinings.back().moving.size() < joinings.back().fixed.size()
                                ? joinings.back().moving
                                : joinings.back().fixed;
    REQUIRE(both.size() == 2);
    CHECK(built.plan.assembly.parts[static_cast<std::size_t>(both[0])].name == "right panel");
  }
  const test::Built late =
      test::build(banded("after the cuts", panels + ", \"right panel edge band\"]\n"));
  const Joining& last = late.plan.glue_up.order.joinings.back();
  REQUIRE(last.moving.size() == 1);
  CHECK(late.plan.assembly.parts[static_cast<std::size_t>(last.moving[0])].name ==
        "right panel edge band");
  CHECK(last.fixed.size() + 1 == late.plan.assembly.parts.size());
}

TEST_CASE("A shelf that comes apart again keeps its band") {
  const test::Built built =
      test::build(banded("before the cuts", "[glue_up]\nundone = [\"a shelf\"]\n"));
  REQUIRE_FALSE(built.found("undone-unknown"));
  CHECK(brought(built, made(built, parts::Made::before_cuts)) == "");
  for (const int joint : built.plan.glue_up.undone)
    CHECK(built.plan.assembly.joints[static_cast<std::size_t>(joint)].kind == "housing");
}

TEST_CASE("A lipping that is a joint of its own says when it is glued") {
  const auto with = [](const std::string& when) {
    return test::build(test::job("mm") + test::board("oak", "20 mm") +
                       "[board.panel]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 600\n"
                       "width = 200\n"
                       "[board.lip]\nstock = \"oak\"\nlength = 600\nwidth = 12\nat = [0, -12, 0]\n"
                       "[joint.lipping]\nkind = \"glued\"\nhost = \"panel\"\nguest = \"lip\"\n" +
                       when);
  };
  CHECK(with("").plan.glue_up.order.joinings.size() == 1);
  const test::Built before = with("made = \"before the cuts\"\n");
  CHECK(before.plan.glue_up.order.joinings.empty());
  CHECK(brought(before, made(before, parts::Made::before_cuts)) == "");
}

TEST_CASE("No demo brings edging that was there before the cuts") {
  std::size_t found = 0;
  for (const std::filesystem::path& file : test::demos()) {
    const test::Built built = test::build(test::text_of(file));
    INFO(file.filename().string());
    const std::vector<int> joints = made(built, parts::Made::before_cuts);
    CHECK(brought(built, joints) == "");
    found += joints.size();
  }
  CHECK(found >= 6);
}
