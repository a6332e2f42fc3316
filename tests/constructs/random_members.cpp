// Random stands and tables from a seed: each is sound or says clearly why not; the same in inches
// and in millimetres; its mirror image when it is mirrored.
#include <cmath>

#include "parts/audit.h"
#include "support/chance.h"
#include "support/mirror.h"
#include "support/piece.h"

using namespace splay;
using test::Chance;

namespace {

// A project text whose lengths can be written in either unit.
struct Text {
  std::string unit;
  std::string mm(double length) const {
    return unit == "mm" ? plain_number(length, 9) : plain_number(length / Length::mm_per_inch, 12);
  }
  static std::string degrees(double angle) { return "\"" + plain_number(angle, 9) + " deg\""; }
  std::string stocks() const {
    return test::job(unit) + test::board("leg", "120 mm") + test::board("oak", "20 mm") +
           test::board("thin", "16 mm");
  }
};

struct StandSizes {
  double height, width, depth, left, right, front, back, top_width, foot_width, leg_thick;
  double brace_width, cross_at, cross_to, rail_at, tie_at;
  bool in_plan, flat, proud, level_walls, stated_at_top;
  const char* taper;
  const char* widths;
};

StandSizes random_stand(Chance& chance) {
  StandSizes s{};
  s.height = chance.between(350, 900);
  s.width = chance.between(600, 1100);
  s.depth = chance.between(400, 600);
  s.left = chance.between(-6, 12);
  s.right = chance.coin() ? s.left : chance.between(-6, 12);
  s.front = chance.coin() ? 0 : chance.between(-5, 8);
  s.back = chance.coin() ? s.front : chance.between(-5, 8);
  s.top_width = chance.between(45, 90);
  s.foot_width = chance.between(25, 45);
  s.leg_thick = chance.between(20, 40);
  s.brace_width = chance.between(25, 40);
  s.cross_at = chance.between(0.12, 0.3) * s.height;
  s.cross_to = chance.between(0.5, 0.65) * s.height;
  s.rail_at = 0.88 * s.height;
  s.tie_at = 0.76 * s.height;
  s.in_plan = chance.coin();
  s.flat = chance.coin();
  s.proud = chance.coin();
  s.level_walls = chance.between(0, 1) < 0.25;
  s.stated_at_top = chance.coin();
  s.taper = chance.word({"inside", "outside", "both"});
  s.widths = chance.word({"level", "square"});
  return s;
}

std::string write(const StandSizes& s, const std::string& unit) {
  const Text t{unit};
  std::string text =
      t.stocks() + "[stand.s]\nheight = " + t.mm(s.height) + "\nwidth = " + t.mm(s.width) +
      "\ndepth = " + t.mm(s.depth) + "\nstated_at = \"" + (s.stated_at_top ? "top" : "foot") +
      "\"\nlean_in = [" + Text::degrees(s.left) + ", " + Text::degrees(s.right) +
      "]\nlean_in_depth = [" + Text::degrees(s.front) + ", " + Text::degrees(s.back) +
      "]\n[stand.s.leg]\nstock = \"leg\"\ntop_width = " + t.mm(s.top_width) +
      "\nfoot_width = " + t.mm(s.foot_width) + "\nthickness = " + t.mm(s.leg_thick) +
      "\ntaper = \"" + s.taper + "\"\nwidths = \"" + s.widths + "\"\n";
  const std::string brace = "stock = \"thin\"\nwidth = " + t.mm(s.brace_width) +
                            (s.proud ? "\nproud = " + t.mm(8) : std::string()) + "\nwalls = \"" +
                            (s.level_walls ? "parallel to the floor" : "along the brace") + "\"\n";
  text += "[stand.s.brace.x]\n" + brace + "at = " + t.mm(s.cross_at);
  text += s.in_plan ? std::string("\ncrossed = \"in plan\"\nlies = \"") +
                          (s.flat ? "flat" : "on edge") + "\"\n"
                    : "\nother_at = " + t.mm(s.cross_to) + "\ncrossed = \"in elevation\"\n";
  text += "[stand.s.brace.rail]\n" + brace + "at = " + t.mm(s.rail_at) + "\n";
  text +=
      "[stand.s.brace.tie]\n" + brace + "at = " + t.mm(s.tie_at) + "\nruns = \"left and right\"\n";
  return text;
}

struct TableSizes {
  int legs;
  double height, width, depth, radius, splay, side_splay, direction, leg_width, leg_depth,
      foot_share, straight, apron_width, set_back, stretcher_at, overhang;
  bool stated_at_foot, trued, plumb, stretcher, top, sets_back;
  const char* taper;
  const char* roll;
};

TableSizes random_table(Chance& chance) {
  TableSizes s{};
  s.legs = chance.between(0, 1) < 0.6 ? 4 : static_cast<int>(chance.between(3, 9));
  s.height = chance.between(380, 780);
  s.width = chance.between(600, 1200);
  s.depth = chance.between(450, 800);
  s.radius = chance.between(260, 400);
  s.splay = chance.between(0, 14);
  s.side_splay = chance.between(0, 14);
  s.direction = s.legs == 4 ? chance.between(0, 90) : chance.coin() ? 0 : chance.between(-25, 25);
  s.leg_width = chance.between(38, 60);
  s.leg_depth = chance.coin() ? s.leg_width : chance.between(38, 60);
  s.foot_share = chance.coin() ? 1 : chance.between(0.5, 0.95);
  s.apron_width = chance.between(50, 90);
  s.straight = chance.coin() ? s.apron_width + 20 : 0;
  s.set_back = chance.between(1, 8);
  s.stretcher_at = chance.between(0.15, 0.35) * s.height;
  s.overhang = chance.between(0, 40);
  s.stated_at_foot = chance.coin();
  s.trued = chance.coin();
  s.plumb = chance.coin();
  s.stretcher = chance.coin();
  s.top = chance.coin();
  s.sets_back = s.legs == 4 && chance.coin();
  s.taper = chance.word({"inside", "outside", "all"});
  s.roll = chance.word({"front", "side", "line of lean"});
  return s;
}

std::string write(const TableSizes& s, const std::string& unit) {
  const Text t{unit};
  std::string text = t.stocks() + "[table.t]\nlegs = " + std::to_string(s.legs) +
                     "\nheight = " + t.mm(s.height) + "\nstated_at = \"" +
                     (s.stated_at_foot ? "foot" : "top") + "\"\n";
  if (s.legs == 4)
    text += "width = " + t.mm(s.width) + "\ndepth = " + t.mm(s.depth) + "\nsplay = [" +
            Text::degrees(s.splay) + ", " + Text::degrees(s.side_splay) + "]\n";
  else
    text += "radius = " + t.mm(s.radius) + "\nlean = " + Text::degrees(s.splay) +
            "\ndirection = " + Text::degrees(s.direction) + "\n";
  text +=
      "[table.t.leg]\nstock = \"leg\"\nwidth = " + t.mm(s.leg_width) +
      "\ndepth = " + t.mm(s.leg_depth) + "\nfoot_width = " + t.mm(s.leg_width * s.foot_share) +
      "\nfoot_depth = " + t.mm(s.leg_depth * s.foot_share) + "\nstraight = " + t.mm(s.straight) +
      "\ntaper = \"" + s.taper + "\"\n" +
      (s.trued ? std::string("section = \"trued\"\n") : "roll = \"" + std::string(s.roll) + "\"\n");
  const std::string face =
      std::string("face = \"") + (s.plumb ? "plumb" : "with the legs") + "\"\n";
  text += "[table.t.apron]\nstock = \"oak\"\nwidth = " + t.mm(s.apron_width) + "\n" + face +
          (s.sets_back ? "set_back = " + t.mm(s.set_back) + "\n" : "");
  if (s.stretcher)
    text += "[table.t.stretcher.low]\nstock = \"thin\"\nwidth = " + t.mm(25) +
            "\nat = " + t.mm(s.stretcher_at) + "\n" + face;
  if (s.top)
    text += "[table.t.top]\nstock = \"oak\"\noverhang = " + t.mm(s.overhang) + "\nshape = \"" +
            (s.legs == 4 ? "rectangle" : "regular") + "\"\n";
  return text;
}

// Every mate closed and every finding complete. True when nothing stands in the way.
bool members_sound(const test::Built& built) {
  for (const Finding& finding : built.plan.findings)
    if (finding.code == "no-joint") CHECK(finding.span.line > 0);
  if (!test::says_sound(built)) return false;
  test::check_joints_closed(built);
  test::check_no_clash(built);
  return true;
}

}  // namespace

