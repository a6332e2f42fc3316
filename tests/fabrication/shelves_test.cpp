// What is joined along a shelf stiffens it; what only stands there doesn't.
#include "fabrication/bending.h"
#include "fabrication/soundness.h"
#include "support/piece.h"

using namespace splay;
using namespace splay::fabrication;

namespace {

std::string stocks() {
  return test::sheet("panel", "3/4") + "stiffness = 9\ndensity = 600\n" +
         test::sheet("thin", "1/4") +
         "stiffness = 9\n[stock.lip]\nkind = \"board\"\nthickness = \"3/4\"\nspecies = \"white "
         "oak\"\n";
}

// A case 36 by 60 by 12 with a back and one shelf between its sides, 34 1/2 clear.
std::string shelved(const std::string& more = "", const std::string& fit = "rabbet") {
  return test::job() + stocks() +
         "[room]\nshelves = \"books\"\n"
         "[case.a]\noutline = { bottom = 36, height = 60 }\ndepth = 12\nstock = \"panel\"\ncorners "
         "= \"butt\"\nthrough = [\"left\", \"right\"]\n[case.a.back]\nstock = \"thin\"\nfit = \"" +
         fit +
         "\"\ninto = \"3/8\"\n[case.a.shelf.one]\ntop_at = 20\nends = { housing = \"1/4\" }\n" +
         more;
}

std::string hold(const std::string& kind, const std::string& more = "") {
  return "[joint.hold]\nkind = \"" + kind + "\"\nhost = \"back\"\nguest = \"one shelf\"\n" + more;
}

std::string screws(int count) {
  return hold("screw",
              "on = \"touching\"\nthrough = \"host\"\nlength = \"1 1/4\"\ncountersink = "
              "false\ncount = " +
                  std::to_string(count) + "\n");
}

ShelfSag sag_of(const test::Built& built, const std::string& name) {
  CAPTURE(built.stops());
  REQUIRE(built.stops().empty());
  for (const ShelfSag& each : built.plan.soundness.shelves)
    if (built.plan.rows[static_cast<std::size_t>(each.row)].mark == built.row(name).mark)
      return each;
  FAIL(name << " was not reckoned");
  return {};
}

// 5 w L4 / (384 E I) of a shelf by itself.
double bare(const ShelfSag& shelf, double width, double thick) {
  return sag_spread(shelf.load / shelf.span, shelf.span, 9000, second_moment(width, thick));
}

}  // namespace

TEST_CASE("a back that only stands behind a shelf, or lies dry in its groove, carries nothing") {
  const test::Built built = test::build(shelved());
  const ShelfSag shelf = sag_of(built, "one shelf");
  CHECK(shelf.joined.empty());
  CHECK(shelf.sag == Approx(bare(shelf, built.part("one shelf").size.y, 19.05)));
  CHECK(sag_of(test::build(shelved("", "groove")), "top panel").joined.empty());
  // In a rabbet it is glued to the case's own panels.
  CHECK(sag_of(built, "top panel").joined == std::vector<std::string>{built.row("back").mark});
}

TEST_CASE("a back glued to a shelf carries its rear edge") {
  const test::Built built = test::build(shelved(hold("glued")));
  const ShelfSag shelf = sag_of(built, "one shelf");
  CHECK(shelf.joined == std::vector<std::string>{built.row("back").mark});
  const double wide = built.part("one shelf").size.y, free = bare(shelf, wide, 19.05);
  // As a plate carried along three edges: an edge that doesn't give way.
  const double stiffness = 9000 * second_moment(wide, 19.05);
  const Slab slab{wide, stiffness, 4 * 0.06 * stiffness, {{wide, 1e6 * stiffness}}};
  const double front = sag_of_slab(shelf.load / shelf.span, shelf.span, slab).low;
  CHECK(shelf.sag == Approx(front).epsilon(0.01));
  CHECK(shelf.sag < 0.95 * free);
  REQUIRE(shelf.edges.size() == 2);
  CHECK(std::min(shelf.edges[0].sag, shelf.edges[1].sag) < 0.01 * free);
}

// Half as deep as it is long, a shelf resists twisting too little to hand its load to the back.
TEST_CASE("a deep shelf does not sag more for what is joined to it") {
  const std::string deep = "\ndepth = 18\n";
  std::string text = shelved(hold("glued")), bare_text = shelved();
  for (std::string* each : {&text, &bare_text})
    each->replace(each->find("\ndepth = 12\n"), deep.size(), deep);
  const ShelfSag held = sag_of(test::build(text), "one shelf");
  const ShelfSag free = sag_of(test::build(bare_text), "one shelf");
  CHECK(held.joined.size() == 1);
  CHECK(held.sag <= free.sag * (1 + 1e-9));
  CHECK(held.sag > 0.9 * free.sag);
}

