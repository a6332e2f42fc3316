// What the part views say, against the planes of the operations.
#include <catch2/catch.hpp>
#include <map>

#include "part_pages.h"
#include "sheets/part_view_drawn.h"
#include "sheets/part_view_shape.h"

using namespace splay;

namespace {

const std::vector<std::string> pieces = {
    "projects/canted-tea-cabinet.toml", "projects/six-sided-wall-case.toml",
    "projects/splayed-stool.toml",      "projects/tall-legged-tea-cabinet.toml",
    "projects/plain-bookcase.toml",     "projects/six-sided-tea-tray.toml"};

constexpr model::PaperSize papers[] = {model::PaperSize::a4, model::PaperSize::letter,
                                       model::PaperSize::a3, model::PaperSize::tabloid};

std::vector<const ink::Page*> part_pages(const ink::Packet& packet) {
  std::vector<const ink::Page*> pages;
  for (const ink::Page& page : packet.pages)
    if (page.title.starts_with("Part views")) pages.push_back(&page);
  return pages;
}

// Where a plane comes to the arris of two sides of a part's box, along x.
double on_arris(const Plane& plane, double y, double z) {
  return (plane.d - plane.n.y * y - plane.n.z * z) / plane.n.x;
}

// Pages that hold nothing but one part stand behind each other.
void check_together(const ink::Packet& packet) {
  std::map<std::string, std::vector<std::size_t>> alone;
  for (std::size_t i = 0; i < packet.pages.size(); ++i) {
    const std::string& title = packet.pages[i].title;
    if (title.starts_with("Part views") && title.find(',') == std::string::npos)
      alone[title].push_back(i);
  }
  for (const auto& [title, at] : alone) {
    INFO(title);
    CHECK(at.back() - at.front() + 1 == at.size());
  }
}

// Which way the length of mirror images is drawn, on pages that hold them alone.
void check_alike(const test::Built& piece, const ink::Packet& packet) {
  for (const fabrication::PartRow& row : piece.plan.rows) {
    if (row.pair < 0) continue;
    const std::string& other = piece.plan.rows[static_cast<std::size_t>(row.pair)].mark;
    int across = 0, up = 0;
    for (const ink::Page* page : part_pages(packet)) {
      const std::string marks = page->title.substr(std::string("Part views: ").size());
      if (marks != row.mark && marks != other && marks != row.mark + ", " + other) continue;
      for (const auto& claim : test::all_of<ink::DimensionClaim>(*page))
        if (std::abs(std::abs(claim.exact_mm) - row.finished.x) < 1e-6)
          ++(std::abs(claim.along.x) > std::abs(claim.along.y) ? across : up);
    }
    INFO(row.mark << ": across " << across << ", up " << up);
    CHECK((across == 0 || up == 0));
  }
}

}  // namespace

TEST_CASE("part pages of all pieces are sound on all papers, mirror images drawn alike") {
  for (const std::string& path : pieces) {
    const test::Built piece = test::piece_from(path);
    for (const model::PaperSize paper : papers) {
      const ink::Packet packet = test::binder(piece, paper);
      INFO(path << ", " << packet.pages.front().paper.name);
      CHECK_THAT(test::page_faults(piece, packet), Catch::Equals(""));
      check_together(packet);
      check_alike(piece, packet);
    }
  }
}

TEST_CASE("every row has one view, with its head, its place for links and its sizes") {
  for (const std::string& path : pieces) {
    const test::Built piece = test::piece_from(path);
    const ink::Packet packet = test::binder(piece);
    std::map<std::string, int> views, anchors;
    for (const ink::Page* page : part_pages(packet)) {
      for (const auto& claim : test::all_of<ink::PartClaim>(*page))
        if (claim.what == "view") ++views[claim.mark];
      for (const auto& anchor : test::all_of<ink::Anchor>(*page)) ++anchors[anchor.name];
    }
    const FigureStyle figures = piece.project->job.figures();
    for (const fabrication::PartRow& row : piece.plan.rows) {
      INFO(path << ", " << row.mark);
      CHECK(views[row.mark] == 1);
      CHECK(anchors["part " + row.mark] == 1);
      const auto pages = test::pages_of(packet, row.mark);
      REQUIRE_FALSE(pages.empty());
      CHECK(test::shows(pages, figures.text(row.finished.x) + " × " + figures.text(row.finished.y) +
                                   " × " + figures.text(row.finished.z)));
      CHECK(test::shows(pages, figures.text(row.blank.x) + " × " + figures.text(row.blank.y)));
      CHECK(test::shows(pages, std::to_string(row.quantity()) + " off"));
    }
    CHECK(views.size() == piece.plan.rows.size());
  }
}

