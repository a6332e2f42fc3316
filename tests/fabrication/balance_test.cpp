// Drawers that open or don't, what they weigh when they are open and full, and what holds a piece
// that tips: plain vectors as the second witness.
#include <cmath>

#include "fabrication/soundness.h"
#include "support/piece.h"

using namespace splay;
using namespace splay::fabrication;

namespace {

// A drawer by itself: an opening `wide` by `high` with an inset front of maple, and whatever else.
std::string drawer(double wide, const std::string& high, const std::string& more = "") {
  return test::job() + test::sheet("ply", "1/2") +
         "[stock.maple]\nkind = \"board\"\nthickness = \"3/4\"\nspecies = \"sugar maple\"\n"
         "[drawer.d]\nopening = { bottom = " +
         std::to_string(wide) + ", height = \"" + high +
         "\" }\ndepth = 20\nbox = { stock = \"ply\", bottom = \"ply\", height = 3 }\nrunner = { "
         "kind = \"side\", length = 18, at = 2, height = 1 }\n"
         "front = { stock = \"maple\", gap = \"1/16\" }\n" +
         more;
}

}  // namespace

TEST_CASE("a drawer that cannot come out is found") {
  const test::Built free = test::build(drawer(20, "6"));
  CHECK_FALSE(free.found("drawer-cannot-open"));
  REQUIRE(free.plan.soundness.openings.size() == 1);
  CHECK(free.plan.soundness.openings[0].opens == Approx(18 * 25.4));
  CHECK(free.plan.soundness.openings[0].touches.empty());
  // A board across the way, its back 5 in before the front's face at y = 0.
  const test::Built barred = test::build(
      drawer(20, "6",
             "[board.bar]\nat = [0, -7, 3]\nstock = \"maple\"\nlength = 20\nwidth = 2\nanchor = "
             "\"corner\"\n"));
  CHECK(barred.found("drawer-cannot-open"));
  REQUIRE(barred.plan.soundness.openings.size() == 1);
  CHECK(barred.plan.soundness.openings[0].opens == Approx(5 * 25.4).margin(0.02));
  CHECK(barred.plan.soundness.openings[0].touches == "bar");
}

// A leaf hung inside its case and opened to 90 degrees stands in the opening by its own thickness.
TEST_CASE("a drawer behind a door that opens to a right angle only") {
  const std::string text =
      test::job("mm") + test::sheet("ply", "18 mm") +
      "[case.body]\noutline = { bottom = 500, height = 400 }\ndepth = 400\nstock = \"ply\"\n"
      "[door.leaf]\nof = \"body\"\nhung = \"right\"\nslab = { stock = \"ply\" }\n"
      "[drawer.d]\nopening = { bottom = 460, height = 150 }\nat = [20, 30, 30]\ndepth = 350\n"
      "box = { stock = \"ply\", bottom = \"ply\" }\n"
      "runner = { kind = \"side\", length = 300, height = 45 }\n"
      "front = { stock = \"ply\", gap = 3 }\n";
  const test::Built built = test::build(text);
  CHECK(built.found("drawer-meets-door"));
  CHECK_FALSE(built.found("drawer-cannot-open"));
}

// Plain vectors as the second witness: what slides takes its share of the centre along.
TEST_CASE("balance with a drawer open") {
  const test::Built built = test::build(drawer(20, "6"));
  REQUIRE(built.plan.soundness.balances.size() == 3);
  const Balance& shut = built.plan.soundness.balances[0];
  const Balance& open = built.plan.soundness.balances[1];
  REQUIRE(built.plan.assembly.slides.size() == 1);
  double sliding = 0;
  for (const int part : built.plan.assembly.slides[0].parts)
    sliding +=
        built.plan
            .rows[static_cast<std::size_t>(built.plan.row_of_part[static_cast<std::size_t>(part)])]
            .mass;
  CHECK(open.mass == Approx(shut.mass));
  CHECK(shut.centre.y - open.centre.y == Approx(sliding / shut.mass * 18 * 25.4));
  CHECK(open.centre.z == Approx(shut.centre.z));
  // The author says what may stand open: nothing of that name, nothing moves.
  const test::Built kept = test::build(drawer(20, "6", "[room]\nopen = [\"other\"]\n"));
  CHECK(kept.plan.soundness.balances[1].centre.y == Approx(shut.centre.y));
}

