// The hardware list and its rules, against published tables, plain arithmetic and known solids.
#include "fabrication/hardware.h"

#include <cmath>

#include "fabrication/buying.h"
#include "support/piece.h"

using namespace splay;
using namespace splay::fabrication;

namespace {

const HardwareLine* line(const HardwareList& list, const std::string& what) {
  for (const HardwareLine& each : list.lines)
    if (each.what == what) return &each;
  return nullptr;
}

std::string plank(const std::string& more) {
  return test::job("mm") + test::board("oak", "20 mm") +
         "[board.a]\nat = [0, 0, 0]\nstock = \"oak\"\nlength = 600\nwidth = 200\nanchor = "
         "\"corner\"\n" +
         more;
}

std::string pin(const std::string& more) {
  return "[hardware.pin]\nsize = \"5 mm\"\non = [\"a\"]\nface = \"upper face\"\n" + more;
}

}  // namespace

// A compiled table of wood screws whose root follows the Wood Handbook (FPL-GTR-190, chapter 8) and
// whose pilot holes follow the American Wood Council's rule, in 64ths of an inch, from memory.
TEST_CASE("holes for wood screws are those of the published table") {
  struct Row {
    int gauge;
    double shank, root, clearance, soft, hard;  // inches, then 64ths
  };
  const Row rows[] = {{4, 0.112, 5, 7, 3, 4},
                      {6, 0.138, 6, 9, 4, 5},
                      {8, 0.164, 7, 11, 5, 6},
                      {10, 0.190, 8, 12, 6, 7},
                      {12, 0.216, 9, 14, 7, 8}};
  const auto in = [](double mm) { return mm / 25.4; };
  for (const Row& row : rows) {
    CAPTURE(row.gauge);
    const ScrewHoles holes = screw_holes(row.gauge);
    CHECK(in(holes.shank) == Approx(row.shank).margin(1e-9));
    CHECK(in(holes.root) == Approx(row.root / 64).margin(0.009));
    CHECK(in(holes.pilot_soft) == Approx(row.soft / 64).margin(0.009));
    CHECK(in(holes.pilot_hard) == Approx(row.hard / 64).margin(0.009));
    // The table's clearance may be a 64th under the shank of #4; a screw has to pass its hole.
    CHECK(in(holes.clearance) == Approx(row.clearance / 64).margin(1.01 / 64));
    CHECK(holes.clearance >= holes.shank);
  }
  CHECK(gauge_of("#8 x 1 1/4 in") == 8);
  CHECK(gauge_of("8 x 40 mm") == 0);
}

// Plane geometry: 5/8 in between the holes and 1/8 in of movement swing it by asin(0.2) = 11.5
// degrees and draw it in by 0.625 (1 - cos) = 0.013 in.
TEST_CASE("how far a figure-8 swings") {
  const double holes = 0.625, moved = 0.125;
  const double swing = std::asin(moved / holes);
  CHECK(Angle{swing}.degrees() == Approx(11.54).margin(0.01));
  CHECK(holes * (1 - std::cos(swing)) == Approx(0.0126).margin(0.0001));
  // The limit is where it is drawn in by 1/64 in.
  const double most = figure_eight_swing(15.875);
  CHECK(15.875 * (1 - std::cos(std::asin(most / 15.875))) == Approx(25.4 / 64));
  CHECK(most > 25.4 / 8);
}

TEST_CASE("how far there is wood on from a point") {
  Solid block = Solid::box({0, 0, 0}, {100, 50, 20});
  CHECK(wood_run(block, {10, 10, 0}, {0, 0, 1}) == Approx(20));
  CHECK(wood_run(block, {10, 10, 20}, {0, 0, 1}) == Approx(0).margin(1e-9));
  block.subtract(Region{{{0, 0, 1}, 15}, {{0, 0, -1}, -10}});  // a slot from 10 to 15
  CHECK(wood_run(block, {10, 10, 0}, {0, 0, 1}) == Approx(10));
  CHECK(wood_run(block, {10, 10, 15}, {0, 0, 1}) == Approx(5));
}

TEST_CASE("hardware with places is drilled, in all parts named, and counted with its spares") {
  const test::Built built =
      test::build(plank(pin("at = [[100, 50], [200, 60]]\nhole = 5\ndepth = 12\nspare = 2\n")));
  CAPTURE(built.stops());
  REQUIRE(built.stops().empty());
  REQUIRE(built.plan.assembly.fittings.size() == 2);
  // From the left end and the front edge, on the upper face.
  const Vec3 at = built.plan.assembly.fittings[1].at;
  CHECK(at.x == Approx(200));
  CHECK(at.y == Approx(60));
  CHECK(at.z == Approx(20));
  // Circles whose facets are at most 0.01 mm inside: a little less than pi r2 h each.
  const double hole = 3.14159265 * 2.5 * 2.5 * 12;
  const double gone = 600 * 200 * 20 - built.part("a").body.volume();
  CHECK(gone == Approx(2 * hole).epsilon(0.02));
  CHECK(gone < 2 * hole);
  const HardwareList list = list_hardware(built.plan);
  REQUIRE(line(list, "pin") != nullptr);
  CHECK(line(list, "pin")->count == 2);
  CHECK(line(list, "pin")->spare == 2);
  CHECK(line(list, "pin")->on == std::vector<std::string>{built.row("a").mark});
}

