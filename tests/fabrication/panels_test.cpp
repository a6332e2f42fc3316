// Panels of solid wood in grooves.
#include <cmath>

#include "fabrication/soundness.h"
#include "support/piece.h"

using namespace splay;
using namespace splay::fabrication;

namespace {

// A frame of 600 by 600 with stiles and rails 60 wide and a panel of flatsawn white oak 8 mm thick,
// its edges `into` deep in grooves with `clearance` beyond them.
std::string framed(double into, double clearance, const std::string& room = "") {
  return test::job("mm") + test::board("rail", "20 mm") +
         "[stock.oak]\nkind = \"board\"\nthickness = 6\nspecies = \"white oak\"\n" + room +
         "[door.d]\nopening = { bottom = 600, height = 600 }\nframe = { stock = \"rail\", width = "
         "60, corners = \"mortise and tenon\", panel = { stock = \"oak\", fit = \"groove\", into "
         "= " +
         std::to_string(into) + ", clearance = " + std::to_string(clearance) + " } }\n";
}

}  // namespace

// White oak, flatsawn, moves 0.00365 of its width a point (Wood Handbook, Table 13-5).
TEST_CASE("a panel's room in its grooves is held against its swelling") {
  const test::Built loose = test::build(framed(9, 3));
  CAPTURE(loose.stops());
  REQUIRE(loose.plan.soundness.panels.size() == 1);
  const PanelRoom& panel = loose.plan.soundness.panels[0];
  const double width = loose.plan.rows[static_cast<std::size_t>(panel.row)].finished.y;
  const Soundness& sound = loose.plan.soundness;
  CHECK(panel.room == Approx(6).margin(0.01));
  CHECK(panel.in == Approx(6).margin(0.01));
  CHECK(panel.swells == Approx(width * 0.00365 * (sound.dampest - sound.made)));
  CHECK(panel.shrinks == Approx(width * 0.00365 * (sound.made - sound.driest)));
  CHECK_FALSE(loose.found("panel-too-tight"));
  CHECK_FALSE(loose.found("panel-comes-out"));
  // Made in dry air, it swells 480 by 0.00365 by some 5 points: far more than 1 mm on either side.
  const test::Built tight = test::build(framed(9, 1, "[room]\nmade_at = 30\ndriest = 30\n"));
  CHECK(tight.found("panel-too-tight"));
  CHECK_FALSE(tight.stops().empty());
  // In shallow grooves nothing holds it when it has shrunk.
  CHECK(test::build(framed(4, 2, "[room]\nmade_at = 60\ndriest = 25\n")).found("panel-comes-out"));
}
