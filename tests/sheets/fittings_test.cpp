// Where fittings are, on the pages of the parts they touch: figures from the pieces' own sizes.
#include <catch2/catch.hpp>

#include "part_pages.h"
#include "sheets/part_view_wants.h"

using namespace splay;

namespace {

std::string stocks() {
  return test::job("mm") + test::sheet("ply", "18 mm") + test::sheet("thin", "6 mm") +
         test::board("oak", "20 mm");
}

constexpr model::PaperSize papers[] = {model::PaperSize::a4, model::PaperSize::letter,
                                       model::PaperSize::a3, model::PaperSize::tabloid};

void check_pages(const test::Built& piece) {
  CHECK(piece.stops() == "");
  for (const model::PaperSize paper : papers) {
    const ink::Packet packet = test::binder(piece, paper);
    INFO(packet.pages.front().paper.name);
    CHECK_THAT(test::page_faults(piece, packet), Catch::Equals(""));
  }
}

// The pages of a part hold all these words.
void check_words(const test::Built& piece, const std::string& part,
                 const std::vector<std::string>& words) {
  const ink::Packet packet = test::binder(piece);
  const auto pages = test::pages_of(packet, piece.row(part).mark);
  for (const std::string& each : words) {
    INFO(part << ": " << each);
    CHECK(test::shows(pages, each));
  }
}

const std::string cups =
    "[case.body]\noutline = { bottom = 436, height = 636 }\ndepth = 300\nstock = \"ply\"\n"
    "[door.d]\nof = \"body\"\nfit = \"over\"\noverlap = { all = 16 }\nslab = { stock = \"ply\" }\n"
    "hinges = { kind = \"cup\", tab = 5, from_ends = 90 }\ncorner_radius = 30\n";

int dashed_circles(const std::vector<const ink::Page*>& pages) {
  int circles = 0;
  for (const ink::Page* page : pages)
    for (const auto& stroke : test::all_of<ink::Stroke>(*page))
      circles += stroke.pen.dash == ink::Dash::dashed &&
                         std::ranges::count(stroke.path.verbs, ink::Path::Verb::curve) > 0
                     ? 1
                     : 0;
  return circles;
}

}  // namespace

TEST_CASE("fasteners under a top are marked through it at their places") {
  const test::Built piece = test::piece_from("projects/splayed-stool.toml");
  const fabrication::PartRow& row = piece.row("top");
  const parts::Part& top = piece.part("top");
  const sheets::Context context{piece.plan, {}, drafting::paper_named("A4"), {}};
  const auto laid = sheets::laid_fittings(sheets::PartSheet(context, row));
  REQUIRE(laid.size() == 4);
  const double underside = top.world.bounds().low.z;
  for (const sheets::LaidFitting& each : laid) {
    CHECK(each.side == parts::Side::z_low);
    const Vec3 at = top.place.point(each.at);
    CHECK(at.z <= underside + 1e-6);
    CHECK(std::ranges::count_if(piece.plan.assembly.fittings, [&](const parts::Fitting& fitting) {
            return std::hypot(fitting.at.x - at.x, fitting.at.y - at.y) < 1e-6;
          }) == 1);
  }
  const ink::Packet packet = test::binder(piece);
  CHECK(dashed_circles(test::pages_of(packet, row.mark)) == 4);
}

TEST_CASE("cups of hinges: diameter, depth and running figures on the back of the door") {
  const test::Built piece = test::build(stocks() + cups);
  check_pages(piece);
  // 400 by 600 inside and 16 over each edge: 632 high; 5 of wood and half of 35 from the edge.
  check_words(piece, "d door",
              {"Cup hinge cup 35 mm, back:", "35 wide, 13 deep", "from the foot: 90, 542",
               "Corners to a radius of 30 mm."});
  const parts::Part& door = piece.part("d door");
  const bool from_left = parts::side_name(door, parts::Side::y_low) == "left edge";
  check_words(piece, "d door",
              {from_left ? "from the left edge: 22.5" : "from the right edge: 409.5"});
}

TEST_CASE("recesses for butt hinges are drawn and placed on both mates") {
  const test::Built piece = test::build(
      stocks() +
      "[case.body]\noutline = { bottom = 436, height = 636 }\ndepth = 300\nstock = \"ply\"\n"
      "[door.d]\nof = \"body\"\ngap = { all = 2 }\nhinges = { at = [100, 480], length = 60 }\n"
      "[door.d.frame]\nstock = \"oak\"\nwidth = 60\npanel = { stock = \"thin\", fit = \"groove\" "
      "}\n");
  check_pages(piece);
  check_words(piece, "d left member", {"Recess for hinge 1", "its middle from the foot: 100, 480"});
  // The door's foot stands 18 and a gap of 2 above the panel's lower end.
  check_words(piece, "body left panel", {"its middle from the foot: 120, 500"});
  const ink::Packet packet = test::binder(piece);
  const auto pages = test::pages_of(packet, piece.row("d left member").mark);
  for (const double end : {70.0, 130.0, 450.0, 510.0}) CHECK(test::measures(pages, end));
}

