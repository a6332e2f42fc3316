// Stands of leaning tapered legs with braces lapped into them, and splayed tables.
#include "properties/hold.h"

using namespace splay;
using test::Pencil;

namespace {

std::string legs(Pencil& p, const std::string& lean_in) {
  const std::string front = p.coin() ? Pencil::degrees(0) : p.degrees(-5, 8);
  const std::string back = p.coin() ? front : p.degrees(-5, 8);
  return "width = " + p.mm(600, 1100) + "\ndepth = " + p.mm(400, 600) + "\nstated_at = \"" +
         p.word({"top", "foot"}) + "\"\nlean_in = " + lean_in + "\nlean_in_depth = [" + front +
         ", " + back + "]\n[stand.s.leg]\nstock = \"leg\"\ntop_width = " + p.mm(45, 90) +
         "\nfoot_width = " + p.mm(25, 45) + "\nthickness = " + p.mm(20, 40) + "\ntaper = \"" +
         p.word({"inside", "outside", "both"}) + "\"\nwidths = \"" + p.word({"level", "square"}) +
         "\"\n";
}

std::string a_stand(Pencil& p) {
  const double height = p.between(350, 900);
  std::string text = "[stand.s]\nheight = " + p.mm(height) + "\n" + legs(p, p.leans(-6, 12));
  std::string brace = "stock = \"thin\"\nwidth = " + p.mm(25, 40) + "\n";
  if (p.coin()) brace += "proud = " + p.mm(8) + "\n";
  if (p.between(0, 1) < 0.25) brace += "walls = \"parallel to the floor\"\n";
  text += "[stand.s.brace.x]\n" + brace + "at = " + p.mm(p.between(0.12, 0.3) * height) + "\n";
  if (p.coin())
    text += std::string("crossed = \"in plan\"\nlies = \"") + p.word({"flat", "on edge"}) + "\"\n";
  else
    text += "crossed = \"in elevation\"\nother_at = " + p.mm(p.between(0.5, 0.65) * height) + "\n";
  return text + "[stand.s.brace.rail]\n" + brace + "at = " + p.mm(0.88 * height) +
         "\n[stand.s.brace.tie]\n" + brace + "at = " + p.mm(0.76 * height) +
         "\nruns = \"left and right\"\n";
}

// Turning the lean the other way gives the mirror image; four legs that lean alike are their own.
std::string a_table(Pencil& p) {
  const int count = p.between(0, 1) < 0.6 ? 4 : static_cast<int>(p.between(3, 9));
  const double height = p.between(380, 780), leg_width = p.between(38, 60);
  const double leg_depth = p.coin() ? leg_width : p.between(38, 60);
  const double foot = p.coin() ? 1 : p.between(0.5, 0.95), apron = p.between(50, 90);
  std::string text = "[table.t]\nlegs = " + std::to_string(count) + "\nheight = " + p.mm(height) +
                     "\nstated_at = \"" + p.word({"top", "foot"}) + "\"\n";
  if (count == 4)
    text += "width = " + p.mm(600, 1200) + "\ndepth = " + p.mm(450, 800) + "\nsplay = [" +
            p.degrees(0, 14) + ", " + p.degrees(0, 14) + "]\n";
  else
    text += "radius = " + p.mm(260, 400) + "\nlean = " + p.degrees(0, 14) +
            "\ndirection = " + p.hand(p.coin() ? 0 : p.between(-25, 25)) + "\n";
  text += "[table.t.leg]\nstock = \"leg\"\nwidth = " + p.mm(leg_width) +
          "\ndepth = " + p.mm(leg_depth) + "\nfoot_width = " + p.mm(leg_width * foot) +
          "\nfoot_depth = " + p.mm(leg_depth * foot) +
          "\nstraight = " + p.mm(p.coin() ? apron + 20 : 0) + "\ntaper = \"" +
          p.word({"inside", "outside", "all"}) + "\"\n";
  text += p.coin() ? std::string("section = \"trued\"\n")
                   : std::string("roll = \"") + p.word({"front", "side", "line of lean"}) + "\"\n";
  const std::string face = std::string("face = \"") + p.word({"plumb", "with the legs"}) + "\"\n";
  text += "[table.t.apron]\nstock = \"oak\"\nwidth = " + p.mm(apron) + "\n" + face;
  if (count == 4 && p.coin()) text += "set_back = " + p.mm(1, 8) + "\n";
  if (p.coin())
    text += "[table.t.stretcher.low]\nstock = \"thin\"\nwidth = " + p.mm(25) +
            "\nat = " + p.mm(p.between(0.15, 0.35) * height) + "\n" + face;
  if (p.coin())
    text += "[table.t.top]\nstock = \"oak\"\noverhang = " + p.mm(0, 40) + "\nshape = \"" +
            (count == 4 ? "rectangle" : "regular") + "\"\n";
  return text;
}

// A cabinet on a stand that goes on at its lean; some with a door or a drawer.
std::string a_cabinet(Pencil& p) {
  const double height = p.between(400, 700), under = p.between(450, 700);
  std::string text = "[case.c]\noutline = { bottom = " + p.mm(700, 1200) +
                     ", height = " + p.mm(height) + ", lean_in = " + p.leans(-4, 12) +
                     " }\ndepth = " + p.mm(320, 500) + "\nstock = \"panel\"\n";
  if (p.coin()) text += "corners = \"butt\"\nthrough = [\"bottom\", \"top\"]\n";
  if (p.coin())
    text += "[case.c.back]\nstock = \"back\"\nfit = \"rabbet\"\ninto = " + p.mm(8) + "\n";
  text += "[case.c.shelf.low]\ntop_at = " + p.mm(p.between(0.25, 0.4) * height) +
          "\nends = { housing = " + p.mm(5) + " }\n";
  if (p.coin())
    text += "[drawer.d]\nof = \"c\"\nwithin = [" + p.mm(350) + ", " + p.mm(60) +
            "]\ndepth = " + p.mm(300) + "\nrunner = { kind = \"side\", length = " + p.mm(250) +
            " }\npacking = { stock = \"thick\", least = " + p.mm(2) +
            " }\nbox = { stock = \"thin\", bottom = \"back\", corners = \"" +
            p.word({"box joint", "dovetail", "rabbet"}) +
            "\" }\nfront = { stock = \"oak\", gap = " + p.mm(2) + " }\n";
  text += "[stand.s]\nunder = \"c\"\nheight = " + p.mm(under) +
          "\n[stand.s.leg]\nstock = \"leg\"\nthickness = " + p.mm(30) +
          "\ntop_width = " + p.mm(60, 90) + "\nfoot_width = " + p.mm(25, 45) + "\ntaper = \"" +
          p.word({"inside", "outside", "both"}) + "\"\n";
  const std::string brace = "stock = \"thin\"\nwidth = " + p.mm(30, 40) + "\n";
  text += "[stand.s.brace.x]\n" + brace + "at = " + p.mm(p.between(0.15, 0.3) * under) + "\n";
  text +=
      p.coin()
          ? std::string("crossed = \"in plan\"\n")
          : "crossed = \"in elevation\"\nother_at = " + p.mm(p.between(0.5, 0.62) * under) + "\n";
  return text + "[stand.s.brace.rail]\n" + brace + "at = " + p.mm(0.93 * under) +
         "\n[stand.s.brace.tie]\n" + brace + "at = " + p.mm(0.8 * under) +
         "\nruns = \"left and right\"\n";
}

test::Kind crossed(const char* what, unsigned seed, int pieces, std::string (*write)(Pencil&)) {
  test::Kind kind{what, seed, pieces, write};
  kind.crosses = true;
  return kind;
}

}  // namespace

TEST_CASE("random stands") { test::hold(crossed("stands", 20263101, 160, a_stand)); }
TEST_CASE("random tables") { test::hold({"tables", 20264101, 160, a_table}); }
TEST_CASE("random cabinets on stands") {
  test::hold(crossed("cabinets", 20264301, 120, a_cabinet));
}
