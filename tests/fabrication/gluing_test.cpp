// The order of assembly: every joining's straight run is stepped through with moved solids and
// boolean intersections, which share nothing with the planner's separating axes; small cases are
// known from the shape.
#include "fabrication/gluing.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <random>
#include <set>
#include <sstream>

#include "support/chance.h"
#include "support/demos.h"
#include "support/piece.h"

using namespace splay;

namespace {

using fabrication::AssemblyOrder;
using fabrication::Joining;
using fabrication::SweepSolid;

Solid shifted(const Solid& solid, Vec3 by) {
  Rigid motion;
  motion.origin = by;
  return solid.transformed(motion);
}

bool boxes_apart(const Box& a, const Box& b) {
  return a.low.x >= b.high.x || b.low.x >= a.high.x || a.low.y >= b.high.y || b.low.y >= a.high.y ||
         a.low.z >= b.high.z || b.low.z >= a.high.z;
}

// Where `moving`, drawn back against `way` by ever more, first shares wood with `fixed`; "" if
// never.
std::string collision(const parts::Assembly& all, const Joining& joining) {
  const auto part = [&](int i) -> const parts::Part& {
    return all.parts[static_cast<std::size_t>(i)];
  };
  for (const int m : joining.moving) {
    for (const int f : joining.fixed) {
      const Solid& still = part(f).world;
      const auto own = part(m).world.extent(joining.way), other = still.extent(joining.way);
      const double clear = own[1] - other[0];
      double step = 0.25;  // mm, growing to a third of the thinnest usual board
      for (double back = step; back < clear; back += step, step = std::min(6.0, step * 1.5)) {
        const Solid moved = shifted(part(m).world, joining.way * -back);
        if (boxes_apart(moved.bounds(), still.bounds())) continue;
        const double shared = overlap_volume(moved, still);
        if (shared > 0.01)
          return part(m).name + " into " + part(f).name + " at " + std::to_string(back) +
                 " mm: " + std::to_string(shared) + " mm3";
      }
    }
  }
  return "";
}

// Do the joinings put the parts together once each, every group made up before it is used, and is
// every joint but those within a stuck group made exactly once?
void check_order(const parts::Assembly& all, const AssemblyOrder& order) {
  std::set<std::vector<int>> ready;
  for (std::size_t i = 0; i < all.parts.size(); ++i) ready.insert({static_cast<int>(i)});
  // One from before the cuts: whatever holds either holds both.
  for (const parts::Joint& joint : all.joints) {
    if (joint.made != parts::Made::before_cuts) continue;
    std::vector<int> both;
    std::erase_if(ready, [&](const std::vector<int>& group) {
      const bool of_it = std::any_of(joint.between.begin(), joint.between.end(), [&](int part) {
        return std::find(group.begin(), group.end(), part) != group.end();
      });
      if (of_it) both.insert(both.end(), group.begin(), group.end());
      return of_it;
    });
    std::sort(both.begin(), both.end());
    ready.insert(both);
  }
  for (const std::vector<int>& stuck : order.stuck) {
    for (const int part : stuck) ready.erase({part});
    ready.insert(stuck);
  }
  std::multiset<int> made;
  for (const Joining& joining : order.joinings) {
    CHECK(std::abs(norm(joining.way) - 1) < 1e-12);
    REQUIRE(ready.erase(joining.moving) == 1);
    REQUIRE(ready.erase(joining.fixed) == 1);
    std::vector<int> both;
    std::merge(joining.moving.begin(), joining.moving.end(), joining.fixed.begin(),
               joining.fixed.end(), std::back_inserter(both));
    ready.insert(both);
    made.insert(joining.joints.begin(), joining.joints.end());
    CHECK(collision(all, joining) == "");
    for (const parts::Fitting& fitting : all.fittings) {
      if (fitting.kind != "dowel" && fitting.kind != "loose tenon") continue;
      const auto in = [&](const std::vector<int>& group) {
        return std::any_of(fitting.parts.begin(), fitting.parts.end(), [&](int p) {
          return std::find(group.begin(), group.end(), p) != group.end();
        });
      };
      if (in(joining.moving) && in(joining.fixed))
        CHECK(norm(cross(fitting.axis, joining.way)) < 1e-6);
    }
  }
  CHECK(ready.size() == (all.parts.empty() ? 0 : 1));
  CHECK(order.stuck.size() == order.findings.size());
  for (std::size_t j = 0; j < all.joints.size(); ++j) {
    const std::vector<int>& between = all.joints[j].between;
    if (std::set<int>(between.begin(), between.end()).size() < 2) continue;
    const bool within =
        std::any_of(order.stuck.begin(), order.stuck.end(), [&](const std::vector<int>& stuck) {
          return std::all_of(between.begin(), between.end(), [&](int p) {
            return std::find(stuck.begin(), stuck.end(), p) != stuck.end();
          });
        });
    INFO(all.joints[j].name);
    if (all.joints[j].made == parts::Made::before_cuts)
      CHECK(made.count(static_cast<int>(j)) == 0);
    else
      CHECK((within || made.count(static_cast<int>(j)) >= 1));
  }
}

using test::Chance;

std::string random_case(Chance& chance) {
  const double height = chance.between(400, 800);
  std::string text =
      test::job("mm") + test::sheet("panel", chance.mm(15, 22) + " mm") +
      test::sheet("back", "6 mm") + "[case.c]\noutline = { bottom = " + chance.mm(500, 1000) +
      ", height = " + std::to_string(height) + ", lean_in = [" + chance.degrees(-12, 18) + ", " +
      chance.degrees(-12, 18) + "] }\ndepth = " + chance.mm(180, 380) +
      "\nstock = \"panel\"\ncorners = " +
      (chance.between(0, 1) < 0.5 ? "\"mitre\"\n" : "\"butt\"\nthrough = [\"bottom\", \"top\"]\n");
  if (chance.between(0, 1) < 0.5)
    text += "[case.c.back]\nstock = \"back\"\nfit = \"" +
            std::string(chance.between(0, 1) < 0.5 ? "rabbet" : "groove") +
            "\"\ninto = 8\nclearance = 1\n";
  if (chance.between(0, 1) < 0.7)
    text += "[case.c.shelf.a]\ntop_at = " + std::to_string(height * chance.between(0.35, 0.6)) +
            "\nset_back = 5\nends = { housing = 5, floor = \"square to walls\"" +
            (chance.between(0, 1) < 0.5 ? ", stopped = 12" : "") + " }\n";
  return text;
}

std::string random_table(Chance& chance) {
  return test::job("mm") + test::board("leg", "120 mm") + test::board("oak", "20 mm") +
         "[table.t]\nheight = " + chance.mm(380, 780) + "\nwidth = " + chance.mm(600, 1200) +
         "\ndepth = " + chance.mm(450, 800) + "\nsplay = [" + chance.degrees(0, 12) + ", " +
         chance.degrees(0, 12) + "]\n[table.t.leg]\nstock = \"leg\"\nwidth = 45\ndepth = 45\n" +
         "foot_width = 30\ntaper = \"inside\"\n[table.t.apron]\nstock = \"oak\"\nwidth = " +
         chance.mm(50, 90) + "\n";
}

std::string random_ring(Chance& chance) {
  return test::job("mm") + test::sheet("panel", chance.mm(15, 22) + " mm") +
         "[case.r]\noutline = { sides = " +
         std::to_string(static_cast<int>(chance.between(3, 13))) +
         ", across_flats = " + chance.mm(300, 800) + " }\ndepth = " + chance.mm(120, 300) +
         "\nstock = \"panel\"\ncorners = \"mitre\"\n";
}

void assemble_many(unsigned seed, int times, std::string (*write)(Chance&)) {
  Chance chance(seed);
  int complete = 0;
  for (int i = 0; i < times; ++i) {
    const std::string text = write(chance);
    INFO("seed " << seed << ", project " << i << "\n" << text);
    const test::Built built = test::build(text);
    REQUIRE(built.plan.assembly.parts.size() >= 3);
    const AssemblyOrder order = fabrication::order_of_assembly(built.plan.assembly);
    check_order(built.plan.assembly, order);
    complete += order.complete();
  }
  CHECK(complete >= times * 3 / 4);
}

}  // namespace

