// Frames, drawers and doors.
#include "properties/hold.h"

using namespace splay;
using test::Pencil;

namespace {

std::string a_frame(Pencil& p) {
  std::string text = "[frame.f]\nstock = \"oak\"\noutline = { bottom = " + p.mm(350, 900) +
                     ", height = " + p.mm(300, 900) + ", lean_in = " + p.leans(-12, 12) +
                     " }\nwidth = " + p.mm(40, 80) + "\ncorners = \"" +
                     p.word({"mitre", "butt", "half lap", "mortise and tenon", "loose tenon"}) +
                     "\"\n";
  if (p.coin())
    text += "rebate = { width = " + p.mm(8) + ", depth = " + p.mm(8) +
            " }\npanel = { stock = \"back\", clearance = " + p.mm(1) + " }\n";
  return text + "[frame.f.member." + p.left() + "]\nwidth = " + p.mm(40, 80) + "\n";
}

// No dowels: in inches and in millimetres they are sold in other diameters; and the room over the
// box is said, which is left to itself in steps of the unit.
std::string a_drawer(Pencil& p) {
  std::string text =
      "[drawer.d]\nopening = { bottom = " + p.mm(300, 800) + ", height = " + p.mm(100, 220) +
      ", lean_in = " + p.leans(-4, 4) + " }\ndepth = " + p.mm(320, 600) + "\nrunner = { kind = \"" +
      p.word({"side", "wooden"}) + "\", length = " + p.mm(300) + ", above = " + p.mm(4) +
      " }\npacking = { stock = \"thick\", least = " + p.mm(3) + " }\nbox = { stock = \"" +
      p.word({"oak", "thin"}) + "\", bottom = \"back\", corners = \"" +
      p.word({"butt", "rabbet", "tongue", "box joint", "dovetail"}) + "\" }\n";
  return text + "front = { stock = \"" + p.word({"panel", "oak"}) + "\", gap = " + p.mm(2) + " }\n";
}

std::string leaf(Pencil& p) {
  if (p.coin()) return "slab = { stock = \"panel\" }\n";
  return "frame = { stock = \"oak\", width = " + p.mm(40, 80) + ", corners = \"" +
         p.word({"mortise and tenon", "loose tenon", "half lap", "mitre"}) +
         "\", panel = { stock = \"back\", fit = \"groove\", into = " + p.mm(8) + " } }\n";
}

std::string a_door(Pencil& p) {
  const std::string opening = "[door.d]\nopening = { bottom = " + p.mm(300, 700) +
                              ", height = " + p.mm(400, 900) + " }\nhung = \"" + p.left() +
                              "\"\ngap = { all = " + p.mm(1, 3) + " }\n";
  return opening + leaf(p);
}

// A door in a case, with hinges that are let in or drilled for.
std::string a_hung_door(Pencil& p) {
  const std::string hung = p.coin() ? p.left() : p.right();
  return "[case.c]\noutline = { bottom = " + p.mm(350, 700) + ", height = " + p.mm(450, 900) +
         " }\ndepth = " + p.mm(200, 400) + "\nstock = \"panel\"\n[door.d]\nof = \"c\"\nhung = \"" +
         hung + "\"\ngap = { all = " + p.mm(2) + " }\nhinges = { kind = \"" +
         p.word({"butt", "cup", "pivot"}) +
         "\" }\nframe = { stock = \"oak\", width = " + p.mm(65, 80) +
         ", corners = \"mortise and tenon\", panel = { stock = \"back\", fit = \"groove\", into "
         "= " +
         p.mm(8) + " } }\n";
}

}  // namespace

TEST_CASE("random frames") { test::hold({"frames", 20261201, 120, a_frame}); }
TEST_CASE("random drawers") { test::hold({"drawers", 20262201, 120, a_drawer}); }
TEST_CASE("random doors") { test::hold({"doors", 20263201, 100, a_door}); }
TEST_CASE("random hung doors") { test::hold({"hung doors", 20264201, 100, a_hung_door}); }
