// Tops, and boards and sticks joined by every kind of joint.
#include <catch2/catch.hpp>

#include "fabrication/random_steps.h"

using namespace splay;
using test::Chance;

namespace {

std::string a_top(Chance& chance) {
  std::string text = test::a_shop(chance) +
                     "[top.t]\nstock = \"oak\"\noutline = { front = " + chance.mm(500, 1300) +
                     ", back = " + chance.mm(500, 1300) + ", deep = " + chance.mm(300, 700) +
                     " }\n";
  if (chance.coin()) text += "corner_radius = " + chance.mm(5, 80) + "\n";
  if (chance.coin())
    text +=
        "bevel = { angle = " + chance.degrees(10, 60) + ", height = " + chance.mm(2, 12) + " }\n";
  return text;
}

std::string board(const std::string& name, const std::string& stock, const std::string& rest) {
  return "[board." + name + "]\nstock = \"" + stock + "\"\n" + rest;
}

std::string joint(const std::string& kind, const std::string& host, const std::string& guest,
                  const std::string& more = "") {
  return "[joint." + guest + "_to_" + host + "]\nkind = \"" + kind + "\"\nhost = \"" + host +
         "\"\nguest = \"" + guest + "\"\n" + more;
}

// Two leaning posts with a rail between them, joined at both ends by one kind, and a bar lapped
// across the rail.
std::string a_trestle(Chance& chance) {
  const double half = chance.between(200, 400), high = chance.between(400, 800),
               lean = chance.between(0, 60), at = chance.between(0.5, 0.7) * high;
  const auto mm = [](double value) { return plain_number(value, 3); };
  std::string text = test::a_shop(chance);
  for (const double side : {-1.0, 1.0})
    text += std::string("[stick.") + (side < 0 ? "left" : "right") + "]\nfrom = [" +
            mm(side * (half + (side < 0 ? lean : lean / 2))) + ", 0, 0]\nto = [" + mm(side * half) +
            ", 0, " + mm(high) +
            "]\nstock = \"thick\"\nwidth = 40\nto_width = 60\nthickness = 50\nfrom_end = { cut = "
            "\"level\" }\nto_end = { cut = \"level\" }\n";
  text += board("rail", "oak",
                "anchor = \"middle\"\nat = [0, 0, " + mm(at) + "]\nlength = " +
                    mm(2 * half + 2 * lean) + "\nwidth = " + chance.mm(60, 90) + "\nroll = 90\n");
  const std::string kind = chance.word({"mortise and tenon", "mortise and tenon", "loose tenon",
                                        "butt", "housing", "bridle", "half lap"});
  std::string more;
  if (kind == "mortise and tenon") more = chance.coin() ? "length = 20\n" : "through = true\n";
  for (const char* side : {"left", "right"}) text += joint(kind, side, "rail", more);
  if (chance.coin()) {
    text +=
        board("bar", "oak",
              "anchor = \"middle\"\nat = [0, 0, " + mm(at) + "]\nlength = " + chance.mm(200, 300) +
                  "\nwidth = 40\nturn = 90\nroll = 90\n");
    text += joint("half lap", "rail", "bar");
  }
  return text;
}

// Two boards on edge whose middles meet at a corner and run a little past it.
std::string a_corner(Chance& chance) {
  const double past = 30, one = chance.between(300, 600), two = chance.between(300, 600);
  const std::string wide = chance.mm(80, 160);
  const std::string kind = chance.word({"mitre", "spline", "box joint", "dovetail", "rabbet",
                                        "butt", "half lap", "dowel", "screw", "bridle", "housing"});
  std::string more;
  if (kind == "spline") more = "on = \"mitre\"\n";
  if (kind == "half lap" || kind == "bridle") more = "form = \"corner\"\n";
  if (kind == "screw") more = "through = \"host\"\n";
  return test::a_shop(chance) +
         board("one", chance.word({"oak", "thin"}),
               "anchor = \"middle\"\nat = [" + plain_number(one / 2 - past, 3) +
                   ", 0, 0]\nlength = " + plain_number(one, 3) + "\nwidth = " + wide +
                   "\nroll = 90\n") +
         board("two", "oak",
               "anchor = \"middle\"\nat = [0, " + plain_number(two / 2 - past, 3) +
                   ", 0]\nlength = " + plain_number(two, 3) + "\nwidth = " + wide +
                   "\nturn = 90\nroll = 90\n") +
         joint(kind, "one", "two", more);
}

// A top on two rails, held by fasteners of one kind; some with breadboard ends.
std::string a_held_top(Chance& chance) {
  const double front = chance.between(700, 1200), deep = chance.between(350, 600);
  std::string text = test::a_shop(chance);
  text += board("along", "oak",
                "at = [60, 60, 600]\nlength = " + plain_number(front - 200, 3) +
                    "\nwidth = 80\nroll = "
                    "90\n");
  text += board("across", "oak",
                "at = [" + plain_number(front - 60, 3) + ", 60, 600]\nlength = " +
                    plain_number(deep - 120, 3) + "\nwidth = 80\nturn = 90\nroll = 90\n");
  text += "[top.t]\nstock = \"oak\"\noutline = { front = " + plain_number(front, 3) +
          ", deep = " + plain_number(deep, 3) + " }\nat = [0, 0, 680]\n";
  if (chance.coin())
    text += "breadboard = { width = 80, movement = " + chance.mm(3, 8) + ", pin = 8 }\n";
  const std::string type = chance.word({"figure-8", "clip", "slotted block"});
  for (const auto& [name, face] : {std::pair{"along", "back"}, std::pair{"across", "left"}})
    text += std::string("[top.t.fastener.") + name + "]\ntype = \"" + type + "\"\nto = \"" + name +
            "\"\nface = \"" + face + "\"\ncount = " + std::to_string(chance.coin() ? 2 : 3) + "\n";
  return text;
}

// A panel stands in a groove of a board; a batten is glued under it.
std::string a_panel(Chance& chance) {
  const std::string long_side = chance.mm(300, 700);
  return test::a_shop(chance) +
         board("sill", "thick",
               "at = [0, 0, 0]\nlength = " + long_side + "\nwidth = " + chance.mm(60, 120) + "\n") +
         board("panel", "oak",
               "at = [0, 30, 54]\nlength = " + long_side + "\nwidth = " + chance.mm(120, 240) +
                   "\nroll = 90\n") +
         joint("groove", "sill", "panel") +
         board("lid", "oak",
               "at = [0, -200, 0]\nlength = " + long_side + "\nwidth = " + chance.mm(60, 120) +
                   "\n") +
         board("strip", "oak",
               "at = [0, -200, 20]\nlength = " + long_side + "\nwidth = " + chance.mm(30, 60) +
                   "\n") +
         joint("glued", "lid", "strip");
}

}  // namespace

TEST_CASE("random tops are proven") { test::prove({"tops", 20264201, 40, a_top}); }
TEST_CASE("random trestles are proven") { test::prove({"trestles", 20265201, 40, a_trestle}); }
TEST_CASE("random corners are proven") { test::prove({"corners", 20266201, 60, a_corner}); }
TEST_CASE("random tops held by fasteners are proven") {
  test::prove({"held tops", 20268201, 30, a_held_top});
}
TEST_CASE("random grooved panels are proven") { test::prove({"panels", 20267201, 10, a_panel}); }
