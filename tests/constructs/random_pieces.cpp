// Random cases, rings, frames, drawers, doors, tops, boards, sticks and joints from a seed: each is
// sound or says clearly why not; the same in inches and in millimetres; mirrored when mirrored.
#include <cmath>
#include <functional>

#include "parts/audit.h"
#include "support/chance.h"
#include "support/mirror.h"
#include "support/piece.h"

using namespace splay;

namespace {

// A piece as text: every length in either unit, and left and right exchanged on demand.
class Writer : public test::Chance {
 public:
  Writer(unsigned seed, std::string unit, bool mirrored)
      : Chance(seed), unit_(std::move(unit)), mirrored_(mirrored) {}
  std::string mm(double length) const {
    return plain_number(unit_ == "mm" ? length : length / Length::mm_per_inch, 12);
  }
  static std::string degrees(double angle) { return "\"" + plain_number(angle, 9) + " deg\""; }
  std::string leans(double low, double high) {
    const std::string left = degrees(between(low, high)), right = degrees(between(low, high));
    return "[" + (mirrored_ ? right + ", " + left : left + ", " + right) + "]";
  }
  std::string point(double x, double y, double z) const {
    return "[" + mm(mirrored_ ? -x : x) + ", " + mm(y) + ", " + mm(z) + "]";
  }
  // A plan direction, and an angle that a mirror turns round.
  std::string direction(double angle) const {
    return degrees(std::remainder(mirrored_ ? 180 - angle : angle, 360));
  }
  std::string hand(double angle) const { return degrees(mirrored_ ? -angle : angle); }
  const char* left() const { return mirrored_ ? "right" : "left"; }
  const char* right() const { return mirrored_ ? "left" : "right"; }
  std::string head() const {
    return test::job(unit_) + test::sheet("panel", "18 mm") + test::sheet("thin", "6 mm") +
           test::board("oak", "20 mm") + test::board("thick", "60 mm") + test::board("lip", "5 mm");
  }

