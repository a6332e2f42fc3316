// Cases with shelves, partitions, backs and face frames; rings of panels; leaning sides round a
// plan.
#include "properties/hold.h"

using namespace splay;
using test::Pencil;

namespace {

std::string number(int count) { return std::to_string(count); }

std::string a_back(Pencil& p) {
  return std::string("[case.c.back]\nstock = \"back\"\ninto = ") + p.mm(8) +
         "\nclearance = " + p.mm(1) + "\nfit = \"" +
         (p.coin() ? "groove\"\nset_in = " + p.mm(10) : "rabbet\"") + "\n";
}

std::string an_edge(Pencil& p) {
  return std::string("front = { ") +
         (p.coin() ? "edge = \"nosing\", stock = \"lip\"" : "edge = \"band\", stock = \"band\"") +
         ", glued = \"" + p.word({"before the cuts", "after the cuts"}) + "\" }\n";
}

std::string shelf(Pencil& p, const std::string& name, double top_at) {
  std::string text = "[case.c.shelf." + name + "]\ntop_at = " + p.mm(top_at) + "\n";
  if (p.coin()) text += "set_back = " + p.mm(0, 12) + "\n";
  if (p.coin())
    text += "ends = { housing = " + p.mm(3, 8) + ", floor = \"" +
            p.word({"square to walls", "parallel to face"}) + "\"" +
            (p.coin() ? ", stopped = " + p.mm(12) : "") + " }\n";
  if (p.coin()) text += an_edge(p);
  return text;
}

std::string canted(Pencil& p, double width, double height, double lean) {
  return "[case.c]\noutline = { bottom = " + p.mm(width) + ", height = " + p.mm(height) +
         ", lean_in = " + p.leans(-lean, lean) + " }\ndepth = " + p.mm(180, 450) +
         "\nstock = \"panel\"\n";
}

std::string canted_case(Pencil& p) {
  const double width = p.between(500, 1100), height = p.between(400, 1200);
  // Nor so that nothing is left at the top.
  const double lean = std::min(16.0, test::degrees(std::atan((width - 250) / 2 / height)));
  std::string text = canted(p, width, height, lean);
  if (p.coin()) text += "corners = \"butt\"\nthrough = [\"top\", \"bottom\"]\n";
  if (p.coin()) text += an_edge(p);
  if (p.coin()) text += a_back(p);
  const double first = p.between(0.3, 0.45), second = p.between(0.6, 0.8);
  if (p.coin()) text += shelf(p, "low", height * first);
  if (p.coin()) text += shelf(p, "high", height * second);
  return text;
}

std::string framed_case(Pencil& p) {
  const double height = p.between(500, 1200);
  std::string text = canted(p, p.between(500, 1100), height, 12);
  if (p.coin()) text += a_back(p);
  text += shelf(p, "s", height * p.between(0.3, 0.4));
  return text + "[case.c.frame]\nstock = \"oak\"\nwidth = " + p.mm(30, 60) +
         "\n[case.c.frame.member.left]\nwidth = " + p.mm(50) +
         "\n[case.c.frame.member.right]\nwidth = " + p.mm(50) +
         "\n[case.c.frame.rail.mid]\nat = " + p.mm(height * 0.5) + "\n";
}

// Square or nearly, with a partition on a shelf, and below it a pair of doors.
std::string fitted_case(Pencil& p) {
  const double width = p.between(700, 1100), height = p.between(700, 1300);
  std::string text = canted(p, width, height, p.coin() ? 0 : 5);
  text += "corners = \"butt\"\nthrough = [\"left\", \"right\"]\n";
  if (p.coin()) text += an_edge(p);
  if (p.coin()) text += a_back(p);
  text += "[case.c.shelf.s]\ntop_at = " + p.mm(height * p.between(0.45, 0.6)) +
          "\nends = { housing = " + p.mm(6) + " }\n";
  if (p.coin())
    text += "[case.c.partition.p]\ncentre_at = " + p.mm(width / 2) +
            "\nbetween = [\"s\", \"top\"]\nlower = { housing = " + p.mm(5) + " }\n";
  const std::string leaves =
      p.coin() ? "leaves = 2\n" : std::string("hung = \"") + p.left() + "\"\n";
  text += "[door.d]\nof = \"c\"\nwithin = [" + p.mm(width / 2) + ", " + p.mm(height / 4) + "]\n" +
          leaves + "gap = { all = " + p.mm(2) + " }\nmeeting_gap = " + p.mm(3) + "\n" +
          "hinges = { kind = \"" + p.word({"butt", "cup"}) + "\" }\n";
  return text + (p.coin()
                     ? "slab = { stock = \"panel\" }\n"
                     : "frame = { stock = \"oak\", width = " + p.mm(60, 75) +
                           ", corners = \"mortise and tenon\", panel = { stock = \"back\", fit "
                           "= \"groove\", into = " +
                           p.mm(8) + " } }\n");
}

std::string ring_of_panels(Pencil& p) {
  return "[case.r]\noutline = { sides = " + number(static_cast<int>(p.between(3, 13))) +
         ", across_flats = " + p.mm(300, 800) + " }\ndepth = " + p.mm(120, 300) +
         "\nstock = \"panel\"\ncorners = \"mitre\"\n";
}

std::string tray(Pencil& p) {
  const int sides = p.coin() ? 4 : static_cast<int>(p.between(3, 11));
  std::string text = "[ring.r]\nplan = { sides = " + number(sides) +
                     ", across_flats = " + p.mm(300, 600) + " }\nheight = " + p.mm(60, 250) +
                     "\nlean_out = " + p.degrees(-8, 40) + "\nstock = \"" +
                     p.word({"panel", "oak"}) + "\"\n";
  if (sides == 4 && p.coin()) text += "corners = \"butt\"\nthrough = [\"front\", \"back\"]\n";
  if (p.coin()) text += "top_edge = \"square\"\n";
  if (p.coin()) {
    text += "floor = { stock = \"back\", underside_at = " + p.mm(8, 20);
    text += (p.coin() ? ", into = " + p.mm(6) : "") + " }\n";
  }
  if (sides == 4)
    for (const char* side : {p.left(), p.right()})
      text += std::string("[ring.r.side.") + side + "]\nlean_out = " + p.degrees(0, 30) + "\n";
  return text;
}

}  // namespace

TEST_CASE("random canted cases") { test::hold({"canted cases", 20261101, 200, canted_case, 0.75}); }
TEST_CASE("random cases with face frames") {
  test::hold({"framed cases", 20266101, 120, framed_case});
}
TEST_CASE("random fitted cases") { test::hold({"fitted cases", 20267301, 80, fitted_case}); }
TEST_CASE("random rings of panels") {
  test::hold({"rings of panels", 20262101, 100, ring_of_panels, 0.75});
}
TEST_CASE("random trays") { test::hold({"trays", 20265101, 140, tray}); }
