// Every size follows the thickness that was measured. thisoldhouse.com, "The real thickness of
// plywood": a sheet sold as 3/4 in may measure anything from 0.703 to 0.750; the dado is as wide as
// the sheet in hand.
#include <algorithm>

#include "support/piece.h"

using namespace splay;
using parts::OperationKind;
using test::inches;

namespace {

test::Built with_sheet(const std::string& thickness) {
  return test::build(
      test::job() + test::sheet("panel", thickness) +
      "[case.body]\noutline = { bottom = 36, height = 24 }\ndepth = 12\nstock = \"panel\"\n"
      "corners = \"mitre\"\n"
      "[case.body.shelf.upper]\ntop_at = 14\nends = { housing = \"1/4\" }\n"
      "[case.body.partition.middle]\ncentre_at = 18\nbetween = [\"bottom\", \"upper\"]\n"
      "lower = { housing = \"1/4\" }\nupper = { housing = \"1/4\" }\n");
}

double dado_width(const parts::Trench& trench) {
  // Both walls' normals point into the trench, and are opposite.
  return std::abs(trench.walls[0].d + trench.walls[1].d);
}

}  // namespace

TEST_CASE("a dado is as wide as the sheet measures, and nothing keeps the nominal figure") {
  for (const double thick : {0.703, 0.734}) {
    const test::Built piece = with_sheet(std::to_string(thick) + " in");
    REQUIRE_THAT(piece.stops(), Catch::Equals(""));
    int dados = 0;
    for (const parts::Part& part : piece.plan.assembly.parts) {
      CHECK(inches(part.size.z) == Approx(thick));
      for (const parts::Operation& operation : part.operations) {
        if (operation.kind != OperationKind::housing) continue;
        ++dados;
        REQUIRE(operation.trench.walls.size() == 2);
        CHECK(inches(dado_width(operation.trench)) == Approx(thick));
      }
    }
    CHECK(dados == 4);
    // Between the sides: the outside less two sheets; the shelf runs a quarter into each side.
    CHECK(inches(piece.part("upper shelf").size.x) == Approx(36 - 2 * thick + 2 * 0.25));
  }
}
