// Ends of many fingers, round outlines and sections of strips in the part views, against the solids
// and against plain trigonometry.
#include <catch2/catch.hpp>
#include <numbers>

#include "part_pages.h"
#include "sheets/part_view_curves.h"
#include "sheets/part_view_drawn.h"
#include "sheets/part_view_rows.h"
#include "sheets/part_view_wants.h"

using namespace splay;

namespace {

constexpr double inch = 25.4;

sheets::Context context_of(const test::Built& piece) {
  return {piece.plan, {}, drafting::paper_named("A4"), {}};
}

}  // namespace

TEST_CASE("each taper is told in one sentence of its part's page") {
  int tapers = 0;
  for (const char* demo : {"projects/six-sided-tea-tray.toml", "projects/splayed-stool.toml",
                           "projects/tall-legged-tea-cabinet.toml"}) {
    const test::Built piece = test::piece_from(demo);
    const ink::Packet packet = test::binder(piece);
    for (const fabrication::PartRow& row : piece.plan.rows) {
      const parts::Part& part =
          piece.plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
      std::string all;
      for (const ink::Page* page : test::titled(packet, "Part views: " + row.mark))
        for (const ink::Text& text : test::all_of<ink::Text>(*page)) all += text.utf8 + " ";
      std::size_t told = 0, cut = 0;
      for (std::size_t at = all.find("aper"); at != std::string::npos;
           at = all.find("aper", at + 1))
        told += at + 4 < all.size() && all[at + 4] == 's' ? 0U : 1U;  // "which tapers 5°": a reason
      for (const parts::Operation& operation : part.operations)
        cut += operation.name.starts_with("taper") ? 1U : 0U;
      INFO(demo << ", " << row.mark << ": " << all);
      CHECK(told <= cut);
      tapers += static_cast<int>(told);
    }
  }
  CHECK(tapers > 0);
}

TEST_CASE("the figures of a dovetailed end stand in a detail, all of them") {
  const test::Built piece = test::piece_from("projects/plain-bookcase.toml");
  const sheets::Context context = context_of(piece);
  const ink::Packet packet = test::binder(piece);
  for (const char* name : {"drawer left side", "drawer right side"}) {
    INFO(name);
    sheets::PartDrawn drawn(context, piece.row(name));
    const auto ends = sheets::crowded_ends(drawn.sheet());
    REQUIRE(ends.size() == 2);
    const auto pages = test::pages_of(packet, piece.row(name).mark);
    const bool from_low = parts::front_edge(drawn.sheet().part) == parts::Side::y_low;
    for (const sheets::CrowdedEnd& end : ends) {
      // Eight tails: two corners each at the end and two at the base line.
      CHECK(end.corners.size() >= 32);
      for (const Vec3 corner : end.corners) {
        INFO(corner.y);
        CHECK((corner.y < 1e-6 || corner.y > 300 - 1e-6 ||
               test::measures(pages, from_low ? corner.y : 300 - corner.y)));
      }
    }
    // The base lines: 12 of the sides go through the back, 8 into the front that is lapped by 4.
    CHECK(test::shows(pages, "Base line 12 from the end."));
    CHECK(test::shows(pages, "Base line 8 from the end."));
  }
}

TEST_CASE("no row beside a view has more figures across an end than stand apart") {
  const test::Built piece = test::piece_from("projects/plain-bookcase.toml");
  const sheets::Context context = context_of(piece);
  for (const fabrication::PartRow& row : piece.plan.rows) {
    INFO(row.mark);
    sheets::PartDrawn drawn(context, row);
    const sheets::ViewSet& set = drawn.set(true);
    for (const sheets::FaceRow& each :
         sheets::face_rows(drawn.sheet(), set.face, {0, 1, 0}, -set.to_end))
      CHECK(each.row.stations.size() <= 2 * sheets::most_across_end);
  }
}

TEST_CASE("a section across a strip is cut where the wood is whole") {
  const test::Built piece = test::piece_from("projects/plain-bookcase.toml");
  const sheets::Context context = context_of(piece);
  // The partition's housing is in the middle of its length.
  for (const char* name : {"books bottom panel nosing", "books low shelf nosing"}) {
    INFO(name);
    sheets::PartDrawn drawn(context, piece.row(name));
    const parts::Part& part = drawn.sheet().part;
    int sections = 0;
    for (const sheets::Detail& detail :
         sheets::wanted_details(drawn.sheet(), drafting::Scale{1, 10})) {
      if (detail.title != "Section across") continue;
      ++sections;
      double area = 0;
      for (const Face& face : part.body.section({detail.view.toward, detail.cut_at}))
        area += face.area;
      CHECK(area == Approx(part.size.y * part.size.z));
    }
    CHECK(sections == 1);
  }
}

TEST_CASE("a round top has its diameters and its edge cut open") {
  const test::Built piece = test::piece_from("projects/six-sided-tea-tray.toml");
  const sheets::Context context = context_of(piece);
  sheets::PartDrawn top(context, piece.row("round top"));
  const auto circle = sheets::circle_on(top.sheet(), parts::Side::z_high);
  REQUIRE(circle);
  CHECK(2 * circle->radius == Approx(22 * inch));
  const ink::Packet packet = test::binder(piece);
  const auto pages = test::pages_of(packet, piece.row("round top").mark);
  CHECK(test::shows(pages, "Ø22"));
  CHECK(test::shows(pages, "Bevel of round edge"));
  // 60 degrees off square over 3/8 in of the height takes 3/8 tan 60 off the radius, within a
  // facet's distance from the curve.
  const double height = 0.375 * inch, across = height * std::tan(std::numbers::pi / 3);
  const auto under = sheets::circle_on(top.sheet(), parts::Side::z_low);
  REQUIRE(under);
  CHECK(under->radius == Approx(11 * inch - across).margin(0.02));
  CHECK(test::measures(pages, 2 * under->radius));
  CHECK(test::measures(pages, height));
  CHECK(test::measures(pages, 0.875 * inch));
  // Six sides are no circle.
  sheets::PartDrawn floor(context, piece.row("tray floor"));
  CHECK_FALSE(sheets::circle_on(floor.sheet(), parts::Side::z_high));
}
