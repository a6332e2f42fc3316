// How cuts read on a saw.
#include "fabrication/cuts.h"

#include <cmath>

#include "support/piece.h"

using namespace splay;
using parts::Side;

namespace {

parts::Part board(double x, double y, double z) {
  parts::Part part;
  part.size = {x, y, z};
  part.body = Solid::box({0, 0, 0}, part.size);
  return part;
}

fabrication::CutReport read(parts::OperationKind kind, Vec3 normal) {
  parts::Operation operation;
  operation.kind = kind;
  operation.cut = Plane::through({1, 1, 1}, normal);
  return fabrication::read_cut(operation, board(500, 100, 20));
}

}  // namespace

TEST_CASE("an end: face angle, bevel and the long arris") {
  const double a = Angle::degrees(20).rad;
  const auto bevel = read(parts::OperationKind::end_cut, {std::cos(a), 0, std::sin(a)});
  CHECK(bevel.side == Side::x_high);
  CHECK(test::degrees(bevel.bevel) == Approx(20));
  CHECK(bevel.face_angle == Approx(0).margin(1e-12));
  CHECK(bevel.on_face);
  CHECK_FALSE(bevel.on_edge);
  CHECK(bevel.long_face == Side::z_low);
  const auto mitre = read(parts::OperationKind::end_cut, {-std::cos(a), std::sin(a), 0});
  CHECK(mitre.side == Side::x_low);
  CHECK(test::degrees(mitre.face_angle) == Approx(20));
  CHECK(mitre.bevel == Approx(0).margin(1e-12));
  CHECK(mitre.long_edge == Side::y_low);
}

TEST_CASE("a taper of an edge and of a face read as the same small angle") {
  const double a = Angle::degrees(2).rad;
  for (const Vec3 normal : {Vec3{std::sin(a), std::cos(a), 0}, Vec3{std::sin(a), 0, std::cos(a)}}) {
    const auto taper = read(parts::OperationKind::edge_cut, normal);
    CHECK(test::degrees(taper.face_angle) == Approx(2));
    CHECK(taper.bevel == Approx(0).margin(1e-12));
    CHECK(taper.long_edge == Side::x_low);
  }
  CHECK(read(parts::OperationKind::edge_cut, {std::sin(a), 0, std::cos(a)}).side == Side::z_high);
}

// http://brighidsworkshop.com/if-i-knew-i-would-need-to-remember-trigonometry-would-i-have-started-woodworking-yes/
// : 57 degrees off square, past a saw that stops at 45, is 33 with the work turned a quarter.
TEST_CASE("a bevel past the saw's tilt is cut at its complement") {
  const test::Built built = test::build(
      test::job() + test::sheet("panel", "3/4") +
      "[case.a]\noutline = { corners = [[0, 0], [30, 0], [30, 40], [4, 26]] }\ndepth = 10\nstock = "
      "\"panel\"\n");
  REQUIRE(built.stops() == "");
  int past = 0;
  for (const fabrication::PartRow& row : built.plan.rows)
    for (const fabrication::CutReport& cut : row.cuts) past += test::degrees(cut.bevel) > 45 + 1e-9;
  // The steps say it, and nobody says it twice.
  int turned = 0;
  for (const fabrication::Step& step : built.plan.steps) {
    const std::string flat = "Flat it would need a tilt of ";
    if (step.remark.find(flat) != 0) continue;
    ++turned;
    if (step.has(fabrication::Flag::complement))
      CHECK(std::stod(step.remark.substr(flat.size())) + test::degrees(step.exact.tilt) ==
            Approx(90).margin(0.011));
  }
  CHECK(past > 0);
  CHECK(turned == past);
  CHECK_FALSE(built.found("past-saw-tilt"));
}

TEST_CASE("a project with nothing to build says so") {
  const test::Built built = test::build(
      test::job() + test::sheet("panel", "3/4") +
      "[case.a]\noutline = { bottom = 1, height = 1 }\ndepth = 10\nstock = \"panel\"\n");
  CHECK(built.found("no-inside"));
}
