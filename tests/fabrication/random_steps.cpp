// Cases, rings, stands and tables.
#include "fabrication/random_steps.h"

#include <catch2/catch.hpp>

using namespace splay;
using test::Chance;

namespace {

std::string canted_case(Chance& chance) {
  const double width = chance.between(500, 1100), height = chance.between(400, 800);
  std::string text = test::a_shop(chance) +
                     "[case.c]\noutline = { bottom = " + plain_number(width, 3) +
                     ", height = " + plain_number(height, 3) + ", lean_in = [" +
                     chance.degrees(-12, 18) + ", " + chance.degrees(-12, 18) +
                     "] }\ndepth = " + chance.mm(180, 380) + "\nstock = \"panel\"\ncorners = " +
                     chance.word({"\"mitre\"", "\"butt\"\nthrough = [\"bottom\", \"top\"]"}) + "\n";
  if (chance.coin())
    text += std::string("[case.c.back]\nstock = \"back\"\nfit = \"") +
            chance.word({"rabbet", "groove"}) + "\"\ninto = 8\nclearance = 1\n";
  if (chance.coin())
    text += "[case.c.shelf.a]\ntop_at = " + plain_number(height * chance.between(0.35, 0.6), 3) +
            "\nset_back = 5\nends = { housing = 5, floor = \"" +
            chance.word({"square to walls", "parallel to face"}) + "\"" +
            (chance.coin() ? ", stopped = 12" : "") + " }\n";
  return text;
}

std::string ring(Chance& chance) {
  return test::a_shop(chance) + "[case.r]\noutline = { sides = " +
         std::to_string(static_cast<int>(chance.between(3, 13))) +
         ", across_flats = " + chance.mm(300, 800) + " }\ndepth = " + chance.mm(120, 300) +
         "\nstock = \"panel\"\ncorners = \"mitre\"\n";
}

std::string stand(Chance& chance) {
  const double height = chance.between(350, 900);
  const std::string brace = "stock = \"thin\"\nwidth = " + chance.mm(25, 40) + "\n";
  return test::a_shop(chance) + "[stand.s]\nheight = " + plain_number(height, 3) +
         "\nwidth = " + chance.mm(600, 1100) + "\ndepth = " + chance.mm(400, 600) +
         "\nlean_in = [" + chance.degrees(-6, 12) + ", " + chance.degrees(-6, 12) +
         "]\nlean_in_depth = [" + chance.degrees(-5, 8) + ", " + chance.degrees(-5, 8) +
         "]\n[stand.s.leg]\nstock = \"leg\"\ntop_width = " + chance.mm(45, 90) +
         "\nfoot_width = " + chance.mm(25, 45) + "\nthickness = " + chance.mm(20, 40) +
         "\ntaper = \"" + chance.word({"inside", "outside", "both"}) + "\"\n" +
         "[stand.s.brace.rail]\n" + brace + "at = " + plain_number(0.88 * height, 3) +
         "\n[stand.s.brace.tie]\n" + brace + "at = " + plain_number(0.76 * height, 3) +
         "\nruns = \"left and right\"\n";
}

std::string table(Chance& chance) {
  const double width = chance.between(38, 60);
  return test::a_shop(chance) + "[table.t]\nheight = " + chance.mm(380, 780) +
         "\nwidth = " + chance.mm(600, 1200) + "\ndepth = " + chance.mm(450, 800) + "\nsplay = [" +
         chance.degrees(0, 12) + ", " + chance.degrees(0, 12) +
         "]\n[table.t.leg]\nstock = \"leg\"\nwidth = " + plain_number(width, 3) +
         "\ndepth = " + plain_number(width, 3) +
         "\nfoot_width = " + plain_number(width * chance.between(0.5, 1), 3) + "\ntaper = \"" +
         chance.word({"inside", "outside", "all"}) + "\"\nroll = \"" +
         chance.word({"front", "side", "line of lean"}) +
         "\"\n[table.t.apron]\nstock = \"oak\"\nwidth = " + chance.mm(50, 90) + "\nface = \"" +
         chance.word({"plumb", "with the legs"}) + "\"\n";
}

// Leaning sides round a plan, as of a tray, with a floor.
std::string tray(Chance& chance) {
  const int sides = chance.coin() ? 4 : static_cast<int>(chance.between(3, 11));
  std::string text = test::a_shop(chance) + "[ring.r]\nplan = { sides = " + std::to_string(sides) +
                     ", across_flats = " + chance.mm(300, 600) +
                     " }\nheight = " + chance.mm(60, 250) +
                     "\nlean_out = " + chance.degrees(-8, 40) + "\nstock = \"" +
                     chance.word({"panel", "oak"}) + "\"\n";
  if (sides == 4 && chance.coin()) text += "corners = \"butt\"\nthrough = [\"front\", \"back\"]\n";
  if (chance.coin()) text += "top_edge = \"square\"\n";
  if (chance.coin())
    text += "floor = { stock = \"back\", underside_at = " + chance.mm(8, 20) +
            (chance.coin() ? ", into = 6" : "") + " }\n";
  if (sides == 4)
    for (const char* side : {"left", "right"})
      text += std::string("[ring.r.side.") + side + "]\nlean_out = " + chance.degrees(0, 30) + "\n";
  return text;
}

// A case with an edged front, a nosed shelf and a face frame.
std::string framed_case(Chance& chance) {
  const double height = chance.between(500, 1000);
  return test::a_shop(chance) + "[case.c]\noutline = { bottom = " + chance.mm(500, 1000) +
         ", height = " + plain_number(height, 3) + ", lean_in = [" + chance.degrees(-10, 10) +
         ", " + chance.degrees(-10, 10) + "] }\ndepth = " + chance.mm(200, 400) +
         "\nstock = \"panel\"\n[case.c.shelf.s]\ntop_at = " +
         plain_number(height * chance.between(0.3, 0.4), 3) +
         "\nfront = { edge = \"nosing\", stock = \"lip\" }\n[case.c.frame]\nstock = "
         "\"oak\"\nwidth = " +
         chance.mm(35, 60) + "\n[case.c.frame.rail.mid]\nat = " + plain_number(height / 2, 3) +
         "\n";
}

}  // namespace

TEST_CASE("random canted cases are proven") {
  test::prove({"canted cases", 20261101, 100, canted_case, 0.75});
}
TEST_CASE("random rings of panels are proven") { test::prove({"rings", 20262101, 50, ring, 0.75}); }
TEST_CASE("random stands are proven") { test::prove({"stands", 20263101, 50, stand}); }
TEST_CASE("random tables are proven") { test::prove({"tables", 20264101, 50, table}); }
TEST_CASE("random trays are proven") { test::prove({"trays", 20265101, 40, tray}); }
TEST_CASE("random cases with face frames are proven") {
  test::prove({"framed cases", 20266101, 30, framed_case});
}
