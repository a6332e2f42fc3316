// Boards anywhere, cut by planes; joints between any parts by name.
#include <cmath>

#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;

namespace {

const std::string stocks = test::board("oak", "1 in") + test::sheet("panel", "3/4 in");

test::Built made(const std::string& text, const std::string& unit = "in") {
  return test::build(test::job(unit) + stocks + text);
}

std::string board(const std::string& name, const std::string& rest) {
  return "[board." + name + "]\nstock = \"oak\"\n" + rest;
}

Vec3 in_inches(Vec3 v) { return v * (1 / Length::mm_per_inch); }

void check_box(const parts::Part& part, Vec3 low, Vec3 high) {
  const Box box = part.world.bounds();
  CHECK(norm(in_inches(box.low) - low) < 1e-9);
  CHECK(norm(in_inches(box.high) - high) < 1e-9);
}

}  // namespace

TEST_CASE("a board lies, turns, rises and rolls about its corner") {
  const std::string size = "at = [1, 2, 3]\nlength = 20\nwidth = 4\n";
  check_box(made(board("b", size)).part("b"), {1, 2, 3}, {21, 6, 4});
  check_box(made(board("b", size + "turn = 90\n")).part("b"), {-3, 2, 3}, {1, 22, 4});
  check_box(made(board("b", size + "rise = 90\n")).part("b"), {0, 2, 3}, {1, 6, 23});
  check_box(made(board("b", size + "roll = 90\n")).part("b"), {1, 1, 3}, {21, 2, 7});
  check_box(made(board("b", size + "anchor = \"middle\"\n")).part("b"), {-9, 0, 2.5}, {11, 4, 3.5});
  const test::Built faced = made(board("b", size + "roll = 90\n"));
  CHECK(norm(faced.part("b").place.ez - Vec3{0, -1, 0}) < 1e-12);
  CHECK(faced.part("b").side_names[5] == "front face");
  check_box(made(board("b", "at = [0, 0, 0]\ntowards = [0, 9, 0]\nwidth = 4\n")).part("b"),
            {-4, 0, 0}, {0, 9, 1});
}

TEST_CASE("a board cut by planes of every kind") {
  const test::Built built = made(
      board("b",
            "at = [0, 0, 0]\nlength = 20\nwidth = 4\nrise = \"30 deg\"\n"
            "[board.b.cut.foot]\ncut = \"level\"\nalong = 3\nwaste = \"first end\"\n"
            "[board.b.cut.head]\ncut = \"plumb\"\nthrough = [15, 0, 0]\n"
            "[board.b.cut.side]\ncut = \"angles\"\nface_angle = \"80 deg\"\nbevel = \"10 deg\"\n"
            "along = 10\nacross = 3\nwaste = \"left edge\"\n"));
  REQUIRE(built.stops() == "");
  CHECK(degrees(built.cut("b", "foot").bevel) == Approx(60));
  CHECK(degrees(built.cut("b", "head").bevel) == Approx(30));
  CHECK(inches(built.part("b").world.bounds().high.x) == Approx(15));
  CHECK(degrees(built.cut("b", "side").face_angle) == Approx(10));
  CHECK(degrees(built.cut("b", "side").bevel) == Approx(10));
  CHECK(built.operation("b", "side").kind == parts::OperationKind::edge_cut);
}

TEST_CASE("what a board can't be") {
  const std::string size = "at = [0, 0, 0]\nlength = 20\nwidth = 4\n";
  CHECK(made(board("b", size + "[board.b.cut.far]\nalong = 21\n")).found("cut-misses"));
  CHECK(
      made(board("b", size + "[board.b.cut.flat]\ncut = \"level\"\nalong = 2\n")).found("no-cut"));
  CHECK(made(board("b", size + "[board.b.cut.all]\nalong = -1\n")).found("nothing-left"));
  const auto faults = [](const std::string& text) {
    return reading::read_project(test::job() + stocks + text, "test.toml", constructs::registry())
        .diagnostics;
  };
  CHECK(faults(board("b", size + "[board.b.cut.c]\n")).at(0).code == "wrong-count");
  CHECK(faults(board("b", "at = [0, 0, 0]\nwidth = 4\n")).at(0).code == "missing-field");
  CHECK(faults(board("b", size + "towards = [1, 1, 1]\nturn = 3\n")).at(0).code == "not-together");
}