TEST_CASE("dowels, screws and loose tenons: holes of their own size in either part") {
  const std::string boards =
      "[board.post]\nat = [0, 0, 0]\nstock = \"oak\"\nlength = 500\nwidth = 80\nrise = \"90 deg\"\n"
      "anchor = \"end\"\n"
      "[board.rail]\nat = [0, 0, 300]\nstock = \"oak\"\nlength = 400\nwidth = 90\nroll = \"90 "
      "deg\"\nanchor = \"end\"\n[joint.j]\nhost = \"post\"\nguest = \"rail\"\n";
  const test::Built dowelled = test::build(
      stocks() + boards + "kind = \"dowel\"\ndiameter = 8\nembed = 9\nbottom_gap = 1\n");
  check_pages(dowelled);
  check_words(dowelled, "rail", {"Dowel 8 x 18 mm, left end: 8 wide, 10 deep"});
  const test::Built screwed = test::build(
      stocks() + boards + "kind = \"screw\"\ngauge = 8\nlength = 40\ncounterbore = 6\n");
  check_pages(screwed);
  check_words(screwed, "rail", {"Screw #8 x 40 mm, left end:", "deep"});
  check_words(screwed, "post", {"Screw #8 x 40 mm", "through"});
  const test::Built loose =
      test::build(stocks() + boards +
                  "kind = \"loose tenon\"\nthickness = 6\nwidth = 30\nembed = "
                  "9\nbottom_gap = 1\ncount = 1\n");
  check_pages(loose);
  check_words(loose, "rail", {"Loose tenon 6 x 30 x 18 mm, left end: 30 by 6, 10 deep"});
}

TEST_CASE("dowels in line at both ends of a rail: each end has its own") {
  std::string text = stocks() +
                     "[board.rail]\nat = [0, 0, 300]\nstock = \"oak\"\nlength = 400\nwidth = 90\n"
                     "roll = \"90 deg\"\nanchor = \"end\"\n";
  for (const auto& [post, x] : {std::pair{"one", "0"}, std::pair{"other", "400"}})
    text += "[board." + std::string(post) + "]\nat = [" + x +
            ", 0, 0]\nstock = \"oak\"\nlength = 500\nwidth = 80\nrise = \"90 deg\"\nanchor = "
            "\"end\"\n[joint.to_" +
            post + "]\nkind = \"dowel\"\nhost = \"" + post +
            "\"\nguest = \"rail\"\ndiameter = 8\nembed = 9\nbottom_gap = 1\n";
  const test::Built piece = test::build(text);
  check_pages(piece);
  check_words(piece, "rail",
              {"Dowel 8 x 18 mm, left end: 8 wide, 10 deep", "right end: 8 wide, 10 deep"});
  const ink::Packet packet = test::binder(piece);
  CHECK_FALSE(test::shows(test::pages_of(packet, piece.row("rail").mark), "wide, through"));
}

TEST_CASE("fasteners of a top are placed on its rails") {
  const test::Built piece = test::build(
      stocks() +
      "[table.t]\nheight = 700\nwidth = 800\ndepth = 500\nleg = { stock = \"leg\", width = 50 "
      "}\napron = { stock = \"oak\", width = 90 }\n" +
      test::board("leg", "50 mm") +
      "[top.lid]\noutline = { front = 900, deep = 600 }\nat = [-450, -300, 700]\nstock = "
      "\"oak\"\n[top.lid.fastener.a]\nto = \"t front apron\"\nface = \"back\"\ntype = \"figure-"
      "8\"\ncount = 2\n");
  check_pages(piece);
  CHECK(piece.plan.assembly.fittings.size() == 2);
  // 5/8 in: the plate's own diameter.
  check_words(piece, "t front apron",
              {"Figure-8 fastener 5/8 in, upper edge: 15.9 wide, 3.2 deep"});
}

TEST_CASE("a pivot's hole in a stile whose end is cut at a slant") {
  const test::Built piece = test::build(
      stocks() +
      "[case.body]\noutline = { bottom = 600, height = 500, lean_in = [\"6 deg\"] }\ndepth = "
      "300\nstock = \"ply\"\n[door.d]\nof = \"body\"\ngap = { all = 4 }\nhinges = { kind = "
      "\"pivot\", pin = 6 }\n[door.d.frame]\nstock = \"oak\"\nwidth = 60\npanel = { stock = "
      "\"thin\", fit = "
      "\"groove\" }\ncorners = \"mortise and tenon\"\n");
  REQUIRE(piece.stops() == "");
  // A short pin: a longer one would come too near the mortise under it.
  check_words(piece, "d left member", {"Pivot 6 mm pin, head: 6 wide, 6 deep;"});
}

TEST_CASE("a drawer's runner is given on the outside of its box, by its front end") {
  const test::Built piece = test::piece_from("projects/plain-bookcase.toml");
  // It stands 120 over the opening's foot, which is the top of a bottom panel 18.2 thick that the
  // sides come down past; its band on the box's side and on the case's is the same one.
  check_words(
      piece, "books left panel",
      {"Side runner 250 mm, inside: its front end, at half its height, from the foot: 138.2"});
  for (const char* side : {"drawer left side", "drawer right side"}) {
    check_words(piece, side, {"Side runner 250 mm, outside: its front end"});
    const auto pages = test::pages_of(test::binder(piece), piece.row(side).mark);
    CHECK_FALSE(test::shows(pages, ": -"));
  }
  // A hinge's pin stands before the edge.
  check_words(piece, "books right panel", {"from the front edge: 8 outside it"});
}
