// The way in: corners turned, and where a piece that doesn't pass is taken apart.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "fabrication/gluing.h"
#include "fabrication/soundness.h"
#include "support/piece.h"

using namespace splay;
using namespace splay::fabrication;

// A problem of calculus textbooks: the longest ladder carried level round the corner of two
// corridors a and b wide is (a^(2/3) + b^(2/3))^(3/2); for 8 and 27 ft it is 13 sqrt(13) ft.
TEST_CASE("the longest ladder round a corner") {
  CHECK(longest_round_corner(0, 8, 27) == Approx(13 * std::sqrt(13.0)));
  CHECK(longest_round_corner(0, 3, 3) == Approx(3 * std::sqrt(8.0)));
  CHECK(longest_round_corner(4, 3, 8) < 0);
}

// Plain vectors as the second witness: a rectangle slid along both outer walls at every slant keeps
// clear of the inner corner when it is a little shorter, and not when it is a little longer.
TEST_CASE("a thick piece round a corner") {
  const double a = 900, b = 750, thick = 350;
  const auto clears = [&](double length) {
    for (int i = 1; i < 20000; ++i) {
      const double t = std::numbers::pi / 2 * i / 20000;
      const Vec2 foot{length * std::cos(t), 0}, head{0, length * std::sin(t)};
      const Vec2 along = unit(head - foot);
      const Vec2 in{std::sin(t), std::cos(t)};  // square to it, away from the outer corner
      const Vec2 corner = Vec2{b, a} - foot;
      const double run = dot(corner, along), depth = dot(corner, in);
      if (run > 0 && run < length && depth < thick) return false;
    }
    return true;
  };
  const double longest = longest_round_corner(thick, a, b);
  CHECK(clears(longest - 0.5));
  CHECK_FALSE(clears(longest + 0.5));
}

namespace {

std::string bookcase(const std::string& room) {
  return test::job() + test::sheet("panel", "3/4") + room +
         "[case.a]\noutline = { bottom = 46.5, height = 82 }\ndepth = 14\nstock = \"panel\"\n"
         "corners = \"butt\"\nthrough = [\"left\", \"right\"]\n[case.a.shelf.one]\ntop_at = "
         "40\nends = { housing = \"1/4\" }\n";
}

std::string a_table(const std::string& room) {
  return test::job("mm") + test::board("leg", "60 mm") + test::board("oak", "22 mm") + room +
         "[table.t]\nheight = 740\nwidth = 1000\ndepth = 800\n[table.t.leg]\nstock = "
         "\"leg\"\nwidth = 50\ndepth = 50\n[table.t.apron]\nstock = \"oak\"\nwidth = 90\n";
}

std::string way(double width, double height) {
  return "[room.way.door]\nwidth = " + std::to_string(width) +
         "\nheight = " + std::to_string(height) + "\n";
}

// What must hold of any break that is proposed, told apart from its making: every part is in one
// sub-assembly, the dry joints are those between sub-assemblies, each passes by the corners of its
// solids, and the sub-assemblies come together along straight lines.
void check_break(const test::Built& built, double width, double height) {
  const KnockDown& apart = built.plan.soundness.knock_down;
  const parts::Assembly& all = built.plan.assembly;
  REQUIRE(apart.found());
  std::vector<int> piece_of(all.parts.size(), -1);
  parts::Assembly pieces;
  for (std::size_t i = 0; i < apart.pieces.size(); ++i) {
    parts::Part whole;
    Box box;
    for (const int part : apart.pieces[i].parts) {
      CHECK(piece_of[static_cast<std::size_t>(part)] == -1);
      piece_of[static_cast<std::size_t>(part)] = static_cast<int>(i);
      const Solid& world = all.parts[static_cast<std::size_t>(part)].world;
      if (whole.world.empty())
        whole.world = world;
      else
        whole.world.add_disjoint(world);
      for (const Vec3 p : world.vertices()) box.add(p);
    }
    std::array<double, 3> sides{box.size().x, box.size().y, box.size().z};
    std::ranges::sort(sides);
    // Its two lesser sizes go through: it stands square to the axes here.
    CHECK(sides[0] <= std::min(width, height) + 1e-9);
    CHECK(sides[1] <= std::max(width, height) + 1e-9);
    pieces.parts.push_back(std::move(whole));
  }
  CHECK(std::ranges::count(piece_of, -1) == 0);
  std::vector<int> dry;
  for (std::size_t j = 0; j < all.joints.size(); ++j) {
    parts::Joint joint = all.joints[j];
    for (int& part : joint.between) part = piece_of[static_cast<std::size_t>(part)];
    for (parts::Mate& mate : joint.mates) {
      mate.a = piece_of[static_cast<std::size_t>(mate.a)];
      mate.b = piece_of[static_cast<std::size_t>(mate.b)];
    }
    if (joint.between.front() == joint.between.back()) continue;
    dry.push_back(static_cast<int>(j));
    pieces.joints.push_back(std::move(joint));
  }
  REQUIRE(dry.size() == apart.joints.size());
  for (std::size_t i = 0; i < dry.size(); ++i) CHECK(apart.joints[i].joint == dry[i]);
  CHECK(order_of_assembly(pieces).complete());
}

}  // namespace

