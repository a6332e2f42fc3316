// Slots of a breadboard's outer pins against the movement of the top they hold.
#include "fabrication/soundness.h"
#include "model/movement.h"
#include "support/piece.h"

using namespace splay;
using namespace splay::fabrication;

namespace {

// The humidity at which wood at 21 C comes to a moisture, percent.
double humidity_for(double moisture) {
  double low = 5, high = 95;
  while (high - low > 1e-9) {
    const double middle = (low + high) / 2;
    (model::equilibrium_moisture(middle, 21) < moisture ? low : high) = middle;
  }
  return low;
}

// A flatsawn cherry top 48 by 24, made at 8 % in a room that goes `points` to either side; pins
// 1/4 in thick, three at an end, the outer ones 8 in from the middle.
test::Built top(double points, const std::string& more, const std::string& deep = "24") {
  const std::string room =
      "[room]\ntemperature = 21\nmade_at = " + std::to_string(humidity_for(8)) +
      "\ndriest = " + std::to_string(humidity_for(8 - points)) +
      "\ndampest = " + std::to_string(humidity_for(8 + points)) + "\n";
  return test::build(test::job() + room +
                     "[stock.cherry]\nkind = \"board\"\nthickness = 1\nspecies = \"black "
                     "cherry\"\n[top.t]\nstock = \"cherry\"\noutline = { front = 48, deep = " +
                     deep + " }\nbreadboard = { width = 4" + more + " }\n");
}

constexpr double inch = 25.4;

}  // namespace

// Cherry, 24 in, 4 points: 0.238 in (woodweb.com, "Wood Table End Options"; 0.00248 a point, Wood
// Handbook, Table 13-5). At a pin 8 in from the middle a third of that to either side.
TEST_CASE("slots of breadboard ends are measured against the wood's movement") {
  const test::Built built = top(4, ", movement = 0.238");
  REQUIRE(built.stops().empty());
  REQUIRE(built.plan.soundness.slots.size() == 1);
  const PinSlot& slot = built.plan.soundness.slots.front();
  CHECK(slot.off / inch == Approx(8));
  CHECK(slot.pin / inch == Approx(0.25));
  CHECK(slot.length / inch == Approx(0.25 + 0.238).margin(1e-6));
  CHECK(slot.needs / inch == Approx(0.25 + 2 * 8 * 0.00248 * 4).margin(1e-6));
  CHECK(slot.enough());
  CHECK(top(4, ", movement = 0.15").found("slot-too-short"));
  CHECK_FALSE(top(4, ", movement = 0.17").found("slot-too-short"));
  // Pins nearer the middle or the edge: five at an end stand 9.6 in off.
  const test::Built five = top(4, ", movement = 0.17, pins = 5");
  CHECK(five.found("slot-too-short"));
  CHECK(five.plan.soundness.slots.front().off / inch == Approx(9.6));
}

TEST_CASE("slots that aren't stated follow the wood, at least 1/8 in a foot") {
  const PinSlot plain = top(4, "").plan.soundness.slots.front();
  CHECK(plain.length / inch == Approx(0.25 + 0.25).margin(1e-6));
  const PinSlot wet = top(6, "").plan.soundness.slots.front();
  CHECK(wet.length / inch == Approx(0.25 + 24 * 0.00248 * 6).margin(1e-6));
  CHECK(wet.enough());
  // One pin only is the fixed one: no slot.
  CHECK(top(4, ", pins = 1").plan.soundness.slots.empty());
}

namespace {

// A drawer 16 in deep on runners between two sides of the stock, their grain upright.
test::Built drawer(const std::string& stock) {
  return test::build(
      test::job() + "[room]\ntemperature = 21\nmade_at = " + std::to_string(humidity_for(8)) +
      "\ndriest = " + std::to_string(humidity_for(4)) +
      "\ndampest = " + std::to_string(humidity_for(12)) +
      "\n[stock.cherry]\nkind = \"board\"\nthickness = \"3/4\"\nspecies = \"black cherry\"\n" +
      test::sheet("ply", "3/4") + test::sheet("thin", "1/4") + test::board("box", "1/2") +
      "[case.a]\noutline = { bottom = 24, height = 14 }\ndepth = 18\nstock = \"" + stock +
      "\"\ncorners = \"butt\"\nthrough = [\"left\", \"right\"]\n[drawer.low]\nopening = { bottom = "
      "22.5, height = 12.5 }\nat = [0.75, 0, 0.75]\ndepth = 17\nbeside = [\"a left panel\", \"a "
      "right panel\"]\nbox = { stock = \"box\", bottom = \"thin\", corners = \"dovetail\", lap = "
      "\"1/8\" }\nfront = { stock = \"box\" }\nrunner = { kind = \"side\", length = 16, at = 5 "
      "}\n");
}

}  // namespace

// Cherry over the runner's 16 in: 16 x 0.00248 x 4 = 0.159 in to either side.
TEST_CASE("a runner across the grain of a solid side needs slots") {
  const test::Built solid = drawer("cherry");
  CAPTURE(solid.stops());
  CHECK(solid.stops().empty());
  REQUIRE(solid.found("screws-need-slots"));
  for (const Finding& each : solid.plan.findings)
    if (each.code == "screws-need-slots") {
      CHECK(each.text.find("16 in") != std::string::npos);
      CHECK(each.text.find("5/32 in") != std::string::npos);
      CHECK(each.remedy.find("5/16 in") != std::string::npos);
    }
  CHECK_FALSE(drawer("ply").found("screws-need-slots"));
}

// A top 20 in wide screwed to a batten across it: glued as well it can't move; without glue it is
// held from the first screw to the last.
TEST_CASE("a screwed batten holds a top where its screws are") {
  const auto held = [](int count, const std::string& more) {
    return test::build(test::job() +
                       "[stock.oak]\nkind = \"board\"\nthickness = 1\nspecies = \"white oak\"\n"
                       "[board.top]\nat = [0, 0, 10]\nstock = \"oak\"\nlength = 30\nwidth = "
                       "20\nanchor = \"corner\"\n[board.batten]\nat = [10, 3, 9]\nstock = "
                       "\"oak\"\nwidth = 2\nlength = 15\nturn = \"90 deg\"\n[joint.fixed]\nkind = "
                       "\"screw\"\non = \"touching\"\nhost = \"batten\"\nguest = \"top\"\nlength = "
                       "\"1 1/2\"\ncount = " +
                       std::to_string(count) + "\n" + more);
  };
  const std::string dry = "[glue_up]\nundone = [\"top to batten\"]\n";
  CAPTURE(held(1, dry).stops());
  CHECK(held(1, "").found("held-across-grain"));
  CHECK(held(4, dry).found("held-across-grain"));
  CHECK(held(1, dry).stops().empty());
}
