#include "drafting/view.h"

#include "page_fixture.h"

using namespace splay;
using namespace splay::drafting;

namespace {

const ink::Path& first_path(const ink::Group& group, bool dashed) {
  for (const ink::Item& item : group.items)
    if (const auto* stroke = std::get_if<ink::Stroke>(&item))
      if ((stroke->pen.dash == ink::Dash::dashed) == dashed) return stroke->path;
  FAIL("no such stroke");
  throw 0;
}

}  // namespace

TEST_CASE("the outline of a box is one closed run of four corners") {
  const std::vector<Solid> solids{Solid::box({0, 0, 0}, {100, 50, 30})};
  const std::vector<ViewLine> lines = hidden_lines(solids, View::front());
  const ink::Path path = joined_lines(lines, false, {0.5, {20, 20}});
  CHECK(std::count(path.verbs.begin(), path.verbs.end(), ink::Path::Verb::move) == 1);
  CHECK(std::count(path.verbs.begin(), path.verbs.end(), ink::Path::Verb::close) == 1);
  CHECK(path.points.size() == 4);
}

TEST_CASE("visible edges are wide, hidden ones narrow and dashed, and lengths are to scale") {
  const Kit kit = test::kit();
  const std::vector<Solid> solids{Solid::box({0, 0, 0}, {100, 50, 30}),
                                  Solid::box({40, 60, 5}, {60, 70, 25})};
  const std::vector<ViewLine> lines = hidden_lines(solids, View::front());
  const Placement placement = centred(view_box(lines), 0.5, {100, 100});
  const ink::Group group = draw_view(kit, lines, placement);
  CHECK(extent(kit, {group}).width() == Approx(50));
  CHECK(middle(extent(kit, {group})).x == Approx(100));
  CHECK(middle(extent(kit, {group})).y == Approx(100));
  ink::Group behind{"view", {}};
  behind.items.emplace_back(ink::Stroke{first_path(group, true), kit.hidden()});
  CHECK(extent(kit, {behind}).width() == Approx(10));
  CHECK(draw_view(kit, lines, placement, false).items.size() == 1);
}

TEST_CASE("a toned view has three greys, light above and dark aside") {
  const Kit kit = test::kit();
  const std::vector<Solid> solids{Solid::box({0, 0, 0}, {100, 50, 30})};
  const View view = View::axonometric(0.52, 0.42);
  const std::vector<ToneFace> faces = visible_faces(solids, view);
  REQUIRE(faces.size() == 3);
  const ink::Group group =
      draw_toned(kit, faces, hidden_lines(solids, view), view, {1, {100, 100}});
  for (std::size_t i = 0; i < 3; ++i) {
    const double grey = std::get<ink::Fill>(group.items[i]).grey;
    if (faces[i].normal.z > 0.5) CHECK(grey == kit.look.tone_light);
    if (faces[i].normal.y < -0.5) CHECK(grey == kit.look.tone_mid);
    if (std::abs(faces[i].normal.x) > 0.5) CHECK(grey == kit.look.tone_dark);
  }
}