namespace {

const std::string crossing = board("beam", "at = [0, 0, 0]\nlength = 20\nwidth = 3\n") +
                             board("bar", "at = [8, -6, 0]\nlength = 18\nwidth = 2\nturn = 70\n");

}  // namespace

TEST_CASE("a half lap between two boards by name") {
  const test::Built built =
      made(crossing +
           "[joint.cross]\nkind = \"half lap\"\nhost = \"beam\"\nguest = \"bar\"\n"
           "share = 0.4\n");
  REQUIRE(built.stops() == "");
  REQUIRE(built.plan.joints.size() == 1);
  CHECK(built.plan.joints[0].kind == "half lap");
  CHECK(degrees(built.plan.joints[0].dihedral) == Approx(70));
  CHECK(built.plan.joints[0].gap < 1e-6);
  // What both share stays once: the crossing is a parallelogram, 3 by 2 over sin 70.
  const double both = 3 * 2 / std::sin(Angle::degrees(70).rad);
  const double wood = 20 * 3 + 18 * 2 - both;
  CHECK(inches(inches(inches(built.part("beam").body.volume() +
                             built.part("bar").body.volume()))) == Approx(wood));
}

TEST_CASE("a joint reaches into whatever was built before it") {
  const std::string text =
      "[case.body]\noutline = { bottom = 30, height = 40 }\ndepth = 12\nstock = \"panel\"\n" +
      board("cleat", "at = [-5, 2, 10]\nlength = 40\nwidth = 3\n") +
      "[joint.left]\nkind = \"butt\"\nhost = \"body left panel\"\nguest = \"cleat\"\n";
  // Its ends stand out of both sides: only one of them can be cut by one joint.
  CHECK(made(text).found("overlap"));
  const test::Built built =
      made("[case.body]\noutline = { bottom = 30, height = 40 }\ndepth = 12\nstock = \"panel\"\n" +
           board("cleat", "at = [5, 2, 10]\nlength = 40\nwidth = 3\n") +
           "[joint.right]\nkind = \"mortise and tenon\"\nhost = \"body right panel\"\n"
           "guest = \"cleat\"\nthrough = true\n");
  REQUIRE(built.stops() == "");
  CHECK(inches(built.part("cleat").world.bounds().high.x) == Approx(30));
}

TEST_CASE("joints that can't be made are findings with a remedy") {
  const std::string joint = "[joint.j]\nkind = \"butt\"\nhost = \"beam\"\nguest = ";
  const test::Built lost = made(crossing + joint + "\"baar\"\n");
  REQUIRE(lost.found("unknown-part"));
  for (const Finding& finding : lost.plan.findings)
    if (finding.code == "unknown-part") {
      CHECK(finding.remedy == "Did you mean \"bar\"?");
      CHECK(finding.span.line > 0);
    }
  CHECK(made(joint + "\"bar\"\n" + crossing).found("unknown-part"));  // file order
  CHECK(made(crossing + joint + "\"beam\"\n").found("no-joint"));
  const test::Built apart =
      made(board("beam", "at = [0, 0, 0]\nlength = 20\nwidth = 3\n") +
           board("bar", "at = [0, 0, 9]\nlength = 20\nwidth = 3\nturn = 80\n") +
           "[joint.j]\nkind = \"half lap\"\nhost = \"beam\"\nguest = \"bar\"\n");
  CHECK(apart.found("no-joint"));
}

TEST_CASE("a joint doesn't change the names of parts") {
  const std::string body =
      "[case.body]\noutline = { bottom = 30, height = 40 }\ndepth = 12\nstock = \"panel\"\n";
  CHECK(made(body + "[joint.j]\nkind = \"butt\"\nhost = \"left panel\"\nguest = \"nothing\"\n")
            .part("left panel")
            .name == "left panel");
}

TEST_CASE("a joint's options are those of its kind, and each kind explains its own") {
  const std::string wrong = test::job() + stocks + crossing +
                            "[joint.j]\nkind = \"half lap\"\nhost = \"beam\"\nguest = \"bar\"\n"
                            "thickness = 3\n";
  const auto faults = reading::read_project(wrong, "test.toml", constructs::registry()).diagnostics;
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].code == "unknown-key");
  const std::string text = reading::explain("joint.half lap", constructs::registry());
  CHECK(text.find("share") != std::string::npos);
  CHECK(reading::explain("board.cut", constructs::registry()).find("face_angle") !=
        std::string::npos);
}
