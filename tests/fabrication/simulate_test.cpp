// The simulator by itself: wood on a machine, against plain geometry.
#include "fabrication/simulate.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "base/quantity.h"

using namespace splay;
using namespace splay::fabrication;
using parts::Side;

namespace {

Solid board(double x, double y, double z) { return Solid::box({0, 0, 0}, {x, y, z}); }

// A crosscut with the reference edge in the gauge and the far end at the stop.
Step crosscut(double distance) {
  Step step;
  step.guide = Guide::gauge;
  step.face = Side::z_low;
  step.against = Side::y_low;
  step.leads = Side::y_high;
  step.stopped = Side::x_high;
  step.reference_right = true;
  step.waste_right = false;
  step.exact.distance = distance;
  step.exact.width = 3;
  return step;
}

Step rip(double distance) {
  Step step;
  step.guide = Guide::fence;
  step.face = Side::z_low;
  step.against = Side::y_low;
  step.leads = Side::x_high;
  step.reference_right = true;
  step.waste_right = false;
  step.exact.distance = distance;
  step.exact.width = 3;
  return step;
}

double carried(const Step& step, Solid& work) {
  const std::string why = carry_out(step, step.exact, work);
  INFO(why);
  CHECK(why == "");
  return work.empty() ? 0 : work.volume();
}

}  // namespace

TEST_CASE("a crosscut leaves the distance to the stop, and the off-cut falls") {
  Solid work = board(500, 100, 20);
  CHECK(carried(crosscut(300), work) == Approx(300 * 100 * 20));
  CHECK(work.bounds().low.x == Approx(200));
}

TEST_CASE("a rip leaves the distance to the fence") {
  Solid work = board(500, 100, 20);
  CHECK(carried(rip(60), work) == Approx(500 * 60 * 20));
  CHECK(work.bounds().high.y == Approx(60));
}

// Plain trigonometry: at a tilt t the cut moves sideways by thickness times tan t.
TEST_CASE("a tilted blade that leans away leaves the longer arris on top") {
  Step step = crosscut(300);
  step.exact.tilt = Angle::degrees(30).rad;
  step.tilts_right = false;  // the blade's top leans to the waste
  Solid work = board(500, 100, 20);
  const double area = 20 * (300 + 20 * std::tan(Angle::degrees(30).rad) / 2);
  CHECK(carried(step, work) == Approx(100 * area));
  CHECK(work.bounds().low.x == Approx(200 - 20 * std::tan(Angle::degrees(30).rad)));
  step.tilts_right = true;
  work = board(500, 100, 20);
  CHECK(carried(step, work) ==
        Approx(100 * 20 * (300 - 20 * std::tan(Angle::degrees(30).rad) / 2)));
}

// Turned anticlockwise about the reference edge the far edge swings to the left, over the line: it
// is left shorter by the width times the tangent.
TEST_CASE("a gauge turned anticlockwise leaves the far edge shorter at a right-hand stop") {
  Step step = crosscut(300);
  step.exact.gauge = Angle::degrees(10).rad;
  Solid work = board(500, 100, 20);
  const double less = 100 * std::tan(Angle::degrees(10).rad);
  CHECK(carried(step, work) == Approx(20 * (300 * 100 - 100 * less / 2)));
  CHECK(work.bounds().low.x == Approx(200));
  step.exact.gauge = -step.exact.gauge;
  work = board(500, 100, 20);
  CHECK(carried(step, work) == Approx(20 * (300 * 100 + 100 * less / 2)));
}

TEST_CASE("a dado stack makes a trench of its width and height, its floor square to its walls") {
  Step step = crosscut(300);
  step.tool = Tool::stack;
  step.exact.width = 18;
  step.exact.height = 6;
  Solid work = board(500, 100, 20);
  CHECK(carried(step, work) == Approx(500 * 100 * 20 - 18 * 6 * 100));
  // Tilted by t the cross-section is a trapezium: the stack's width over cos t wide at the table,
  // its mean depth the height less half of width times sin t.
  const double t = Angle::degrees(15).rad;
  step.exact.tilt = t;
  step.exact.height = 12;
  work = board(500, 100, 20);
  const double mean = 12 - 18 * std::sin(t) / 2;
  CHECK(carried(step, work) == Approx(500 * 100 * 20 - 100 * mean * 18 / std::cos(t)));
}

TEST_CASE("two kerfs that meet free a rabbet's off-cut") {
  Solid work = board(500, 100, 20);
  Step first = rip(88);  // leaves 12 beyond the kerf's near side
  first.exact.height = 8;
  const double kerf = carried(first, work);
  CHECK(kerf == Approx(500 * (100 * 20 - 3 * 8)));
  Step second;
  second.guide = Guide::fence;
  second.face = Side::y_high;
  second.against = Side::z_high;
  second.leads = Side::x_low;
  second.reference_right = true;
  second.waste_right = false;
  second.exact.distance = 12;
  second.exact.height = 12;
  second.exact.width = 3;
  CHECK(carried(second, work) == Approx(500 * (100 * 20 - 12 * 8)));
}

TEST_CASE("what can't lie still is refused") {
  Solid work = board(500, 100, 20);
  work.keep(Plane::through({500, 0, 0}, {1, 1, 0}));  // a pointed end
  work.keep(Plane::through({500, 100, 0}, {1, -1, 0}));
  work.keep(Plane::through({0, 0, 0}, {0, -1, 0.2}));  // and a bevelled edge
  Step step = rip(50);
  step.against = Side::y_low;
  CHECK(carry_out(step, step.exact, work) == "");  // its lower arris bears all along
  Solid rocker = board(500, 100, 20);
  rocker.keep(Plane::through({0, 50, 0}, {-0.3, -1, 0}));
  rocker.keep(Plane::through({0, 0, 0}, {0.3, -1, 0}));
  CHECK(carry_out(step, step.exact, rocker) == "the work rocks against the fence");
  Step wrong = rip(50);
  wrong.leads = Side::x_low;
  work = board(500, 100, 20);
  CHECK(carry_out(wrong, wrong.exact, work) == "the end that leads is not the one named");
}

// A body rests on a plane only where what touches it spans an area (statics of a rigid body).
TEST_CASE("what is tapered all over its lower face stands on one edge, and rocks") {
  const Step step = rip(60);
  // The edge that is left runs slanting, and so reaches along the work and across it.
  Solid work = board(500, 100, 20);
  work.keep(Plane::through({500, 0, 0}, unit(Vec3{1, 0.2, 0})));
  work.keep(Plane::through({500, 0, 0}, unit(Vec3{-0.02, -0.004, -1})));
  Rigid machine;
  CHECK(lay(step, step.exact, work, machine) == "the work rocks on the table");
  // Tapered over a part of it, it lies on the rest.
  Solid half = board(500, 100, 20);
  half.keep(Plane::through({250, 0, 0}, unit(Vec3{0.02, 0, -1})));
  CHECK(lay(step, step.exact, half, machine) == "");
}