TEST_CASE("no break is sought where everything passes") {
  const test::Built built = test::build(bookcase(way(32, 80)));
  CHECK(built.plan.soundness.knock_down.pieces.empty());
  CHECK_FALSE(built.found("too-large-for-way"));
}

TEST_CASE("a bookcase too wide for its way comes apart") {
  const test::Built built = test::build(bookcase(way(13, 30)));
  CHECK(built.found("too-large-for-way"));
  check_break(built, 13 * 25.4, 30 * 25.4);
  CHECK(built.plan.soundness.knock_down.pieces.size() >= 3);
}

TEST_CASE("a bookcase too high to turn up comes apart") {
  const test::Built built = test::build(bookcase("[room]\nceiling = 83\n"));
  CHECK(built.found("too-high-to-turn-up"));
  const KnockDown& apart = built.plan.soundness.knock_down;
  REQUIRE(apart.found());
  for (const SubAssembly& piece : apart.pieces) CHECK(piece.turned_up <= 83 * 25.4);
}

// The legs are 50 from the outside: with the rails of one direction dry, two leg frames go in flat.
TEST_CASE("a table too large for a door is taken apart at its legs") {
  const test::Built built = test::build(a_table(way(650, 1980)));
  REQUIRE(built.stops().empty());
  CHECK(built.found("too-large-for-way"));
  check_break(built, 650, 1980);
  // Four joints, of the two rails that run one way, are the fewest that do.
  CHECK(built.plan.soundness.knock_down.joints.size() == 4);
}

TEST_CASE("where a part by itself doesn't pass no break is made up") {
  const test::Built built = test::build(bookcase(way(10, 10)));
  CHECK_FALSE(built.plan.soundness.knock_down.found());
  REQUIRE_FALSE(built.plan.soundness.knock_down.too_large.empty());
  CHECK(built.found("too-large-for-way"));
}

// Stairs 30 in wide that turn into a landing as wide: 84.9 in of no thickness go round, 82 by 3/4
// do; 46.5 wide with it they don't.
TEST_CASE("stairs that turn") {
  const std::string stairs = "[room.way.stairs]\nwidth = 30\nheight = 60\nturns_into = ";
  const test::Built wide = test::build(bookcase(stairs + "90\n"));
  CHECK_FALSE(wide.found("too-large-for-way"));
  const test::Built narrow = test::build(bookcase(stairs + "30\n"));
  CHECK(narrow.found("too-large-for-way"));
  const KnockDown& apart = narrow.plan.soundness.knock_down;
  REQUIRE(apart.found());
  for (const SubAssembly& piece : apart.pieces)
    for (const Passage& passage : piece.passages) CHECK(passage.passes);
}
