// The comparison by itself: a part with many round holes, made with another division into cells.
#include "fabrication/proof.h"

#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <sstream>

#include "fabrication/steps_check.h"
#include "support/demos.h"

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

// How far wood that is too much stands off the part when it is cut as printed.
double fin_of(const Plan& plan, std::size_t row) {
  const parts::Part& part =
      plan.assembly.parts[static_cast<std::size_t>(plan.rows[row].members.front())];
  std::vector<Step> steps;
  for (const Step& step : plan.steps)
    if (step.row == static_cast<int>(row)) steps.push_back(step);
  Solid work = blank_of(*plan.project, part);
  CHECK(cut_part(steps, true, work) == "");
  return compare(work, fabrication::wanted_of(plan, static_cast<int>(row))).deviation;
}

std::string plank(const std::string& more) {
  return test::job("mm") + "[shop.saw]\nwidest_stack = 20\n" + test::board("oak", "20") +
         "[board.b]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 400.04\nwidth = 80\n" + more;
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

// Plain arithmetic: 400.04 mm is set as 400.0, 0.04 off, and a width of 80 as it is.
TEST_CASE("each step says what its own rounded setting makes, the part what all make") {
  const test::Built built = test::build(plank(""));
  REQUIRE(built.stops() == "");
  const double length = test::step_for(built, "b", "crosscut to length").deviation_printed;
  CHECK(length == Approx(0.04));
  CHECK(test::step_for(built, "b", "rip to width").deviation_printed < 1e-9);
  CHECK(built.row("b").deviation_printed == Approx(0.04));
}

// A bevel of 30.04 degrees is set to 30.0: over 20 mm of thickness, square to the cut face, that
// moves its far arris by the face's length, 20 / cos 30, times the sine of 0.04 degrees (plain
// trigonometry), and what the distance is rounded by comes on top; the square end has neither.
TEST_CASE("an angle the scale does not have is that step's deviation and no other's") {
  const test::Built built = test::build(
      plank("[board.b.cut.head]\ncut = \"angles\"\nbevel = \"30.04 deg\"\nalong = 380\n"));
  REQUIRE(built.stops() == "");
  const Step bevel = test::step_for(built, "b", "head");
  const double turned =
      20 / std::cos(bevel.exact.tilt) * std::sin(std::abs(bevel.exact.tilt - bevel.printed.tilt));
  const double moved =
      std::abs(bevel.exact.distance - bevel.printed.distance) * std::cos(bevel.printed.tilt);
  CHECK(turned ==
        Approx(20 / std::cos(Angle::degrees(30.04).rad) * std::sin(Angle::degrees(0.04).rad)));
  CHECK(bevel.deviation_printed <= turned + moved + 1e-6);
  CHECK(bevel.deviation_printed >= std::abs(turned - moved) - 1e-6);
  CHECK(test::step_for(built, "b", "rip to width").deviation_printed < 1e-9);
}

// Where two rounded cuts meet they overlap: what is too much is no further off the part than its
// faces are, and at a corner of 60 degrees twice that. Half a step of each figure and of each scale
// is common arithmetic: no face is off by more than a few of them.
TEST_CASE("rounded settings leave no fin in any demo") {
  for (const std::filesystem::path& file : test::demos()) {
    const test::Built built = test::build(test::text_of(file));
    REQUIRE(built.stops() == "");
    const double step = built.project->job.figures().step_mm();
    for (std::size_t row = 0; row < built.plan.rows.size(); ++row) {
      INFO(file.filename().string() << " " << built.plan.rows[row].mark);
      const double off = built.plan.rows[row].deviation_printed;
      CHECK(off >= 0);
      CHECK(off < 2 * step);
      CHECK(fin_of(built.plan, row) <= 2 * off + 1e-6);
    }
  }
}
