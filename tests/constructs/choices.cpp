// What an author can choose: corners, ends, edgings, partitions, and what is refused.
#include <cmath>

#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

namespace {

const std::string case_stocks = test::sheet("panel", "18 mm") + test::sheet("thick", "25 mm") +
                                test::sheet("thin", "6 mm") + test::board("oak", "20 mm");

std::string leaning(const std::string& rest) {
  return test::job("mm") + case_stocks +
         "[case.body]\noutline = { bottom = 900, height = 600, lean_in = [\"12 deg\"] }\ndepth = "
         "300\n"
         "stock = \"panel\"\n" +
         rest;
}

std::vector<Diagnostic> faults(const std::string& text) {
  return reading::read_project(text, "test.toml", constructs::registry()).diagnostics;
}

}  // namespace

TEST_CASE("butted corners: the named panels run through") {
  const test::Built built =
      test::build(leaning("corners = \"butt\"\nthrough = [\"top\", \"bottom\"]\n"
                          "[case.body.back]\nstock = \"thin\"\ninto = 9\n"));
  REQUIRE(built.stops() == "");
  CHECK(inches(built.row("bottom panel").finished.x * 1) == Approx(900 / 25.4));
  // Ends against level panels are cut at the lean.
  CHECK(degrees(built.cut("left panel", "end against bottom panel").bevel) == Approx(12));
  // The through panel's rabbet stops before its end grain: its stops are the neighbours' floors.
  CHECK(built.operation("bottom panel", "rabbet for back").trench.stops.size() == 2);
  CHECK(built.operation("left panel", "rabbet for back").trench.stops.empty());
}

TEST_CASE("ends of a through panel: level with the neighbour or square") {
  const std::string corners = "corners = \"butt\"\nthrough = [\"left\", \"right\"]\n";
  const test::Built level = test::build(leaning(corners));
  REQUIRE(level.stops() == "");
  CHECK(degrees(level.cut("left panel", "end past bottom panel").bevel) == Approx(12));
  const test::Built square =
      test::build(leaning(corners + "[case.body.panel.left]\nends = \"square\"\n"
                                    "[case.body.panel.right]\nends = \"square\"\n"));
  REQUIRE(square.stops() == "");
  CHECK(degrees(square.cut("left panel", "end past bottom panel").bevel) == Approx(0).margin(1e-9));
  // Nothing of a square end stands past the floor or the top.
  const Box box = square.part("left panel").world.bounds();
  CHECK(box.low.z > -1e-9);
  CHECK(box.high.z < 600 + 1e-9);
  CHECK(square.row("left panel").finished.x < level.row("left panel").finished.x);
}

TEST_CASE("mitres of panels with unequal thickness meet without a gap") {
  const test::Built built = test::build(leaning("[case.body.panel.bottom]\nstock = \"thick\"\n"));
  REQUIRE(built.stops() == "");
  const double bottom = degrees(built.cut("bottom panel", "mitre to left panel").bevel);
  const double side = degrees(built.cut("left panel", "mitre to bottom panel").bevel);
  CHECK(180 - bottom - side == Approx(78));  // the corner is shared out, not halved
  CHECK(std::abs(bottom - side) > 5);
  for (const fabrication::JointReport& joint : built.plan.joints) CHECK(joint.gap < 1e-6);
}

TEST_CASE("any closed outline by its corners, an inside corner among them") {
  const test::Built built = test::build(
      test::job("mm") + case_stocks +
      "[case.body]\noutline = { corners = [[0, 0], [800, 0], [800, 300], [400, 300], [400, 700], "
      "[60, 700]] }\ndepth = 300\nstock = \"panel\"\n[case.body.back]\nstock = \"thin\"\ninto = "
      "9\n");
  REQUIRE(built.stops() == "");
  CHECK(built.plan.assembly.parts.size() == 7);
  int right = 0;
  for (const fabrication::JointReport& joint : built.plan.joints)
    if (joint.kind == "mitre" && std::abs(degrees(joint.dihedral) - 270) < 1e-9) ++right;
  CHECK(right == 1);
}

