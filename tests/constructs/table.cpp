// Tables, stools and trestles: splay, mortise and tenon, tops.
#include <cmath>

#include "constructs/orientation.h"
#include "support/piece.h"

using namespace splay;
using test::degrees;
using test::inches;
using test::tan_deg;

namespace {

const std::string table_stocks =
    test::board("leg", "3 in") + test::board("oak", "3/4 in") + test::sheet("ply", "1/2 in");

test::Built table(const std::string& sizes, const std::string& leg, const std::string& rest,
                  const std::string& unit = "in") {
  return test::build(test::job(unit) + table_stocks + "[table.t]\n" + sizes +
                     "[table.t.leg]\nstock = \"leg\"\n" + leg + rest);
}

std::string apron(const std::string& more = "") {
  return "[table.t.apron]\nstock = \"oak\"\nwidth = 3\n" + more;
}
const std::string square = "width = \"1 1/2\"\n";

}  // namespace

// Resultant angles of splayed legs: tan R = sqrt(tan^2 a + tan^2 b), q = atan(tan b / tan a),
// length over height 1 / cos R; standard in chair-making texts (from memory).
TEST_CASE("sight angles, true lean, sight line and length") {
  struct Row {
    double front, side, lean, plan, factor;
  };
  const auto row =
      GENERATE(Row{5, 5, 7.053, 45.00, 1.00763}, Row{8, 8, 11.241, 45.00, 1.01956},
               Row{10, 10, 14.002, 45.00, 1.03062}, Row{15, 15, 20.754, 45.00, 1.06939},
               Row{10, 5, 11.136, 26.39, 1.01919}, Row{15, 8, 16.834, 27.68, 1.04477});
  const auto text = [](double degrees) { return plain_number(degrees, 6); };
  const std::string plan = "height = 20\nwidth = 30\ndepth = 20\nstated_at = \"foot\"\n";
  const test::Built built =
      table(plan + "splay = [" + text(row.front) + ", " + text(row.side) + "]\n", square, apron());
  test::check_sound(built);
  CHECK(built.angle("true lean of left front leg") == Approx(row.lean).margin(0.0005));
  CHECK(built.angle("lean of left front leg, from the front") == Approx(row.front));
  CHECK(built.angle("lean of left front leg, from the side") == Approx(row.side));
  CHECK(inches(test::measure(built.part("left front leg"), "along the leg, foot to head")) / 20 ==
        Approx(row.factor).margin(5e-6));
  CHECK(test::remarks(built.part("left front leg"),
                      "along a sight line " + degrees_text(row.plan, 2) + " from the front"));
  // The same legs from the true lean and its direction.
  const constructs::Lean lean = constructs::lean_of({tan_deg(row.front), tan_deg(row.side), 1});
  const test::Built same = table(plan + "lean = " + text(degrees(lean.from_plumb)) +
                                     "\ndirection = " + text(degrees(lean.plan)) + "\n",
                                 square, apron());
  CHECK(difference_volume(built.part("right back leg").world, same.part("right back leg").world) <
        1);
}

// https://www.buildeazy.com/sawhorse-2.php : legs that slope 1 in 2 3/4 and 1 in 4 lean 19.98 and
// 14.04 degrees; the true lean is 23.81, and a leg 25 1/2 in long stands 23.33 in high.
TEST_CASE("a trestle with legs sloping 1 in 2 3/4 and 1 in 4") {
  const test::Built built = table(
      "height = \"25.5 in * cos(atan(sqrt(16/121 + 1/16)))\"\nwidth = 12\ndepth = 24\n"
      "splay = [\"1 in 2.75\", \"1 in 4\"]\n",
      "width = \"1 1/2\"\ndepth = 2\n", apron());
  test::check_sound(built);
  CHECK(built.angle("lean of left front leg, from the front") == Approx(19.98).margin(0.005));
  CHECK(built.angle("lean of left front leg, from the side") == Approx(14.04).margin(0.005));
  CHECK(built.angle("true lean of left front leg") == Approx(23.81).margin(0.005));
  const Box box = built.part("left front leg").world.bounds();
  CHECK(inches(box.high.z - box.low.z) == Approx(23.33).margin(0.005));
  CHECK(inches(test::measure(built.part("left front leg"), "along the leg, foot to head")) ==
        Approx(25.5));
  CHECK(test::remarks(built.part("left front leg"), "1.093 times as long as high"));
  // Two left and two right legs, told apart by their shape.
  const fabrication::PartRow& one = built.row("left front leg");
  const fabrication::PartRow& other = built.row("right front leg");
  CHECK(one.quantity() == 2);
  CHECK(other.quantity() == 2);
  CHECK(&built.row("right back leg") == &one);
  CHECK(one.hand != fabrication::Hand::none);
  CHECK(other.hand != one.hand);
}

