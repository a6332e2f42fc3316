// The mitre saw: what it is given to cut, and what its limits keep from it.
#include <cmath>
#include <numbers>

#include "fabrication/steps.h"
#include "fabrication/steps_check.h"

using namespace splay;
using namespace splay::fabrication;
using test::check_steps;

namespace {

constexpr double wide = 60, thick = 20, face_angle = 48;  // mm, degrees

// A board with one end cut at an angle that the table saw reaches neither by its gauge nor by its
// tilt.
test::Built cut_at_the_mitre_saw(const std::string& limits, const std::string& bevel = "0 deg") {
  return test::build(
      test::job("mm") + "[shop.saw]\ngauge = \"30 deg\"\n[shop.mitre_saw]\n" + limits +
      test::board("oak", plain_number(thick, 0)) +
      "[board.b]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 500\nwidth = " + plain_number(wide, 0) +
      "\n[board.b.cut.head]\ncut = \"angles\"\nalong = 480\nface_angle = \"" +
      plain_number(face_angle, 0) + " deg\"\nbevel = \"" + bevel + "\"\n");
}

// The step that finishes the head.
const Step& at_head(const test::Built& built) {
  for (const Step& step : built.plan.steps)
    if (step.name.starts_with("head") || step.name.starts_with("right end")) return step;
  for (const Step& step : built.plan.steps) UNSCOPED_INFO(step.name);
  FAIL("no step for the head");
  return built.plan.steps.front();
}

}  // namespace

TEST_CASE("an angle past the table saw's gauge is cut at the mitre saw, and proven") {
  const test::Built built = cut_at_the_mitre_saw("");
  const Step& head = at_head(built);
  CHECK(head.machine == Machine::mitre_saw);
  CHECK(std::abs(head.exact.gauge) == Approx(face_angle * std::numbers::pi / 180));
  CHECK(head.exact.tilt == Approx(0).margin(1e-9));
  check_steps(built.plan);
}

// A board turned by an angle from square is its width over the angle's cosine to the blade: plain
// trigonometry.
TEST_CASE("each limit of the mitre saw is kept") {
  const double needs = wide / std::cos(face_angle * std::numbers::pi / 180);
  const auto limit = [](const char* name, double value, const char* unit = "") {
    return std::string(name) + " = \"" + plain_number(value, 3) + unit + "\"\n";
  };
  struct Case {
    std::string short_of, enough, bevel;
  };
  const Case at = GENERATE_COPY(
      Case{limit("widest", needs - 0.1, " mm"), limit("widest", needs + 0.1, " mm"), "0 deg"},
      Case{limit("thickest", thick - 0.1, " mm"), limit("thickest", thick + 0.1, " mm"), "0 deg"},
      Case{limit("mitre", face_angle - 0.1, " deg"), limit("mitre", face_angle + 0.1, " deg"),
           "0 deg"},
      Case{limit("bevel", 24.9, " deg"), limit("bevel", 25.1, " deg"), "25 deg"});
  INFO(at.short_of);
  CHECK(at_head(cut_at_the_mitre_saw(at.short_of, at.bevel)).machine != Machine::mitre_saw);
  const test::Built built = cut_at_the_mitre_saw(at.enough, at.bevel);
  CHECK(at_head(built).machine == Machine::mitre_saw);
  check_steps(built.plan);
}