TEST_CASE("screws count when they stand close, and dry joints don't") {
  CHECK(sag_of(test::build(shelved(screws(2))), "one shelf").joined.empty());
  const ShelfSag close = sag_of(test::build(shelved(screws(5))), "one shelf");
  CHECK(close.joined.size() == 1);
  CHECK(close.sag ==
        Approx(sag_of(test::build(shelved(hold("glued"))), "one shelf").sag).epsilon(1e-6));
  const std::string undone = "[glue_up]\nundone = [\"one shelf to back\"]\n";
  CHECK(sag_of(test::build(shelved(hold("glued") + undone)), "one shelf").joined.empty());
}

namespace {

// A plank of the panel stock 34 long and 12 wide, butted between two posts, and a board more.
std::string held_plank(const std::string& more) {
  return test::job() + stocks() +
         "[room]\nshelves = \"books\"\n"
         "[board.left]\nat = [0, 0, 0]\nstock = \"lip\"\nlength = 12\nwidth = 20\nturn = 90\nroll "
         "= "
         "90\n[board.right]\nat = [\"34 3/4\", 0, 0]\nstock = \"lip\"\nlength = 12\nwidth = "
         "20\nturn = 90\nroll = 90\n[board.shelf]\nat = [-1, 0, 10]\nstock = \"panel\"\nlength = "
         "\"37\"\nwidth = 12\nanchor = \"corner\"\n[joint.a]\nkind = \"butt\"\nhost = "
         "\"left\"\nguest = \"shelf\"\n[joint.b]\nkind = \"butt\"\nhost = \"right\"\nguest = "
         "\"shelf\"\n" +
         more;
}

const char* under = "[joint.on]\nkind = \"glued\"\nhost = \"shelf\"\nguest = \"more\"\n";

}  // namespace

// woodweb.com, "Long-Spanning Shelves": a shelf doubled to 1 1/2 in carries as one of 1 1/2.
TEST_CASE("a board glued on the whole face is one with the shelf") {
  const ShelfSag one = sag_of(test::build(held_plank("")), "shelf");
  const ShelfSag two = sag_of(
      test::build(held_plank("[board.more]\nat = [1, 0, \"9 1/4\"]\nstock = \"panel\"\nlength = "
                             "\"32 3/4\"\nwidth = 12\nanchor = \"corner\"\n" +
                             std::string(under))),
      "shelf");
  CHECK(one.joined.empty());
  CHECK(two.joined.size() == 1);
  CHECK(two.sag == Approx(one.sag / 8));
}

// A strip under the front edge that nothing else holds hangs from the shelf: no support, but its
// stiffness counts. White oak 1.78 million lbf/in2 = 12.3 GPa (Wood Handbook, Table 5-3).
TEST_CASE("a strip glued under a shelf goes down with it") {
  const test::Built built =
      test::build(held_plank("[board.more]\nat = [1, \"3/4\", 8]\nstock = \"lip\"\nlength = \"32 "
                             "3/4\"\nwidth = 2\nroll = 90\nanchor = \"corner\"\n" +
                             std::string(under)));
  const ShelfSag shelf = sag_of(built, "shelf");
  CHECK(shelf.joined == std::vector<std::string>{built.row("more").mark});
  const double free = bare(shelf, 304.8, 19.05);
  REQUIRE(shelf.edges.size() == 2);
  CHECK(shelf.edges[0].sag < 0.7 * free);
  CHECK(shelf.sag == Approx(shelf.edges[1].sag));
}

TEST_CASE("what is joined along a shelf but of unknown stiffness is named, and not counted") {
  std::string text = shelved(hold("glued"));
  const std::string known = "[stock.thin]";
  const std::size_t from = text.find("stiffness", text.find(known));
  text.erase(from, text.find('\n', from) - from);
  const test::Built built = test::build(text);
  const ShelfSag shelf = sag_of(built, "one shelf");
  CHECK(shelf.joined.empty());
  CHECK(shelf.uncounted == std::vector<std::string>{built.row("back").mark});
  CHECK(shelf.sag == Approx(bare(shelf, built.part("one shelf").size.y, 19.05)));
}