TEST_CASE("a tilted housing is located at the arrises of its walls and by both depths") {
  const test::Built piece = test::piece_from("projects/canted-tea-cabinet.toml");
  const ink::Packet packet = test::binder(piece);
  for (const std::string name : {"left panel", "right panel"}) {
    const parts::Part& part = piece.part(name);
    const parts::Operation& housing = piece.operation(name, "housing for long shelf");
    const parts::Operation& foot = piece.operation(name, "mitre to bottom panel");
    const auto pages = test::pages_of(packet, piece.row(name).mark);
    INFO(name);
    // On the inside, z = 0, the panel's foot is the arris of the mitre.
    const double datum = on_arris(foot.cut, part.size.y / 2, 0);
    for (const Plane& wall : housing.trench.walls)
      CHECK(test::measures(pages, on_arris(wall, part.size.y / 2, 0) - datum));
    CHECK(test::measures(pages, housing.trench.shallow));
    CHECK(test::measures(pages, housing.trench.deep));
    CHECK(test::shows(pages, "15.00°"));
    CHECK(test::shows(pages, "from the foot, inside"));
  }
}

TEST_CASE("every bevel and mitre is named with its rise, its long point and the face down") {
  for (const std::string& path : pieces) {
    const test::Built piece = test::piece_from(path);
    const ink::Packet packet = test::binder(piece);
    const FigureStyle figures = piece.project->job.figures();
    for (const fabrication::PartRow& row : piece.plan.rows) {
      const auto pages = test::pages_of(packet, row.mark);
      const parts::Part& part =
          piece.plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
      const Boundary boundary = part.body.boundary();
      for (const parts::Operation& operation : part.operations) {
        if (operation.kind != parts::OperationKind::end_cut) continue;
        // A cut that a later one has taken away again is not shown.
        const bool stands = std::ranges::any_of(boundary.faces, [&](const Face& face) {
          return norm(face.plane.n - operation.cut.n) < 1e-9 &&
                 std::abs(face.plane.d - operation.cut.d) < 1e-6;
        });
        if (!stands) continue;
        const double bevel = std::asin(std::abs(operation.cut.n.z));
        const double mitre = std::atan(std::abs(operation.cut.n.y / operation.cut.n.x));
        for (const double angle : {bevel, mitre}) {
          if (angle < 1e-6) continue;
          INFO(path << ", " << row.mark << ", " << operation.name);
          const double degrees = Angle{angle}.degrees();
          CHECK(test::shows(pages, degrees_text(degrees)));
          CHECK(test::shows(pages, rise_text(degrees, figures)));
          CHECK(test::shows(pages, "Long point"));
          CHECK(test::shows(pages, "saw"));
        }
      }
    }
  }
}

// Three housings of one depth, two of them stopped behind the front: the project says 20, and 5
// more for the nosing.
TEST_CASE("housings of one depth are each named where they are and stopped as they are") {
  const test::Built piece = test::piece_from("projects/plain-bookcase.toml");
  const sheets::Context context{piece.plan, {}, drafting::paper_named("A4"), {}};
  for (const char* name : {"books left panel", "books right panel"}) {
    INFO(name);
    sheets::PartDrawn drawn(context, piece.row(name));
    int housings = 0;
    for (const sheets::Opening& opening :
         sheets::openings_on(drawn.sheet(), parts::opposite(parts::Side::z_high))) {
      if (opening.operation->kind != parts::OperationKind::housing) continue;
      ++housings;
      INFO(opening.operation->name);
      for (const Plane& wall : opening.operation->trench.walls)
        CHECK(wall.distance(opening.at) > 1);
    }
    CHECK(housings == 3);
    const ink::Packet packet = test::binder(piece);
    const auto pages = test::pages_of(packet, piece.row(name).mark);
    CHECK(test::shows(pages, "Stopped 25 from the front edge."));
    CHECK(test::shows(pages, "Runs out at both sides."));
  }
}