TEST_CASE("A pin goes into its hole along itself and no other way") {
  // A block 100 x 100 x 50 with a square hole 20 x 20 right through along z, and the pin in it.
  Solid drilled = Solid::box({0, 0, 0}, {100, 100, 50});
  const Solid peg = Solid::box({40, 40, 0}, {60, 60, 50});
  drilled.subtract(peg);
  const SweepSolid pin(peg), block(drilled);
  CHECK_FALSE(fabrication::stands_in_the_way(pin, block, {0, 0, 1}));
  CHECK_FALSE(fabrication::stands_in_the_way(pin, block, {0, 0, -1}));
  CHECK(fabrication::stands_in_the_way(pin, block, {1, 0, 0}));
  CHECK(fabrication::stands_in_the_way(pin, block, {0, -1, 0}));
  // One degree off the hole's own direction is stopped by its wall.
  CHECK(fabrication::stands_in_the_way(pin, block, unit(Vec3{std::tan(0.01745329), 0, 1})));
}

TEST_CASE("A tapered plug leaves by its wide end only, and a far wall is met") {
  const Vec3 slope = unit(Vec3{1, 0, -0.2});  // wider as z grows
  const Region inside{Plane::through({60, 0, 0}, slope),
                      Plane::through({40, 0, 0}, {-slope.x, 0, slope.z})};
  Solid tapered = Solid::box({0, 40, 0}, {100, 60, 50});
  tapered.keep(inside);
  Solid hollowed = Solid::box({0, 0, 0}, {100, 100, 50});
  hollowed.subtract(tapered);
  const SweepSolid plug(tapered), block(hollowed);
  CHECK_FALSE(fabrication::stands_in_the_way(plug, block, {0, 0, 1}));
  CHECK(fabrication::stands_in_the_way(plug, block, {0, 0, -1}));
  const SweepSolid wall(Solid::box({0, 0, 500}, {100, 100, 520}));
  CHECK(fabrication::stands_in_the_way(plug, wall, {0, 0, 1}));
  CHECK_FALSE(fabrication::stands_in_the_way(plug, wall, {0, 0, -1}));
}

