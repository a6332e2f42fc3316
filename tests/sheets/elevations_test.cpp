// How doors and drawers are marked in elevations, from the engine's pieces.
#include <cmath>
#include <numbers>

#include "sheets/elevation_moving.h"
#include "support/piece.h"

using namespace splay;

namespace {

std::string with(const std::string& rest, const std::string& outline) {
  return test::job("mm") + test::sheet("ply", "18 mm") + test::sheet("thin", "6 mm") +
         "[case.body]\noutline = { measured = \"inside\", " + outline +
         " }\ndepth = 300\nstock = \"ply\"\n" + rest;
}

sheets::Elevation front_of(const test::Built& built) {
  REQUIRE(built.stops() == "");
  sheets::Elevation front;
  front.view = View::front();
  sheets::give_movement(built.plan.assembly, front);
  return front;
}

}  // namespace

// The lines meet on the hinged side (general drawing practice for casework, no source); their other
// ends are the leaf's corners, a gap inside the opening.
TEST_CASE("the lines of a door meet at its hinges") {
  for (const bool right : {false, true}) {
    const sheets::Elevation front = front_of(
        test::build(with(std::string("[door.d]\nof = \"body\"\ngap = { all = 2 }\nhung = \"") +
                             (right ? "right" : "left") + "\"\nslab = { stock = \"ply\" }\n",
                         "bottom = 400, height = 600")));
    REQUIRE(front.doors.size() == 1);
    const double low = front.doors[0].lower.y,
                 left = right ? front.doors[0].lower.x : front.doors[0].hinge.x;
    CHECK(front.doors[0].hinge.x == Approx(left + (right ? 396 : 0)));
    CHECK(front.doors[0].hinge.y == Approx(low + 298));
    CHECK(front.doors[0].upper.x == Approx(left + (right ? 0 : 396)));
    CHECK(front.doors[0].lower.x == Approx(front.doors[0].upper.x));
    CHECK(front.doors[0].upper.y == Approx(low + 596));
  }
}

TEST_CASE("a pair of doors meets on both sides, and corners of leaning edges are found") {
  const sheets::Elevation front = front_of(test::build(
      with("[door.d]\nof = \"body\"\ngap = { all = 3 }\nleaves = 2\nhinges = { kind = \"pivot\" "
           "}\nopens = \"45 deg\"\nslab = { stock = \"ply\" }\n",
           "bottom = 600, height = 500, lean_in = [\"6 deg\", \"6 deg\"]")));
  REQUIRE(front.doors.size() == 2);
  const sheets::DoorLines &left = front.doors[0], &right = front.doors[1];
  CHECK(left.hinge.x < left.upper.x);
  CHECK(right.hinge.x > right.upper.x);
  CHECK(right.upper.x - left.upper.x == Approx(25.4 / 8));  // the gap between them
  CHECK(left.upper.x == Approx(left.lower.x));
  CHECK(left.hinge.x + right.hinge.x == Approx(left.upper.x + right.upper.x));
}

// By plain vectors: the line of butt hinges stands in the middle of the gap and half a barrel in
// front of the face; the back corner of the closing edge comes out furthest. Hung on the left a
// door turns clockwise as seen from above, on the right the other way.
TEST_CASE("the plan shows how far a door comes out") {
  constexpr double gap = 2, half_barrel = 3, wide = 396, thick = 18;
  for (const bool right : {false, true}) {
    const test::Built built = test::build(with(
        std::string("[door.d]\nof = \"body\"\ngap = { all = 2 }\nhung = \"") +
            (right ? "right" : "left") + "\"\nopens = \"80 deg\"\nslab = { stock = \"ply\" }\n",
        "bottom = 400, height = 600"));
    REQUIRE(built.stops() == "");
    sheets::Elevation plan, front;
    plan.view = View::top();
    front.view = View::front();
    sheets::give_movement(built.plan.assembly, plan);
    sheets::give_movement(built.plan.assembly, front);
    CHECK(front.swings.empty());
    CHECK(plan.doors.empty());
    REQUIRE(plan.swings.size() == 1);
    const sheets::DoorSwing& swing = plan.swings.front();
    const Box leaf = built.part("d door").world.bounds();
    const double turn = 80 * std::numbers::pi / 180, way = right ? -1 : 1;
    const Vec2 hinge{right ? leaf.high.x + gap / 2 : leaf.low.x - gap / 2,
                     leaf.low.y - half_barrel};
    CHECK(swing.hinge.x == Approx(hinge.x));
    CHECK(swing.hinge.y == Approx(hinge.y));
    CHECK(swing.tip.x == Approx(hinge.x + way * (gap / 2 + wide)));
    CHECK(swing.tip.y == Approx(hinge.y + half_barrel + thick));
    CHECK(swing.radians == Approx(-way * turn));
    // Stood open, the far end of the leaf's face is what reaches furthest to the front.
    const double ahead = (gap / 2 + wide) * std::sin(turn) - half_barrel * std::cos(turn);
    const ink::Rect box = sheets::swing_box(plan);
    double low = 1e9;
    for (const Vec2 p : swing.open) low = std::min(low, p.y);
    CHECK(low == Approx(hinge.y - ahead));
    CHECK(box.low.y <= low + 1e-9);
    CHECK(swing.open.size() == 4);
  }
}

TEST_CASE("a drawer's mark stands on its front") {
  const test::Built built = test::build(
      with("[drawer.d]\nof = \"body\"\ndepth = 280\nbox = { stock = \"ply\", bottom = \"thin\" "
           "}\nfront = { stock = \"ply\", gap = 2 }\n",
           "bottom = 400, height = 150"));
  const sheets::Elevation front = front_of(built);
  REQUIRE(front.drawers.size() == 1);
  const Box box = built.part("d front").world.bounds();
  CHECK(front.drawers[0].low.x == Approx(box.low.x));
  CHECK(front.drawers[0].high.y == Approx(box.high.z));
  CHECK(front.drawers[0].high.x - front.drawers[0].low.x == Approx(396));
  sheets::Elevation side;
  side.view = View::left();
  sheets::give_movement(built.plan.assembly, side);
  CHECK(side.drawers.empty());
}