TEST_CASE("the stated rectangle holds at the outside of the legs") {
  const std::string at = GENERATE(as<std::string>{}, "top", "foot");
  const std::string leg = GENERATE(
      as<std::string>{}, square, square + "section = \"trued\"\n", square + "roll = \"side\"\n",
      square + "roll = \"line of lean\"\n", "width = 2\nfoot_width = 1\n",
      "width = 2\nfoot_width = 1\ntaper = \"all\"\nstraight = 6\n",
      "width = 2\nfoot_width = 1\ntaper = \"outside\"\n", "width = 2\ndepth = 3\n");
  INFO(at << ", " << leg);
  const test::Built built = table(
      "height = 28\nwidth = 40\ndepth = 24\nsplay = [8, 5]\n"
      "stated_at = \"" +
          at + "\"\n",
      leg, apron());
  test::check_sound(built);
  const double z = at == "top" ? 28 : 0;
  Box box;
  for (const parts::Part& part : built.plan.assembly.parts)
    for (const Vec3& v : part.world.vertices())
      if (std::abs(inches(v.z) - z) < 1e-6 && part.name.ends_with("leg")) box.add(v);
  CHECK(inches(box.size().x) == Approx(40));
  CHECK(inches(box.size().y) == Approx(24));
  CHECK(inches(box.low.x) == Approx(-20));
}

TEST_CASE("square legs keep a square section, trued ones a level rectangle") {
  const std::string sizes = "height = 28\nwidth = 40\ndepth = 24\nsplay = [20, 15]\n";
  const auto corner_dots = [&](const std::string& leg) {
    const test::Built built = table(sizes, leg, apron());
    REQUIRE(built.stops() == "");
    const parts::Part& part = built.part("left front leg");
    struct Found {
      double across, level;
    } found{};
    // The section square to the length, and the level one.
    const auto skew = [](const Face& face) {
      const std::vector<Vec3>& loop = face.loops.front();
      return std::abs(dot(unit(loop[1] - loop[0]), unit(loop[2] - loop[1])));
    };
    const Vec3 middle = part.place.point({part.size.x * 0.4, 0, 0});
    found.across = skew(part.world.section(Plane::through(middle, part.place.ex)).front());
    found.level = skew(part.world.section({{0, 0, 1}, middle.z}).front());
    return found;
  };
  const auto kept = corner_dots(square);
  CHECK(kept.across == Approx(0).margin(1e-9));
  CHECK(kept.level > 0.01);
  const auto trued = corner_dots(square + "section = \"trued\"\n");
  CHECK(trued.level == Approx(0).margin(1e-9));
  CHECK(trued.across > 0.01);
}

// Plane trigonometry: 1.75 to 1.00 over 24 is 1.790 degrees on one face, 0.895 on each of two.
TEST_CASE("tapered legs") {
  const std::string sizes = "height = 24\nwidth = 30\ndepth = 20\n";
  const std::string leg = "width = \"1 3/4\"\nfoot_width = 1\n";
  const test::Built one = table(sizes, leg, apron());
  test::check_sound(one);
  CHECK(one.angle("taper of left front leg, inner face") == Approx(1.790).margin(0.0005));
  CHECK(one.angle("taper of left front leg, inner side") == Approx(1.790).margin(0.0005));
  // A tapered face is cut with the leg on its edge: no more than the taper is set.
  for (const char* side : {"inner face", "inner side"}) {
    const fabrication::CutReport& cut = one.cut("left front leg", std::string("taper, ") + side);
    CHECK(degrees(cut.face_angle) == Approx(1.790).margin(0.0005));
    CHECK(cut.bevel == Approx(0).margin(1e-12));
    CHECK(one.part("left front leg").side_names[static_cast<std::size_t>(cut.side)] == side);
  }
  const test::Built all = table(sizes, leg + "taper = \"all\"\n", apron());
  test::check_sound(all);
  for (const char* side : {"inner face", "outer face", "inner side", "outer side"})
    CHECK(all.angle(std::string("taper of left front leg, ") + side) ==
          Approx(0.895).margin(0.0005));
  const test::Built late = table(sizes, leg + "straight = 4\n", apron());
  test::check_sound(late);
  CHECK(late.angle("taper of left front leg, inner face") == Approx(degrees(std::atan(0.75 / 20))));
}