TEST_CASE("edgings: the overall depth includes them") {
  const test::Built built =
      test::build(leaning("front = { edge = \"nosing\", stock = \"oak\", thickness = 8 }\n"
                          "[case.body.shelf.a]\ntop_at = 300\nends = { housing = 6 }\n"
                          "front = { edge = \"nosing\", stock = \"oak\", thickness = 8 }\n"));
  REQUIRE(built.stops() == "");
  CHECK(built.row("left panel").finished.y == Approx(292));
  CHECK(built.row("left panel nosing").finished.z == Approx(8));
  const Box box = built.part("left panel nosing").world.bounds();
  CHECK(box.low.y == Approx(0).margin(1e-9));
  CHECK(box.high.y == Approx(8));
  // A nosing has the panel's bevels as angles on its face.
  CHECK(degrees(built.cut("left panel nosing", "mitre to top panel nosing").face_angle) ==
        Approx(degrees(built.cut("left panel", "mitre to top panel").bevel)));
}

TEST_CASE("a partition housed at one end stands free at the other, held by blocks") {
  const test::Built built = test::build(leaning(
      "[case.body.partition.mid]\ncentre_at = 450\nlower = { housing = 6 }\n"
      "blocks = { stock = \"oak\", at = \"upper\", along_host = 20, along_partition = 20 }\n"));
  REQUIRE(built.stops() == "");
  const double inside = 600 - 2 * 18.0;
  CHECK(built.row("mid partition").finished.x == Approx(inside + 6));
  CHECK(built.row("mid left block").quantity() == 2);
  CHECK(built.part("mid left block").world.bounds().high.z == Approx(600 - 18));
}

TEST_CASE("a shelf between a partition and a side waits for the partition") {
  const test::Built built =
      test::build(leaning("[case.body.shelf.short]\ntop_at = 250\nbetween = [\"mid\", \"right\"]\n"
                          "ends = { housing = 5 }\n[case.body.partition.mid]\ncentre_at = 400\n"));
  REQUIRE(built.stops() == "");
  const Box box = built.part("short shelf").world.bounds();
  CHECK(box.low.x == Approx(409 - 5));
}

TEST_CASE("what can't be built is said, with a remedy") {
  CHECK(test::build(leaning("[case.body.shelf.a]\ntop_at = 599\n")).found("slab-does-not-fit"));
  CHECK(test::build(leaning("[case.body.shelf.a]\ntop_at = 10\n")).found("slab-does-not-fit"));
  CHECK(
      test::build(leaning("[case.body.shelf.a]\ntop_at = 300\nbetween = [\"left\", \"nowhere\"]\n"))
          .found("unknown-neighbour"));
  CHECK(test::build(leaning("[case.body.shelf.a]\ntop_at = 300\nends = { housing = 18 }\n"))
            .found("housing-too-deep"));
  CHECK(
      test::build(leaning("[case.body.shelf.a]\ntop_at = 300\n[case.body.shelf.b]\ntop_at = 310\n"))
          .found("overlap"));
  CHECK(test::build(leaning("corners = \"butt\"\n")).found("unclear-corner"));
  CHECK(test::build(leaning("[case.body.frame]\nstock = \"oak\"\nwidth = 320\n"))
            .found("frame-does-not-fit"));
  CHECK(
      test::build(leaning("[case.body.back]\nstock = \"thin\"\nfit = \"applied\"\nset_in = 500\n"))
          .found("no-back"));
}

TEST_CASE("an outline stated too often names the odd value and by how much") {
  const std::vector<Diagnostic> found = faults(
      test::job("mm") + case_stocks +
      "[case.body]\noutline = { bottom = 900, top = 800, height = 600, lean_in = [\"12 deg\"] }\n"
      "depth = 300\nstock = \"panel\"\n");
  REQUIRE(found.size() == 1);
  CHECK(found[0].code == "over-determined");
  // 900 - 2 * 600 * tan(12 degrees) = 644.93, so the top is off by 155.07.
  CHECK(found[0].found.find("644.93") != std::string::npos);
  CHECK(found[0].found.find("155.07") != std::string::npos);
  CHECK(found[0].span.line > 0);
}