 private:
  std::string unit_;
  bool mirrored_;
};

std::string a_case(Writer& w) {
  const double width = w.between(500, 1100), height = w.between(500, 1200);
  std::string text = "[case.c]\noutline = { bottom = " + w.mm(width) +
                     ", height = " + w.mm(height) + ", lean_in = " + w.leans(-12, 12) +
                     " }\ndepth = " + w.mm(w.between(200, 450)) + "\nstock = \"panel\"\n";
  if (w.coin()) text += "corners = \"butt\"\nthrough = [\"top\", \"bottom\"]\n";
  if (w.coin()) text += "front = { edge = \"nosing\", stock = \"lip\" }\n";
  if (w.coin())
    text += std::string("[case.c.back]\nstock = \"thin\"\ninto = ") + w.mm(8) + "\nfit = \"" +
            (w.coin() ? "groove\"\nset_in = " + w.mm(10) : "rabbet\"") + "\n";
  for (int i = 1; i <= 2; ++i) {
    text += "[case.c.shelf.s" + std::to_string(i) +
            "]\ntop_at = " + w.mm(height * (i == 1 ? w.between(0.3, 0.45) : w.between(0.6, 0.8))) +
            "\n";
    if (w.coin()) text += "set_back = " + w.mm(w.between(0, 12)) + "\n";
    if (w.coin())
      text += "ends = { housing = " + w.mm(w.between(3, 8)) + ", floor = \"" +
              (w.coin() ? "square to walls" : "parallel to face") + "\" }\n";
    if (w.coin()) text += "front = { edge = \"nosing\", stock = \"lip\" }\n";
  }
  if (w.coin())
    text += "[case.c.frame]\nstock = \"oak\"\nwidth = " + w.mm(w.between(30, 60)) +
            "\n[case.c.frame.member.left]\nwidth = " + w.mm(50) +
            "\n[case.c.frame.member.right]\nwidth = " + w.mm(50) +
            "\n[case.c.frame.rail.mid]\nat = " + w.mm(height * 0.5) + "\n";
  return text;
}

std::string a_ring(Writer& w) {
  const int sides = w.coin() ? 4 : static_cast<int>(w.between(3, 11));
  std::string text = "[ring.r]\nplan = { sides = " + std::to_string(sides) +
                     ", across_flats = " + w.mm(w.between(300, 600)) +
                     " }\nheight = " + w.mm(w.between(60, 250)) +
                     "\nlean_out = " + Writer::degrees(w.between(-8, 40)) + "\nstock = \"" +
                     (w.coin() ? "panel" : "oak") + "\"\n";
  if (sides == 4 && w.coin()) text += "corners = \"butt\"\nthrough = [\"front\", \"back\"]\n";
  if (w.coin()) text += "top_edge = \"square\"\n";
  if (w.coin())
    text += "floor = { stock = \"thin\", underside_at = " + w.mm(w.between(8, 20)) +
            (w.coin() ? ", into = " + w.mm(6) : std::string()) + " }\n";
  if (sides == 4) {
    const double one = w.between(0, 30), other = w.between(0, 30);
    text += std::string("[ring.r.side.") + w.left() + "]\nlean_out = " + Writer::degrees(one) +
            "\n[ring.r.side." + w.right() + "]\nlean_out = " + Writer::degrees(other) + "\n";
  }
  return text;
}

std::string a_frame(Writer& w) {
  std::string text =
      "[frame.f]\nstock = \"oak\"\noutline = { bottom = " + w.mm(w.between(350, 900)) +
      ", height = " + w.mm(w.between(300, 900)) + ", lean_in = " + w.leans(-12, 12) +
      " }\nwidth = " + w.mm(w.between(40, 80)) + "\ncorners = \"" +
      w.word({"mitre", "butt", "half lap", "mortise and tenon", "loose tenon"}) + "\"\n";
  if (w.coin())
    text += "rebate = { width = " + w.mm(8) + ", depth = " + w.mm(8) +
            " }\npanel = { stock = \"thin\", clearance = " + w.mm(1) + " }\n";
  return text + "[frame.f.member." + w.left() + "]\nwidth = " + w.mm(w.between(40, 80)) + "\n";
}

// No dowels: in inches and in millimetres they are sold in other diameters.
std::string a_drawer(Writer& w) {
  return "[drawer.d]\nopening = { bottom = " + w.mm(w.between(300, 800)) +
         ", height = " + w.mm(w.between(100, 220)) + ", lean_in = " + w.leans(-4, 4) +
         " }\ndepth = " + w.mm(w.between(320, 600)) + "\nrunner = { kind = \"" +
         w.word({"side", "wooden"}) + "\", length = " + w.mm(300) +
         " }\npacking = { stock = \"thick\", least = " + w.mm(3) +
         " }\nbox = { stock = \"oak\", bottom = \"thin\", corners = \"" +
         w.word({"butt", "rabbet", "tongue", "box joint", "dovetail"}) +
         "\" }\nfront = { stock = \"panel\", gap = " + w.mm(2) + " }\n";
}

std::string a_door(Writer& w) {
  const bool slab = w.coin();
  return "[door.d]\nopening = { bottom = " + w.mm(w.between(300, 700)) +
         ", height = " + w.mm(w.between(400, 900)) + " }\nhung = \"" + w.left() +
         "\"\ngap = { all = " + w.mm(w.between(1, 3)) + " }\n" +
         (slab ? "slab = { stock = \"panel\" }\n"
               : std::string("frame = { stock = \"oak\", width = ") + w.mm(w.between(40, 80)) +
                     ", corners = \"" +
                     w.word({"mortise and tenon", "loose tenon", "half lap", "mitre"}) +
                     "\", panel = { stock = \"thin\", fit = \"groove\", into = " + w.mm(8) +
                     " } }\n");
}

std::string a_top(Writer& w) {
  std::string text = "[top.t]\nstock = \"oak\"\noutline = { front = " + w.mm(w.between(500, 1300)) +
                     ", back = " + w.mm(w.between(500, 1300)) +
                     ", deep = " + w.mm(w.between(300, 700)) + " }\n";
  if (w.coin()) text += "corner_radius = " + w.mm(w.between(5, 80)) + "\n";
  if (w.coin())
    text += "bevel = { angle = " + Writer::degrees(w.between(10, 60)) +
            ", height = " + w.mm(w.between(2, 12)) + " }\n";
  else if (w.coin())
    text += "breadboard = { width = " + w.mm(w.between(50, 90)) + " }\n";
  return text;
}

// A board anywhere, cut off at both ends in two of the ways there are.
std::string a_board(Writer& w) {
  const double turn = w.between(-180, 180), rise = w.between(-40, 40), length = w.between(400, 900);
  const double x = w.between(-300, 300), y = w.between(-300, 300), z = w.between(500, 900);
  std::string text = "[board.b]\nstock = \"oak\"\nanchor = \"middle\"\nat = " + w.point(x, y, z) +
                     "\nlength = " + w.mm(length) + "\nwidth = " + w.mm(w.between(60, 200)) +
                     "\nturn = " + w.direction(turn) + "\nrise = " + Writer::degrees(rise) +
                     "\nroll = " + w.hand(w.between(-180, 180)) + "\n";
  for (const double end : {-1.0, 1.0}) {
    const double t = Angle::degrees(turn).rad, r = Angle::degrees(rise).rad;
    const double off = end * length * w.between(0.2, 0.4), run = off * std::cos(r);
    const std::string kind = w.word({"square", "level", "plumb", "slope", "angles"});
    text += std::string("[board.b.cut.") + (end < 0 ? "low" : "high") + "]\ncut = \"" + kind +
            "\"\nwaste = \"" + (end < 0 ? "first end" : "second end") + "\"\nthrough = " +
            w.point(x + run * std::cos(t), y + run * std::sin(t), z + off * std::sin(r)) + "\n";
    const double one = w.between(-40, 40), other = w.between(-40, 40);
    if (kind == "plumb") text += "turn = " + w.hand(one) + "\n";
    if (kind == "slope")
      text += "slope = " + Writer::degrees(90 - std::abs(one)) +
              "\ndownhill = " + w.direction(turn + other) + "\n";
    if (kind == "angles")
      text += "face_angle = " + w.hand(one) + "\nbevel = " + Writer::degrees(other) + "\n";
  }
  return text;
}

// Two leaning posts and a rail between them, tenoned by name; a board lapped across the rail.
std::string a_trestle(Writer& w) {
  const double half = w.between(200, 400), high = w.between(400, 800), lean = w.between(0, 60);
  std::string text;
  for (const double side : {-1.0, 1.0})
    text += std::string("[stick.") + (side < 0 ? w.left() : w.right()) +
            "]\nfrom = " + w.point(side * (half + (side < 0 ? lean : lean / 2)), 0, 0) +
            "\nto = " + w.point(side * half, 0, high) + "\nstock = \"thick\"\nwidth = " + w.mm(40) +
            "\nto_width = " + w.mm(60) + "\nthickness = " + w.mm(50) +
            "\nfrom_end = { cut = \"level\" }\nto_end = { cut = \"level\" }\n";
  const double at = w.between(0.5, 0.7) * high;
  text += "[board.rail]\nstock = \"oak\"\nanchor = \"middle\"\nat = " + w.point(0, 0, at) +
          "\nlength = " + w.mm(2 * half + 2 * lean) + "\nwidth = " + w.mm(w.between(60, 90)) +
          "\nroll = 90\n";
  text += "[board.bar]\nstock = \"oak\"\nanchor = \"middle\"\nat = " + w.point(0, 0, at) +
          "\nlength = " + w.mm(w.between(200, 300)) + "\nwidth = " + w.mm(40) +
          "\nturn = 90\nroll = 90\n";
  for (const char* side : {w.left(), w.right()})
    text += std::string("[joint.at_") + side + "]\nkind = \"mortise and tenon\"\nhost = \"" + side +
            "\"\nguest = \"rail\"\nlength = " + w.mm(20) + "\n";
  return text + "[joint.cross]\nkind = \"half lap\"\nhost = \"rail\"\nguest = \"bar\"\n";
}

bool piece_sound(const test::Built& built) {
  // What the audit alone finds is a construct that built what can't be.
  for (const Finding& finding : built.plan.findings)
    if (finding.level == Level::stop)
      for (const char* code : {"overlap", "floating", "open-joint", "nothing-left"})
        CHECK(finding.code != code);
  if (!test::says_sound(built)) return false;
  test::check_joints_closed(built);
  return true;
}

void try_all(const std::function<std::string(Writer&)>& text, unsigned seed, int count, int least) {
  int good = 0;
  for (int i = 0; i < count; ++i) {
    const unsigned own = seed + static_cast<unsigned>(i);
    const auto write = [&](const char* unit, bool mirrored) {
      Writer writer(own, unit, mirrored);
      const std::string head = writer.head();
      return head + text(writer);
    };
    INFO("seed " << own << "\n" << write("mm", false));
    const test::Built built = test::build(write("mm", false));
    const bool is_sound = piece_sound(built);
    good += is_sound;
    test::check_same(built, test::build(write("in", false)));
    const test::Built mirror = test::build(write("mm", true));
    CHECK(built.stops().empty() == mirror.stops().empty());
    if (is_sound) test::check_mirrored(built, mirror);
  }
  INFO("from seed " << seed << ": " << good << " of " << count << " can be built");
  CHECK(good >= least);
}

}  // namespace

TEST_CASE("random cases") { try_all(a_case, 20260701, 40, 30); }
TEST_CASE("random rings") { try_all(a_ring, 20260702, 40, 30); }
TEST_CASE("random frames") { try_all(a_frame, 20260703, 30, 24); }
TEST_CASE("random drawers") { try_all(a_drawer, 20260704, 30, 10); }
TEST_CASE("random doors") { try_all(a_door, 20260705, 20, 16); }
TEST_CASE("random tops") { try_all(a_top, 20260706, 30, 20); }
TEST_CASE("random boards, cut at both ends") { try_all(a_board, 20260708, 40, 30); }
TEST_CASE("random sticks, boards and joints") { try_all(a_trestle, 20260707, 30, 24); }
