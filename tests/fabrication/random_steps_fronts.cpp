// Frames, drawers and doors.
#include <catch2/catch.hpp>

#include "fabrication/random_steps.h"

using namespace splay;
using test::Chance;

namespace {

std::string leans(Chance& chance, double most) {
  return "[" + chance.degrees(-most, most) + ", " + chance.degrees(-most, most) + "]";
}

std::string a_frame(Chance& chance) {
  std::string text =
      test::a_shop(chance) +
      "[frame.f]\nstock = \"oak\"\noutline = { bottom = " + chance.mm(350, 900) +
      ", height = " + chance.mm(300, 900) + ", lean_in = " + leans(chance, 12) +
      " }\nwidth = " + chance.mm(40, 80) + "\ncorners = \"" +
      chance.word({"mitre", "butt", "half lap", "mortise and tenon", "loose tenon"}) + "\"\n";
  if (chance.coin())
    text += "rebate = { width = 8, depth = 8 }\npanel = { stock = \"back\", clearance = 1 }\n";
  return text + "[frame.f.member.left]\nwidth = " + chance.mm(40, 80) + "\n";
}

std::string a_drawer(Chance& chance) {
  return test::a_shop(chance) + "[drawer.d]\nopening = { bottom = " + chance.mm(300, 800) +
         ", height = " + chance.mm(100, 220) + ", lean_in = " + leans(chance, 4) +
         " }\ndepth = " + chance.mm(320, 600) + "\nrunner = { kind = \"" +
         chance.word({"side", "wooden"}) +
         "\", length = 300 }\npacking = { stock = \"thick\", least = 3 }\nbox = { stock = \"" +
         chance.word({"oak", "thin"}) + "\", bottom = \"back\", corners = \"" +
         chance.word({"butt", "rabbet", "tongue", "box joint", "dovetail"}) +
         "\" }\nfront = { stock = \"" + chance.word({"panel", "oak"}) + "\", gap = 2 }\n";
}

std::string a_door(Chance& chance) {
  const std::string opening = "[door.d]\nopening = { bottom = " + chance.mm(300, 700) +
                              ", height = " + chance.mm(400, 900) + " }\nhung = \"" +
                              chance.word({"left", "right"}) +
                              "\"\ngap = { all = " + chance.mm(1, 3) + " }\n";
  const std::string shop = test::a_shop(chance);
  if (chance.coin()) return shop + opening + "slab = { stock = \"panel\" }\n";
  return shop + opening + "frame = { stock = \"oak\", width = " + chance.mm(40, 80) +
         ", corners = \"" + chance.word({"mortise and tenon", "half lap", "mitre"}) +
         "\", panel = { stock = \"back\", fit = \"groove\", into = 8 } }\n";
}

// A door in a case, with hinges that are let in or drilled for, and a knob.
std::string a_hung_door(Chance& chance) {
  const std::string kind = chance.word({"butt", "cup", "pivot"});
  return test::a_shop(chance) + "[case.c]\noutline = { bottom = " + chance.mm(350, 700) +
         ", height = " + chance.mm(450, 900) + " }\ndepth = " + chance.mm(200, 400) +
         "\nstock = \"panel\"\n[door.d]\nof = \"c\"\nhung = \"" + chance.word({"left", "right"}) +
         "\"\ngap = { all = 2 }\nhinges = { kind = \"" + kind +
         "\" }\nframe = { stock = \"oak\", width = " + chance.mm(65, 80) +
         ", corners = \"mortise and tenon\", panel = { stock = \"back\", fit = \"groove\", into = "
         "8 } }\n";
}

}  // namespace

TEST_CASE("random frames are proven") { test::prove({"frames", 20261201, 50, a_frame}); }
TEST_CASE("random drawers are proven") { test::prove({"drawers", 20262201, 40, a_drawer}); }
TEST_CASE("random doors are proven") { test::prove({"doors", 20263201, 40, a_door}); }
TEST_CASE("random hung doors are proven") {
  test::prove({"hung doors", 20264201, 40, a_hung_door});
}