TEST_CASE("hardware that can't be where the author wants it") {
  CHECK(
      test::build(plank(pin("at = [[100, 50]]\nhole = 5\ndepth = 21\n"))).found("hole-breaks-out"));
  CHECK(test::build(plank(pin("at = [[1, 50]]\nhole = 5\ndepth = 5\n"))).found("hole-breaks-out"));
  CHECK(test::build(plank(pin("at = [[700, 50]]\n"))).found("off-the-face"));
  CHECK(test::build(plank("[hardware.pin]\non = [\"b\"]\nface = \"upper face\"\nat = [[1, 1]]\n"))
            .found("unknown-part"));
  CHECK(test::build(plank("[hardware.pin]\non = [\"b\"]\n")).found("unknown-part"));
  CHECK(test::build(plank("[hardware.pin]\non = [\"a\"]\nface = \"lid\"\nat = [[1, 1]]\n"))
            .found("unknown-face"));
  CHECK(test::build(plank("[hardware.pin]\nper = \"door\"\n")).found("hardware-for-nothing"));
}

namespace {

// Two boards face to face and a screw through both, `length` long; its holes as given.
std::string screwed(const std::string& more) {
  return test::job() + test::board("oak", "3/4") +
         "[board.below]\nat = [0, 0, 0]\nstock = \"oak\"\nlength = 20\nwidth = 4\nanchor = "
         "\"corner\"\n[board.above]\nat = [0, 0, \"3/4\"]\nstock = \"oak\"\nlength = 20\nwidth = "
         "4\nanchor = \"corner\"\n[joint.hold]\nkind = \"screw\"\nhost = \"below\"\nguest = "
         "\"above\"\non = \"touching\"\nthrough = \"guest\"\ncountersink = true\n" +
         more;
}

}  // namespace

TEST_CASE("screws stay in the wood and have holes that suit them") {
  const test::Built good = test::build(screwed("length = \"1 1/4\"\n"));
  CAPTURE(good.stops());
  REQUIRE(good.stops().empty());
  CHECK_FALSE(good.found("screw-comes-out"));
  CHECK_FALSE(good.found("screw-hole-tight"));
  CHECK_FALSE(good.found("pilot-hole-size"));
  CHECK(line(list_hardware(good.plan), "screw")->count == 2);
  CHECK(screw_gauges(good.plan).size() == 1);
  // 1 1/2 in of wood altogether: the point of this one is 1/64 in under the other face.
  CHECK(test::build(screwed("length = \"1 31/64\"\n")).found("screw-comes-out"));
  CHECK(
      test::build(screwed("length = \"1 1/4\"\nclearance = \"1/8\"\n")).found("screw-hole-tight"));
  CHECK(test::build(screwed("length = \"1 1/4\"\npilot = \"1/32\"\n")).found("pilot-hole-size"));
}

namespace {

// A top of the width given on two rails, one along its grain and one across it, with a fastener of
// the kind on the rail named.
std::string top_on_rails(double width, const std::string& type, const std::string& rail,
                         const std::string& face) {
  const std::string w = std::to_string(width);
  return test::job() +
         "[stock.oak]\nkind = \"board\"\nthickness = 1\nspecies = \"white oak\"\n"
         "[stock.rail]\nkind = \"board\"\nthickness = \"3/4\"\n"
         "[board.along]\nat = [2, 1, 7]\nstock = \"rail\"\nlength = 26\nwidth = 3\nroll = 90\n"
         "[board.across]\nat = [29, 1, 7]\nstock = \"rail\"\nlength = \"" +
         w +
         " - 2\"\nwidth = 3\nturn = 90\nroll = 90\n"
         "[top.t]\noutline = { front = 30, deep = " +
         w +
         " }\nat = [0, 0, 10]\nstock = \"oak\"\n"
         "[top.t.fastener.f]\ntype = \"" +
         type + "\"\nto = \"" + rail + "\"\nface = \"" + face + "\"\n";
}

}  // namespace

// woodcraft.com, "Joinery class: attaching tabletops": on rails across the grain figure-8 fasteners
// stand square to the rail and swing; on rails along the grain they can't; for tops under 18 in.
TEST_CASE("fasteners may follow the top's movement") {
  const test::Built across = test::build(top_on_rails(16, "figure-8", "across", "left"));
  CAPTURE(across.stops());
  REQUIRE(across.stops().empty());
  CHECK_FALSE(across.found("fastener-too-small"));
  CHECK(test::build(top_on_rails(16, "figure-8", "along", "back")).found("fastener-held"));
  CHECK_FALSE(test::build(top_on_rails(16, "clip", "along", "back")).found("fastener-held"));
  CHECK(test::build(top_on_rails(24, "figure-8", "across", "left")).found("fastener-too-small"));
  // The tongue of a clip is some 10 mm long (common practice, no source): a broad top draws it out.
  CHECK_FALSE(test::build(top_on_rails(16, "clip", "along", "back")).found("fastener-lets-go"));
  CHECK(test::build(top_on_rails(80, "clip", "along", "back")).found("fastener-lets-go"));
}

