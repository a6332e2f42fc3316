// What small errors of the settings make of the last joint of a ring.
#include <cmath>

#include "fabrication/steps_check.h"

using namespace splay;
using test::degrees;

namespace {

test::Built ring(int sides, const std::string& saw) {
  return test::build(test::job("mm") + "[shop.saw]\n" + saw + test::sheet("panel", "18 mm") +
                     "[case.ring]\noutline = { sides = " + std::to_string(sides) +
                     ", across_flats = 600 }\ndepth = 200\nstock = \"panel\"\n"
                     "corners = \"mitre\"\n");
}

bool warns(const test::Built& built) {
  return built.found("ring-settings") || built.found("ring-open");
}

}  // namespace

// https://www.woodmagazine.com/woodworking-how-to/joinery/miters/how-to-close-a-miter-gap and
// https://farrcraft.com/on-making/viii-compounding-errors/ : four corners, eight cuts a quarter
// degree off each, are 2 degrees at the last joint; an octagon counts a change sixteen times.
TEST_CASE("an upright ring adds up the error of two cuts for each joint") {
  for (const int sides : {4, 6, 8, 12}) {
    const test::Built built = ring(sides, "");
    REQUIRE(built.plan.chains.size() == 1);
    const fabrication::ChainReport& chain = built.plan.chains.front();
    CHECK(chain.cuts == 2 * sides);
    CHECK(degrees(chain.turn) == Approx(2 * sides * 0.1).epsilon(1e-4));
    // The joint opens over its own width, the thickness over the cosine of the mitre.
    const double width = 18 / std::cos(3.14159265358979 / sides);
    CHECK(chain.gap_per_tenth == Approx(chain.turn * width).epsilon(0.01));
    CHECK(chain.tolerance * chain.gap_per_tenth / Angle::degrees(0.1).rad == Approx(0.5));
  }
}

TEST_CASE("a scale of half degrees is too coarse for six sides and more") {
  for (const int sides : {6, 8, 12}) CHECK(warns(ring(sides, "reads_to = \"0.5 deg\"\n")));
  CHECK_FALSE(warns(ring(6, "reads_to = \"0.1 deg\"\n")));
}

// Seven sides: 180/7 is 25.714 degrees, which no scale of half degrees has: printed 25.5, it is
// 0.214 off at each of 14 cuts, 3 degrees in all.
TEST_CASE("an angle the scale does not have opens the ring as printed") {
  const test::Built built = ring(7, "reads_to = \"0.5 deg\"\n");
  REQUIRE(built.plan.chains.size() == 1);
  const double turn = Angle::degrees(14 * (180.0 / 7 - 25.5)).rad;
  const double width = 18 / std::cos(3.14159265358979 / 7);
  CHECK(built.plan.chains.front().gap_printed == Approx(turn * width).epsilon(0.02));
  CHECK(built.found("ring-open"));
}