// cpsc.gov, "Clothing Storage Units" (16 CFR 1261): the room of a drawer is its width by its depth
// by the height from its bottom to 1/8 in under what is over it. The box is 19 wide outside (20
// less 1/2 for either runner), 18 deep and 1/2 in thick all round, its bottom held in grooves;
// nothing is over it, so that its own sides end it.
TEST_CASE("full drawers weigh on the balance") {
  const test::Built built = test::build(drawer(20, "6"));
  REQUIRE(built.plan.soundness.loads.size() == 1);
  const DrawerLoad& load = built.plan.soundness.loads[0];
  CHECK(load.mass == Approx(load.volume * 1e-9 * 136));
  // Plain figures from the parts' boxes as the second witness.
  Box bottom;
  for (const int index : built.plan.assembly.slides[0].parts) {
    const parts::Part& part = built.plan.assembly.parts[static_cast<std::size_t>(index)];
    const Box box = part.world.bounds();
    if (std::abs(part.place.ez.z) > 0.9) bottom = box;
  }
  double inner_left = -1e300, inner_right = 1e300, inner_front = -1e300, inner_back = 1e300,
         top = 1e300;
  for (const int index : built.plan.assembly.slides[0].parts) {
    const parts::Part& part = built.plan.assembly.parts[static_cast<std::size_t>(index)];
    if (std::abs(part.place.ez.z) > 0.9) continue;
    const Box box = part.world.bounds();
    top = std::min(top, box.high.z);
    const Vec3 middle = (box.low + box.high) * 0.5, size = box.size();
    if (size.y > size.x) {
      if (middle.x < (bottom.low.x + bottom.high.x) / 2)
        inner_left = std::max(inner_left, box.high.x);
      else
        inner_right = std::min(inner_right, box.low.x);
    } else if (middle.y < (bottom.low.y + bottom.high.y) / 2) {
      inner_front = std::max(inner_front, box.high.y);
    } else {
      inner_back = std::min(inner_back, box.low.y);
    }
  }
  const double inside =
      (inner_right - inner_left) *
      (std::min(inner_back, bottom.high.y) - std::max(inner_front, bottom.low.y)) *
      (top - 25.4 / 8 - bottom.high.z);
  CHECK(load.volume == Approx(inside).epsilon(1e-9));
  // Its load is carried out with it.
  const Balance& open = built.plan.soundness.balances[1];
  const Balance& full = built.plan.soundness.balances[2];
  CHECK(full.loaded);
  CHECK(full.mass == Approx(open.mass + load.mass));
  const double out = load.centre.y - 18 * 25.4;
  CHECK(full.centre.y == Approx((open.centre.y * open.mass + out * load.mass) / full.mass));
  const test::Built heavy = test::build(drawer(20, "6", "[room]\ndrawer_load = 700\n"));
  CHECK(heavy.plan.soundness.loads[0].mass == Approx(load.mass * 700 / 136));
}

// With a lid 5 in over the opening's foot the room ends 1/8 in under it, and not at the box's
// sides, 3 in high.
TEST_CASE("what is over a drawer ends its room") {
  const test::Built free = test::build(drawer(20, "6"));
  const test::Built under = test::build(
      drawer(20, "6",
             "[board.lid]\nat = [0, 1, 5]\nstock = \"maple\"\nlength = 20\nwidth = 12\nanchor = "
             "\"corner\"\n"));
  REQUIRE(under.plan.soundness.loads.size() == 1);
  const parts::Part& bottom = under.part("d bottom");
  const Box box = bottom.world.bounds();
  const double most = box.size().x * box.size().y * ((5 - 1.0 / 8) * 25.4 - box.high.z);
  CHECK(under.plan.soundness.loads[0].volume < most);
  CHECK(under.plan.soundness.loads[0].volume > 0.9 * most);
  CHECK(free.plan.soundness.loads[0].volume < 0.7 * most);
}

// rpwoodwork.com, "It's August: are your drawers up too high?" (2012): a 4 in flatsawn maple front
// fitted at 35 % humidity swells about 1/8 in by 80 %.
TEST_CASE("the gap over a drawer front is judged by its height, wood and season") {
  const auto fitted = [](const std::string& room) {
    return test::build(
        drawer(20, "4 1/8",
               "[room]\nmade_at = 35\ndriest = 35\ndampest = " + room + "\n" +
                   "[shop]\naccuracy = \"0.001\"\n" +
                   "[board.sill]\nat = [0, 0, \"-3/4 in\"]\nstock = \"maple\"\nlength = "
                   "20\nwidth = 2\nanchor = \"corner\"\n[board.lintel]\nat = [0, 0, \"4 1/8 "
                   "in\"]\nstock = \"maple\"\nlength = 20\nwidth = 2\nanchor = \"corner\"\n"));
  };
  const test::Built summer = fitted("80");
  const auto up = [](const test::Built& built) {
    for (const Play& play : built.plan.soundness.plays)
      if (play.way == "up") return play;
    FAIL("no play upwards");
    return Play{};
  };
  CHECK(up(summer).gaps == Approx(25.4 / 8));
  CHECK(up(summer).swells == Approx(0.128 * 25.4).margin(0.03));
  CHECK(summer.found("play-too-small"));
  const test::Built mild = fitted("50");
  CHECK(up(mild).enough());
  CHECK_FALSE(mild.found("play-too-small"));
}

TEST_CASE("a wall anchor in the file answers the caution that a piece tips") {
  // 120 deep and 1500 high: its middle is over its front edge when it is tipped by some 4.6
  // degrees.
  const auto level = [](const std::string& more) {
    const test::Built built =
        test::build(test::job("mm") + test::sheet("panel", "18 mm") +
                    "[case.c]\noutline = { bottom = 600, height = 1500 }\ndepth = 120\n"
                    "stock = \"panel\"\ncorners = \"mitre\"\n" +
                    more);
    for (const Finding& finding : built.plan.findings)
      if (finding.code == "tips-easily") return finding.level;
    FAIL("it does not tip");
    return Level::stop;
  };
  CHECK(level("") == Level::caution);
  CHECK(level("[hardware.\"wall anchor\"]\nsize = \"M5\"\ncount = 2\n") == Level::note);
}