TEST_CASE("sizes as goods are sold") {
  CHECK(native_length("1 1/4 in") == Approx(31.75));
  CHECK(native_length("25 mm") == 25);
  CHECK(native_length("3/4 in wide") == Approx(19.05));
  CHECK(native_length("felt, 20 mm") == 0);
  CHECK(native_length("1/0 in") == 0);
  CHECK(native_length("") == 0);
  CHECK(length_of("#8 x 1 1/4 in") == Approx(31.75));
  CHECK(length_of("5 x 40 mm") == 40);
  CHECK(length_of("32 mm") == 0);
}

// Where a rail lies across the top's grain the top moves along it: the slot is longer than the clip
// by twice what White oak, flatsawn, moves there (0.00365 a point, Wood Handbook, Table 13-5).
TEST_CASE("slots for clips and blocks are as long as the top's movement asks") {
  for (const auto& [type, wide] : {std::pair{"clip", 19.05}, std::pair{"slotted block", 38.1}}) {
    CAPTURE(type);
    const test::Built built = test::build(top_on_rails(30, type, "across", "left"));
    CAPTURE(built.stops());
    REQUIRE(built.stops().empty());
    const std::vector<TopFastening> all = top_fastenings(built.plan);
    REQUIRE(all.size() == 1);
    const TopFastening& one = all.front();
    CHECK(one.along_rail);
    double off = 0;
    for (const parts::Fitting& fitting : built.plan.assembly.fittings)
      off = std::max(off, std::abs(fitting.at.y - 15 * 25.4));
    const Soundness& sound = built.plan.soundness;
    CHECK(one.shrinks == Approx(off * 0.00365 * (sound.made - sound.driest)));
    CHECK(one.swells == Approx(off * 0.00365 * (sound.dampest - sound.made)));
    CHECK(one.needs == Approx(wide + 2 * std::max(one.shrinks, one.swells)));
    // The slots nearer to the middle are shorter; the shortest has what its own place asks.
    CHECK(one.slot >= wide - 0.2);
    CHECK_FALSE(built.found("fastener-held"));
    // On the rail along the grain it slides out of its slot, and keeps off the rail by as much.
    const test::Built along = test::build(top_on_rails(30, type, "along", "back"));
    const TopFastening front = top_fastenings(along.plan).front();
    CHECK_FALSE(front.along_rail);
    CHECK(front.needs == 0);
    // The slot is in the back of the front rail: swelling drives the clip towards the front.
    CHECK(front.set_back == Approx(front.swells + 25.4 / 32));
  }
}

TEST_CASE("screws of fasteners and hinges don't come out of the other face") {
  const auto clips = [](const std::string& size) {
    return test::build(top_on_rails(16, "clip", "along", "back") +
                       "[hardware.screws]\nwhat = \"screw\"\nsize = \"" + size +
                       "\"\nper = \"table clip\"\n");
  };
  CHECK_FALSE(clips("#8 x 5/8 in").found("screw-comes-out"));
  CHECK(clips("#8 x 1 in").found("screw-comes-out"));
  // A door in a case of 18 mm sides; the hinges are let in by 2, as thick as their leaves.
  const auto hinged = [](const std::string& size) {
    return test::build(
        test::job("mm") + test::sheet("panel", "18 mm") +
        "[case.c]\noutline = { bottom = 500, height = 700 }\ndepth = 300\nstock = \"panel\"\n"
        "[door.d]\nof = \"c\"\nslab = { stock = \"panel\" }\n"
        "[hardware.screws]\nwhat = \"screw\"\nsize = \"" +
        size + "\"\ncount = 6\nper = \"butt hinge\"\n");
  };
  const test::Built good = hinged("#6 x 5/8 in");
  CAPTURE(good.stops());
  CHECK_FALSE(good.found("screw-comes-out"));
  CHECK(hinged("#6 x 3/4 in").found("screw-comes-out"));
}

TEST_CASE("a price in the hardware table goes before one of the price list") {
  const std::string piece = plank(
      "[hardware.pin]\nsize = \"5 mm\"\ncount = 21\nprice = 4.5\npack "
      "= 20\n[buying.hardware.any]\nfitting = \"pin\"\nprice = 9\n");
  const test::Built built = test::build(piece);
  const HardwareList list = list_hardware(built.plan);
  REQUIRE(line(list, "pin") != nullptr);
  CHECK(line(list, "pin")->priced);
  CHECK(line(list, "pin")->price == 4.5);
  CHECK(line(list, "pin")->packs() == 2);
  const Bill bill = make_bill(built.plan);
  REQUIRE(bill.hardware.size() == 1);
  CHECK(bill.hardware[0].cents == 900);
  CHECK(bill.quote_net == 900);
}
