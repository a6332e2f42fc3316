#include <catch2/catch.hpp>

#include "drafting/hatch.h"
#include "geometry/polygon.h"

using namespace splay;
using namespace splay::drafting;

namespace {

double length_of(const ink::Path& path) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < path.points.size(); i += 2)
    sum += norm(path.points[i + 1] - path.points[i]);
  return sum;
}

}  // namespace

TEST_CASE("hatching covers exactly the area, hole left out") {
  const std::vector<Vec2> outline{{0, 0}, {90, 10}, {70, 60}, {40, 30}, {5, 50}};
  const std::vector<Vec2> hole{{50, 20}, {50, 30}, {60, 30}, {60, 20}};
  for (const double degrees : {0.0, 20.0, 45.0, 90.0, 135.0}) {
    const ink::Path path = hatch({outline, hole}, {degrees, 0.7});
    // Lines times their spacing make up the area, to the thickness of one line at the ends.
    const double area = signed_area(outline) - 100;
    CHECK(length_of(path) * 0.7 == Approx(area).epsilon(0.01));
    for (std::size_t i = 0; i + 1 < path.points.size(); i += 2) {
      const Vec2 mid = (path.points[i] + path.points[i + 1]) * 0.5;
      CHECK(contains(outline, mid));
      CHECK_FALSE(contains(hole, mid));
    }
  }
}

TEST_CASE("hatching passes a corner that lies on a line") {
  // A square on its corner: lines through the corners must neither spill nor vanish.
  const ink::Path path = hatch({{{0, -10}, {10, 0}, {0, 10}, {-10, 0}}}, {0, 5});
  REQUIRE(path.points.size() == 6);  // -5, 0, 5; the corner at -10 has no length
  CHECK(length_of(path) == Approx(10 + 20 + 10));
}

TEST_CASE("parts that touch are hatched differently, those apart may be alike") {
  const ink::FontSet fonts;
  const Kit kit{&fonts, {}, {}};
  // Three blocks in a row on the ground: a touches b, b touches c.
  const std::vector<Solid> solids{Solid::box({0, 0, 0}, {40, 20, 30}),
                                  Solid::box({40, 0, 0}, {80, 20, 30}),
                                  Solid::box({80, 0, 0}, {120, 20, 30})};
  const View view = View::front();
  const SectionDrawing section =
      draw_section(kit, solids, Plane{view.toward, -10}, view, {1, {0, 0}});
  std::vector<double> slopes;
  for (const ink::Item& item : section.cut.items) {
    const auto& stroke = std::get<ink::Stroke>(item);
    if (stroke.pen.width > 0.2) continue;
    const Vec2 d = stroke.path.points[1] - stroke.path.points[0];
    slopes.push_back(d.y / d.x);
  }
  REQUIRE(slopes.size() == 3);
  CHECK(slopes[0] != Approx(slopes[1]));
  CHECK(slopes[1] != Approx(slopes[2]));
  CHECK(section.box.width() == Approx(120));
  CHECK(section.box.height() == Approx(30));
}
