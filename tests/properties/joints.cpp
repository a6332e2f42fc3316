// Boards and sticks anywhere, joined by every kind of joint; tops and what holds them.
#include "properties/hold.h"

using namespace splay;
using test::Pencil;

namespace {

std::string board(const std::string& name, const std::string& stock, const std::string& rest) {
  return "[board." + name + "]\nstock = \"" + stock + "\"\n" + rest;
}

std::string joint(const std::string& kind, const std::string& host, const std::string& guest,
                  const std::string& more = "") {
  return "[joint." + guest + "_to_" + host + "]\nkind = \"" + kind + "\"\nhost = \"" + host +
         "\"\nguest = \"" + guest + "\"\n" + more;
}

// A board anywhere, cut off at both ends in two of the ways there are.
std::string a_board(Pencil& p) {
  const double turn = p.between(-180, 180), rise = p.between(-40, 40), length = p.between(400, 900);
  const double x = p.between(-300, 300), y = p.between(-300, 300), z = p.between(500, 900);
  std::string text = board(
      "b", "oak",
      "anchor = \"middle\"\nat = " + p.point(x, y, z) + "\nlength = " + p.mm(length) +
          "\nwidth = " + p.mm(60, 200) + "\nturn = " + p.direction(turn) +
          "\nrise = " + Pencil::degrees(rise) + "\nroll = " + p.hand(p.between(-180, 180)) + "\n");
  for (const double end : {-1.0, 1.0}) {
    const double t = Angle::degrees(turn).rad, r = Angle::degrees(rise).rad;
    const double off = end * length * p.between(0.2, 0.4), run = off * std::cos(r);
    const std::string kind = p.word({"square", "level", "plumb", "slope", "angles"});
    text += std::string("[board.b.cut.") + (end < 0 ? "low" : "high") + "]\ncut = \"" + kind +
            "\"\nwaste = \"" + (end < 0 ? "first end" : "second end") + "\"\nthrough = " +
            p.point(x + run * std::cos(t), y + run * std::sin(t), z + off * std::sin(r)) + "\n";
    const double one = p.between(-40, 40), other = p.between(-40, 40);
    if (kind == "plumb") text += "turn = " + p.hand(one) + "\n";
    if (kind == "slope")
      text += "slope = " + Pencil::degrees(90 - std::abs(one)) +
              "\ndownhill = " + p.direction(turn + other) + "\n";
    if (kind == "angles")
      text += "face_angle = " + p.hand(one) + "\nbevel = " + Pencil::degrees(other) + "\n";
  }
  return text;
}

// Two leaning posts with a rail between them, joined at both ends by one kind, and a bar lapped
// across the rail.
std::string a_trestle(Pencil& p) {
  const double half = p.between(200, 400), high = p.between(400, 800), lean = p.between(0, 60),
               at = p.between(0.5, 0.7) * high;
  std::string text;
  for (const double side : {-1.0, 1.0})
    text += std::string("[stick.") + (side < 0 ? p.left() : p.right()) +
            "]\nfrom = " + p.point(side * (half + (side < 0 ? lean : lean / 2)), 0, 0) +
            "\nto = " + p.point(side * half, 0, high) + "\nstock = \"thick\"\nwidth = " + p.mm(40) +
            "\nto_width = " + p.mm(60) + "\nthickness = " + p.mm(50) +
            "\nfrom_end = { cut = \"level\" }\nto_end = { cut = \"level\" }\n";
  text += board("rail", "oak",
                "anchor = \"middle\"\nat = " + p.point(0, 0, at) + "\nlength = " +
                    p.mm(2 * half + 2 * lean) + "\nwidth = " + p.mm(60, 90) + "\nroll = 90\n");
  const std::string kind = p.word({"mortise and tenon", "mortise and tenon", "loose tenon", "butt",
                                   "housing", "bridle", "half lap"});
  std::string more;
  if (kind == "mortise and tenon")
    more = p.coin() ? "length = " + p.mm(20) + "\n" : "through = true\n";
  for (const char* side : {p.left(), p.right()}) text += joint(kind, side, "rail", more);
  if (p.coin())
    text +=
        board("bar", "oak",
              "anchor = \"middle\"\nat = " + p.point(0, 0, at) + "\nlength = " + p.mm(200, 300) +
                  "\nwidth = " + p.mm(40) + "\nturn = 90\nroll = 90\n") +
        joint("half lap", "rail", "bar");
  return text;
}

// Two boards on edge whose middles meet at a corner and run a little past it.
std::string a_corner(Pencil& p) {
  const double past = 30, one = p.between(300, 600), two = p.between(300, 600);
  const std::string wide = p.mm(80, 160);
  const std::string kind = p.word({"mitre", "spline", "box joint", "dovetail", "rabbet", "butt",
                                   "half lap", "dowel", "screw", "bridle", "housing"});
  std::string more;
  // Left to itself it is the nearest size sold, in inches another than in millimetres.
  if (kind == "dowel") more = "diameter = " + p.mm(6, 9) + "\n";
  if (kind == "spline") more = "on = \"mitre\"\n";
  if (kind == "half lap" || kind == "bridle") more = "form = \"corner\"\n";
  if (kind == "screw") more = "through = \"host\"\n";
  const std::string first = p.word({"oak", "thin"});
  return board("one", first,
               "anchor = \"middle\"\nat = " + p.point(one / 2 - past, 0, 0) +
                   "\nlength = " + p.mm(one) + "\nwidth = " + wide + "\nroll = 90\n") +
         board("two", "oak",
               "anchor = \"middle\"\nat = " + p.point(0, two / 2 - past, 0) +
                   "\nlength = " + p.mm(two) + "\nwidth = " + wide + "\nturn = 90\nroll = 90\n") +
         joint(kind, "one", "two", more);
}

// A panel stands in a groove of a board; a batten is glued under another.
std::string a_panel(Pencil& p) {
  const std::string long_side = p.mm(300, 700);
  const auto at = [&](double y, double z, double low, double high) {
    return "at = " + p.point(0, y, z) + "\nlength = " + long_side + "\nwidth = " + p.mm(low, high) +
           "\n";
  };
  const std::string sill = board("sill", "thick", at(0, 0, 60, 120));
  const std::string panel = board("panel", "oak", at(30, 54, 120, 240) + "roll = 90\n");
  const std::string lid = board("lid", "oak", at(-200, 0, 60, 120));
  return sill + panel + joint("groove", "sill", "panel") + lid +
         board("strip", "oak", at(-200, 20, 30, 60)) + joint("glued", "lid", "strip");
}

std::string a_top(Pencil& p) {
  std::string text = "[top.t]\nstock = \"oak\"\noutline = { front = " + p.mm(500, 1300) +
                     ", back = " + p.mm(500, 1300) + ", deep = " + p.mm(300, 700) + " }\n";
  if (p.coin()) text += "corner_radius = " + p.mm(5, 80) + "\n";
  if (p.coin())
    text += "bevel = { angle = " + p.degrees(10, 60) + ", height = " + p.mm(2, 12) + " }\n";
  else if (p.coin())
    text += "breadboard = { width = " + p.mm(50, 90) + " }\n";
  return text;
}

// A top on two rails, held by fasteners of one kind; some with breadboard ends.
std::string a_held_top(Pencil& p) {
  const double front = p.between(700, 1200), deep = p.between(350, 600);
  std::string text =
      board("along", "oak",
            "at = " + p.point(60, 60, 600) + "\nlength = " + p.mm(front - 200) +
                "\nwidth = " + p.mm(80) + "\nroll = 90\n") +
      board("across", "oak",
            "at = " + p.point(front - 60, 60, 600) + "\nlength = " + p.mm(deep - 120) +
                "\nwidth = " + p.mm(80) + "\nturn = 90\nroll = 90\n") +
      "[top.t]\nstock = \"oak\"\noutline = { front = " + p.mm(front) + ", deep = " + p.mm(deep) +
      " }\nat = " + p.point(0, 0, 680) + "\n";
  if (p.coin())
    text += "breadboard = { width = " + p.mm(80) + ", movement = " + p.mm(3, 8) +
            ", pin = " + p.mm(8) + " }\n";
  const std::string type = p.word({"figure-8", "clip", "slotted block"});
  for (const auto& [name, face] : {std::pair{"along", "back"}, std::pair{"across", "left"}})
    text += std::string("[top.t.fastener.") + name + "]\ntype = \"" + type + "\"\nto = \"" + name +
            "\"\nface = \"" + face + "\"\ncount = " + std::to_string(p.coin() ? 2 : 3) + "\n";
  return text;
}

constexpr double half = 0.5;
constexpr bool one_handed = false;

}  // namespace

TEST_CASE("random boards cut at both ends") { test::hold({"boards", 20260708, 80, a_board}); }
TEST_CASE("random trestles") { test::hold({"trestles", 20265201, 120, a_trestle}); }
TEST_CASE("random corners") { test::hold({"corners", 20266201, 160, a_corner}); }
TEST_CASE("random grooved panels") {
  test::hold({"panels", 20267201, 40, a_panel, half, one_handed});
}
TEST_CASE("random tops") { test::hold({"tops", 20264201, 100, a_top}); }
TEST_CASE("random tops held by fasteners") {
  test::hold({"held tops", 20268201, 80, a_held_top, half, one_handed});
}