TEST_CASE("A box with a loose block inside can't be put together last") {
  parts::Assembly all;
  Solid shell = Solid::box({0, 0, 0}, {100, 100, 100});
  shell.subtract(Solid::box({10, 10, 10}, {90, 90, 90}));
  for (const Solid& solid : {shell, Solid::box({40, 40, 40}, {60, 60, 60})}) {
    parts::Part part;
    part.name = all.parts.empty() ? "shell" : "block";
    part.body = part.world = solid;
    all.parts.push_back(part);
  }
  const AssemblyOrder order = fabrication::order_of_assembly(all);
  REQUIRE(order.findings.size() == 1);
  CHECK(order.findings[0].code == "no-way-in");
  CHECK(order.findings[0].about == std::vector<std::string>{"shell", "block"});
  CHECK_FALSE(order.complete());
}

TEST_CASE("Dowels let a joint come apart along themselves only") {
  parts::Assembly all;
  for (const Solid& solid :
       {Solid::box({0, 0, 0}, {100, 20, 20}), Solid::box({100, 0, 0}, {120, 20, 20})}) {
    parts::Part part;
    part.name = all.parts.empty() ? "rail" : "post";
    part.body = part.world = solid;
    all.parts.push_back(part);
  }
  parts::Fitting dowel;
  dowel.kind = "dowel";
  dowel.at = {80, 10, 10};
  dowel.axis = {1, 0, 0};
  dowel.parts = {0, 1};
  all.fittings.push_back(dowel);
  const AssemblyOrder order = fabrication::order_of_assembly(all);
  REQUIRE(order.joinings.size() == 1);
  CHECK(norm(cross(order.joinings[0].way, dowel.axis)) < 1e-12);
  CHECK(collision(all, order.joinings[0]) == "");
}

TEST_CASE("Every demo has an order of assembly that stepping confirms, or says why not") {
  int demos = 0;
  for (const std::filesystem::path& file : test::demos()) {
    ++demos;
    const test::Built built = test::build(test::text_of(file));
    const AssemblyOrder order = fabrication::order_of_assembly(built.plan.assembly);
    std::string why;
    for (const Finding& finding : order.findings) {
      why += finding.text + " ";
      for (const std::string& part : finding.about) why += part + ", ";
    }
    INFO(file.filename().string() << " " << why);
    check_order(built.plan.assembly, order);
    CHECK(why == "");
    // The one that is printed: what is glued first, then what is fitted to it.
    CHECK(built.plan.glue_up.order.complete());
    check_order(built.plan.assembly, built.plan.glue_up.order);
  }
  CHECK(demos >= 5);
}

TEST_CASE("100 random cases go together as computed") { assemble_many(20261127, 100, random_case); }
TEST_CASE("100 random splayed tables go together as computed") {
  assemble_many(20261128, 100, random_table);
}
TEST_CASE("100 random mitred rings go together as computed") {
  assemble_many(20261129, 100, random_ring);
}