TEST_CASE("long and short point lengths are measured on the views") {
  const test::Built piece = test::piece_from("projects/canted-tea-cabinet.toml");
  const ink::Packet packet = test::binder(piece);
  for (const fabrication::PartRow& row : piece.plan.rows) {
    INFO(row.mark);
    const auto pages = test::pages_of(packet, row.mark);
    CHECK(test::measures(pages, row.long_point));
    CHECK(test::measures(pages, row.short_point));
  }
}

TEST_CASE("left and right are drawn apart, each in its own sense") {
  const test::Built piece = test::piece_from("projects/canted-tea-cabinet.toml");
  const ink::Packet packet = test::binder(piece);
  const auto left = test::pages_of(packet, "B-L"), right = test::pages_of(packet, "B-R");
  REQUIRE_FALSE(left.empty());
  REQUIRE_FALSE(right.empty());
  CHECK(test::shows(left, "left hand, pair of B-R"));
  CHECK(test::shows(right, "right hand, pair of B-L"));
}

TEST_CASE("a tenon is measured along its edges and across the part") {
  const test::Built piece = test::piece_from("projects/splayed-stool.toml");
  const ink::Packet packet = test::binder(piece);
  const fabrication::PartRow& row = piece.row("cross");
  const parts::Part& part = piece.part("cross");
  const auto pages = test::pages_of(packet, row.mark);
  // Half way between shoulder and end only the tenon is left.
  Box tenon;
  for (const Face& face : part.body.section({{1, 0, 0}, 8}))
    for (const Vec3 corner : face.loops.front()) tenon.add(corner);
  REQUIRE(tenon.size().y < part.size.y);
  CHECK(test::measures(pages, tenon.low.y));
  CHECK(test::measures(pages, tenon.high.y));
  CHECK(test::measures(pages, part.size.z - tenon.high.z));
  CHECK(test::measures(pages, part.size.z - tenon.low.z));
  CHECK(test::shows(pages, "Tenons, both ends"));
}

TEST_CASE("a part that needs more than a page goes on over several") {
  std::string shelves;
  for (int i = 0; i < 14; ++i)
    shelves +=
        "[case.body.shelf.s" + std::to_string(i) + "]\ntop_at = " + std::to_string(150 + 90 * i) +
        "\nends = { housing = " + std::to_string(4 + i % 5) + ", floor = \"square to walls\" }\n";
  const test::Built piece = test::build(
      test::job("mm") + test::sheet("panel", "18 mm") +
      "[case.body]\noutline = { bottom = 700, height = 1600, lean_in = [\"9 deg\", \"4 deg\"] }\n"
      "depth = 300\nstock = \"panel\"\ncorners = \"mitre\"\n" +
      shelves);
  REQUIRE_THAT(piece.stops(), Catch::Equals(""));
  for (const model::PaperSize paper : papers) {
    const ink::Packet packet = test::binder(piece, paper);
    INFO(packet.pages.front().paper.name);
    CHECK_THAT(test::page_faults(piece, packet), Catch::Equals(""));
    const auto pages = test::pages_of(packet, piece.row("left panel").mark);
    for (int i = 0; i < 14; ++i) {
      const parts::Operation& housing =
          piece.operation("left panel", "housing for s" + std::to_string(i) + " shelf");
      CHECK(test::measures(pages, housing.trench.shallow));
      CHECK(test::measures(pages, housing.trench.deep));
    }
  }
}