TEST_CASE("sixty random stands") {
  constexpr unsigned seed = 20260311;
  Chance chance(seed);
  int good = 0;
  for (int i = 0; i < 60; ++i) {
    StandSizes sizes = random_stand(chance);
    const std::string text = write(sizes, "mm");
    INFO("seed " << seed << ", stand " << i << "\n" << text);
    const test::Built built = test::build(text);
    good += members_sound(built);
    test::check_same(built, test::build(write(sizes, "in")));
    // Mirrored from left to right. Which of two crossing braces is cut from which face is a rule of
    // its own and isn't mirrored: of those only the outside is compared.
    std::swap(sizes.left, sizes.right);
    const test::Built mirror = test::build(write(sizes, "mm"));
    CHECK(built.plan.stopped() == mirror.plan.stopped());
    if (!built.plan.stopped())
      test::check_mirrored(built, mirror, [](const parts::Part& part) {
        return (" " + part.name).find(" x ") != std::string::npos;
      });
  }
  INFO("seed " << seed << ": " << good << " of 60 can be built");
  CHECK(good >= 55);
}

TEST_CASE("sixty random tables") {
  constexpr unsigned seed = 20260312;
  Chance chance(seed);
  int good = 0;
  for (int i = 0; i < 60; ++i) {
    TableSizes sizes = random_table(chance);
    const std::string text = write(sizes, "mm");
    INFO("seed " << seed << ", table " << i << "\n" << text);
    const test::Built built = test::build(text);
    good += members_sound(built);
    test::check_same(built, test::build(write(sizes, "in")));
    if (built.plan.stopped()) continue;
    // Turning the lean the other way gives the mirror image; four legs are their own.
    if (sizes.legs != 4) sizes.direction = -sizes.direction;
    test::check_mirrored(built, test::build(write(sizes, "mm")));
  }
  INFO("seed " << seed << ": " << good << " of 60 can be built");
  CHECK(good >= 45);
}
