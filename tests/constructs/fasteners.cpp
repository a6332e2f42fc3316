// What holds a table's own top: the same fasteners as under a free-standing top.
#include "support/piece.h"

using namespace splay;

namespace {

// A table 40 by 14 under a top of the stock; its aprons all round.
std::string table(const std::string& stock, const std::string& more, const std::string& plan = "") {
  return test::job() + test::board("leg", "3 in") + test::board("oak", "3/4 in") +
         test::sheet("ply", "1/2 in") +
         "[stock.solid]\nkind = \"board\"\nthickness = 1\nspecies = \"white "
         "oak\"\n[table.t]\nheight "
         "= 28\n" +
         (plan.empty() ? "width = 40\ndepth = 14\nsplay = [6, 6]\n" : plan) +
         "[table.t.leg]\nstock = \"leg\"\nwidth = \"1 1/2\"\n[table.t.apron]\nstock = "
         "\"oak\"\nwidth = 3\n[table.t.top]\nstock = \"" +
         stock + "\"\noverhang = 1\n" + more;
}

std::string held(const std::string& apron, const std::string& more = "") {
  return "[table.t.top.fastener.\"" + apron + "\"]\nto = \"" + apron + "\"\n" + more;
}

int joints(const test::Built& built, const std::string& kind) {
  int count = 0;
  for (const fabrication::JointReport& joint : built.plan.joints) {
    CHECK(joint.gap < 1e-6);
    count += joint.kind == kind;
  }
  return count;
}

}  // namespace

// Figure-8s on rails across the grain swing with a top under 18 in (woodcraft.com, "Joinery class:
// attaching tabletops"); on rails along it they can't.
TEST_CASE("a table's top is held by fasteners on its aprons and may move") {
  const test::Built built = test::build(table("solid", held("left apron") + held("right apron")));
  CAPTURE(built.stops());
  REQUIRE(built.stops().empty());
  CHECK(joints(built, "fasteners") == 2);
  CHECK(joints(built, "resting") == 6);  // four legs, two aprons
  CHECK(built.plan.assembly.fittings.size() == 4);
  CHECK_FALSE(built.found("top-lies-loose"));
  CHECK_FALSE(built.found("fastener-too-small"));
  // By themselves they stand at the inside: under the top's own middle side of each apron.
  const double middle = built.part("top").world.centroid().x;
  for (const parts::Fitting& each : built.plan.assembly.fittings) {
    const Box apron =
        built.plan.assembly.parts[static_cast<std::size_t>(each.parts.front())].world.bounds();
    const double outer = each.at.x < middle ? apron.low.x : apron.high.x;
    CHECK(std::abs(each.at.x - outer) > 19.05 / 2);
  }
  CHECK(test::build(table("solid", held("front apron"))).found("fastener-held"));
  CHECK_FALSE(test::build(table("ply", held("front apron"))).found("fastener-held"));
  CHECK_FALSE(
      test::build(table("solid", held("front apron", "type = \"clip\"\n"))).found("fastener-held"));
}

TEST_CASE("fasteners of a table's top that can't be") {
  CHECK(test::build(table("solid", held("middle apron"))).found("unknown-part"));
  CHECK(test::build(table("solid", held("left apron", "count = 20\n"))).found("no-fastener"));
  // Both on the same apron: one joint, named once.
  const test::Built twice = test::build(
      table("solid", held("left apron", "count = 1\n") +
                         "[table.t.top.fastener.more]\nto = \"left apron\"\nface = \"left\"\ncount "
                         "= 2\n"));
  CHECK(twice.stops().empty());
  CHECK(joints(twice, "fasteners") == 1);
}

// The aprons of a ring of legs look every way, and each has an inside.
TEST_CASE("fasteners inside the aprons of a ring of legs") {
  std::string more;
  for (int i = 1; i <= 6; ++i)
    more += held("side " + std::to_string(i) + " apron", "type = \"clip\"\ncount = 1\n");
  const test::Built built = test::build(table("ply", more, "legs = 6\nradius = 14\nlean = 6\n"));
  CAPTURE(built.stops());
  REQUIRE(built.stops().empty());
  CHECK(joints(built, "fasteners") == 6);
  const Vec3 middle = built.part("top").world.centroid();
  for (const parts::Fitting& each : built.plan.assembly.fittings) {
    const Vec3 out = each.at - middle;
    CHECK(dot(each.axis, out) > 0.9 * std::hypot(out.x, out.y));  // into the apron, outwards
  }
}

TEST_CASE("a top that nothing holds is told of") {
  CHECK(test::build(table("solid", "")).found("top-lies-loose"));
  CHECK(test::build(table("ply", "")).found("top-lies-loose"));
  CHECK_FALSE(
      test::build(table("solid", "[hardware.button]\non = [\"top\"]\n")).found("top-lies-loose"));
  CHECK_FALSE(test::build(table("solid", held("left apron"))).found("top-lies-loose"));
}
