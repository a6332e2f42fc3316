// The comparison by itself: a part with many round holes, made with another division into cells.
#include "fabrication/proof.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

using namespace splay;
using namespace splay::fabrication;

namespace {

constexpr int facets = 24, holes = 10;
constexpr double length = 600, width = 80, thick = 20, radius = 4;

Region hole(int i, double aside) {
  Region region;
  for (int k = 0; k < facets; ++k) {
    const double at = 2 * std::numbers::pi * k / facets;
    const Vec3 out{std::cos(at), std::sin(at), 0};
    region.push_back(Plane::through(Vec3{30.0 + 55 * i, width / 2 + aside, 0} + out * radius, out));
  }
  return region;
}

Solid bored(double aside_of_last) {
  Solid board = Solid::box({0, 0, 0}, {length, width, thick});
  for (int i = 0; i < holes; ++i) board.subtract(hole(i, i + 1 == holes ? aside_of_last : 0));
  return board;
}

// Bored last to first in a blank that is cut to size afterwards: no cell is like the other's.
Solid bored_in_the_blank() {
  Solid board = Solid::box({-7, -9, 0}, {length + 5, width + 3, thick});
  for (int i = holes; i-- > 0;) board.subtract(hole(i, 0));
  board.keep(Region{{{-1, 0, 0}, 0}, {{0, -1, 0}, 0}, {{1, 0, 0}, length}, {{0, 1, 0}, width}});
  return board;
}

}  // namespace

// A regular polygon of n sides round a circle has the area n r2 tan(pi / n): plain trigonometry.
TEST_CASE("a part with many round holes equals itself cut another way") {
  const Solid wanted = bored(0), made = bored_in_the_blank();
  const double hole_area = facets * radius * radius * std::tan(std::numbers::pi / facets);
  const double volume = (length * width - holes * hole_area) * thick;
  CHECK(wanted.volume() == Approx(volume).epsilon(1e-12));
  CHECK(made.volume() == Approx(volume).epsilon(1e-12));
  const Comparison same = compare(made, wanted);
  CHECK(same.deviation < proven_within);
  CHECK(same.equal(length * width));
}

// Moved aside a hole leaves wood on one side and takes it on the other: about its diameter times
// the way, twice. Corners are measured, and one is nearer to the next facet than to its own: by the
// cosine of a facet's turn, 15 degrees (plain vectors).
TEST_CASE("one hole of ten a hair aside is found") {
  for (const double aside : {1e-4, 0.01, 0.3}) {
    INFO(aside);
    const Comparison off = compare(bored(aside), bored_in_the_blank());
    CHECK(off.deviation == Approx(aside * std::cos(2 * std::numbers::pi / facets)).epsilon(1e-4));
    CHECK(off.volume == Approx(2 * 2 * radius * aside * thick).epsilon(0.05));
    CHECK_FALSE(off.equal(length * width));
  }
}

TEST_CASE("a cell by itself is the cell") {
  const Solid board = bored(0);
  double volume = 0;
  for (std::size_t i = 0; i < board.cells().size(); ++i) {
    const Solid cell = board.single_cell(i);
    REQUIRE(cell.cells().size() == 1);
    volume += cell.volume();
    CHECK(cell.vertices().size() < 40);
    CHECK(cell.boundary().faces.size() == board.cells()[i].faces.size());
  }
  CHECK(volume == Approx(board.volume()));
}