// https://staging.canadianwoodworking.com/from_robs_bench/one-divider-preferably-with-joinery/ : a
// rail with a 1/4 in tenon at either end is 1/2 in longer than it is between its shoulders; and
// https://commonwoodworking.com/lessons/cutting-the-top-bottom-rail-to-length/ : with 6 mm stubs it
// is 12 mm longer than the opening.
TEST_CASE("rails between plumb legs: shoulders and overall length") {
  const std::string sizes = "height = 28\nwidth = 40\ndepth = 24\n";
  const test::Built inch = table(sizes, square, apron("tenon = { length = \"1/4\" }\n"));
  test::check_sound(inch);
  CHECK(inches(test::measure(inch.part("front apron"), "between shoulders")) == Approx(37));
  CHECK(inches(test::measure(inch.part("front apron"), "over the tenons")) == Approx(37.5));
  CHECK(inches(inch.row("front apron").finished.x) == Approx(37.5));
  const test::Built metric =
      table("height = 700\nwidth = 1000\ndepth = 600\n", "width = 40\n",
            "[table.t.apron]\nstock = \"oak\"\nwidth = 80\ntenon = { length = 6 }\n", "mm");
  test::check_sound(metric);
  CHECK(metric.row("left apron").finished.x == Approx(600 - 2 * 40 + 12));
}

TEST_CASE("rails between splayed legs: longer below, level above") {
  const test::Built built = table("height = 28\nwidth = 40\ndepth = 24\nsplay = [10, 0]\n", square,
                                  apron("tenon = { length = \"1/2\" }\nset_back = \"1/4\"\n"));
  test::check_sound(built);
  const parts::Part& front = built.part("front apron");
  // Legs lean in this apron's plane only, so that its shoulders do, too.
  const double top = 40 - 2 * 1.5 / std::cos(Angle::degrees(10).rad);
  CHECK(inches(test::measure(front, "between shoulders, upper edge on the face")) == Approx(top));
  CHECK(inches(test::measure(front, "between shoulders, lower edge on the face")) ==
        Approx(top + 2 * 3 * tan_deg(10)));
  CHECK(degrees(std::atan(
            std::abs(built.operation("front apron", "shoulder against left front leg").cut.n.y /
                     built.operation("front apron", "shoulder against left front leg").cut.n.x))) ==
        Approx(10));
  // The set-back is level, halfway up.
  CHECK(inches(front.world.bounds().low.y) == Approx(-12 + 0.25));
  // A side apron that leans with the legs has its upper edge bevelled level.
  CHECK(degrees(built.cut("left apron", "bevel, upper edge").bevel) == Approx(10));
  CHECK(inches(built.part("left apron").world.bounds().high.z) == Approx(28));
}

TEST_CASE("neighbouring tenons stop short of each other") {
  const test::Built thin = table("height = 28\nwidth = 40\ndepth = 24\n", square, apron());
  test::check_sound(thin);
  // In the middle of legs 1 1/2 thick with tenons 1/4 thick: up to the halving plane, less 1 mm and
  // the room under the tenon.
  const double most = 0.75 - 0.125 - 1.0 / 16 - std::sqrt(2) / 25.4;
  const parts::Part& front = thin.part("front apron");
  CHECK(inches(test::measure(front, "over the tenons")) -
            inches(test::measure(front, "between shoulders")) ==
        Approx(2 * most));
  // Mitred, they reach the halving plane with their outer cheeks.
  const test::Built mitred = table("height = 28\nwidth = 40\ndepth = 24\nsplay = [6, 4]\n", square,
                                   apron("tenons_meet = \"mitred\"\n"));
  test::check_sound(mitred);
  const parts::Part& other = mitred.part("front apron");
  CHECK(inches(test::measure(other, "over the tenons")) -
            inches(test::measure(other, "between shoulders")) >
        2 * most + 0.2);
  CHECK(table("height = 28\nwidth = 40\ndepth = 24\n", "width = \"3/4\"\n",
              apron("tenon = { length = \"5/8\" }\n"))
            .found("no-joint"));
}

TEST_CASE("stretchers on two sides and one between them") {
  const std::string low =
      "[table.t.stretcher.low]\nstock = \"oak\"\nwidth = 1\nat = 6\n"
      "sides = [\"left\", \"right\"]\n";
  const std::string cross =
      "[table.t.stretcher.cross]\nstock = \"oak\"\nwidth = 1\n"
      "thickness = \"1/2\"\nbetween = \"low\"\ntenon = { through = true }\n";
  const std::string sizes = "height = 18\nwidth = 20\ndepth = 16\nsplay = [8, 8]\n";
  const test::Built built = table(sizes, square, apron() + low + cross);
  test::check_sound(built);
  const Box box = built.part("cross").world.bounds();
  CHECK(inches(box.low.z) == Approx(5.5));
  CHECK((box.low.x + box.high.x) / 2 == Approx(0).margin(1e-9));
  CHECK(table(sizes, square, apron() + cross).found("unknown-neighbour"));
  CHECK(built.row("left low").quantity() == 2);
}

TEST_CASE("legs on a ring: all alike, rails too") {
  const int legs = GENERATE(3, 5, 6, 8);
  INFO(legs);
  const test::Built built =
      table("height = 18\nlegs = " + std::to_string(legs) + "\nradius = 10\nlean = 12\n",
            "width = \"1 3/4\"\n",
            "[table.t.stretcher.low]\nstock = \"oak\"\nwidth = 1\nthickness = \"1/2\"\nat = 7\n"
            "[table.t.top]\nstock = \"oak\"\nshape = \"regular\"\nsides = 24\noverhang = 1\n");
  test::check_sound(built);
  CHECK(built.row("leg 1").quantity() == static_cast<std::size_t>(legs));
  CHECK(built.row("side 1 low").quantity() == static_cast<std::size_t>(legs));
  CHECK(built.angle("lean of leg 1, from the side") == Approx(12));
  CHECK(inches(built.part("top").world.bounds().high.z) == Approx(18));
  // The ring holds at the top of the legs, under a top 3/4 thick.
  CHECK(inches(built.part("leg 1").world.bounds().high.z) == Approx(17.25));
}

TEST_CASE("legs on a ring may turn their lean") {
  const test::Built built =
      table("height = 18\nlegs = 3\nradius = 9\nlean = 14\ndirection = 20\n", "width = \"1 3/4\"\n",
            "[table.t.stretcher.low]\nstock = \"oak\"\nwidth = 1\nthickness = \"1/2\"\nat = 7\n"
            "face = \"plumb\"\n");
  test::check_sound(built);
  CHECK(built.row("leg 1").quantity() == 3);
  CHECK(built.angle("true lean of leg 1") == Approx(14));
}

TEST_CASE("a top lies on the legs and aprons") {
  const test::Built built = table("height = 28\nwidth = 40\ndepth = 24\nsplay = [6, 6]\n", square,
                                  apron() + "[table.t.top]\nstock = \"ply\"\noverhang = 2\n");
  test::check_sound(built);
  const Box box = built.part("top").world.bounds();
  CHECK(inches(box.high.z) == Approx(28));
  CHECK(inches(box.size().x) == Approx(44));
  CHECK(inches(box.size().y) == Approx(28));
  int resting = 0;
  for (const fabrication::JointReport& joint : built.plan.joints)
    resting += joint.kind == "resting";
  CHECK(resting == 8);
}

TEST_CASE("what a table can't be") {
  const std::string sizes = "height = 28\nwidth = 40\ndepth = 24\n";
  CHECK(table(sizes, square, "").found("floating"));
  CHECK(table(sizes, "width = 4\n", apron()).found("thickness"));
  CHECK(table(sizes, square, "[table.t.stretcher.s]\nstock = \"oak\"\nwidth = 1\nat = 40\n")
            .found("rail-off-the-legs"));
  CHECK(table(sizes, square, apron("set_back = 2\n")).found("no-joint"));
  // Common practice, no source: aprons as thick as this reach each other behind three thin legs.
  const test::Built sharp =
      table("height = 28\nlegs = 3\nradius = 12\n", "width = \"1 1/4\"\n", apron());
  CHECK(sharp.found("rails-meet"));
  CHECK_FALSE(sharp.found("overlap"));
  const auto faults = [](const std::string& sizes_text, const std::string& rest = "") {
    return reading::read_project(test::job() + table_stocks + "[table.t]\n" + sizes_text +
                                     "[table.t.leg]\nstock = \"leg\"\nwidth = 1\n" + rest,
                                 "test.toml", constructs::registry())
        .diagnostics;
  };
  CHECK(faults("height = 9\nlegs = 3\nwidth = 9\ndepth = 9\n").at(0).code == "missing-field");
  CHECK(faults("height = 9\nradius = 9\n").at(0).code == "missing-field");
  CHECK(faults(sizes + "splay = [5]\nlean = 5\n").at(0).code == "not-together");
  CHECK(faults("height = 9\nlegs = 3\nradius = 9\nsplay = [5]\n").at(0).code == "not-together");
  CHECK(faults(sizes + "apron = { stock = \"oak\", width = 3, sides = [\"frnt\"] }\n").at(0).hint ==
        "did you mean \"front\"?");
  CHECK(faults(sizes, "[table.t.stretcher.s]\nstock = \"oak\"\nwidth = 1\n").at(0).code ==
        "missing-field");
}
