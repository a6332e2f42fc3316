#include "geometry/polygon.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

using splay::Polygon;
using splay::Vec2;

namespace {
const Polygon kSquare = {{0, 0}, {4, 0}, {4, 4}, {0, 4}};
const Polygon kU = {{0, 0}, {6, 0}, {6, 5}, {4, 5}, {4, 2}, {2, 2}, {2, 5}, {0, 5}};
}  // namespace

TEST_CASE("signed area is positive anticlockwise") {
  CHECK(splay::signed_area(kSquare) == Approx(16));
  CHECK(splay::signed_area(Polygon(kSquare.rbegin(), kSquare.rend())) == Approx(-16));
  CHECK(splay::signed_area(kU) == Approx(6 * 5 - 2 * 3));
}

TEST_CASE("a polygon that crosses or touches itself is not simple") {
  CHECK(splay::is_simple(kSquare));
  CHECK(splay::is_simple(kU));
  CHECK_FALSE(splay::is_simple(Polygon{{0, 0}, {4, 4}, {4, 0}, {0, 4}}));
  CHECK_FALSE(splay::is_simple(Polygon{{0, 0}, {4, 0}, {2, 0}, {2, 3}}));          // folds back
  CHECK_FALSE(splay::is_simple(Polygon{{0, 0}, {4, 0}, {4, 4}, {2, 0}, {0, 4}}));  // touches
  CHECK_FALSE(splay::is_simple(Polygon{{0, 0}, {0, 0}, {4, 0}, {4, 4}}));
  CHECK_FALSE(splay::is_simple(Polygon{{0, 0}, {4, 0}}));
  // Edges on one line, in any direction: apart, however the rounding falls.
  for (int degrees = 0; degrees < 360; degrees += 7) {
    const double t = degrees * std::acos(-1.0) / 180;
    Polygon turned;
    for (const Vec2 p : kU) {
      turned.push_back(p.x * Vec2{std::cos(t), std::sin(t)} +
                       p.y * Vec2{-std::sin(t), std::cos(t)} + Vec2{0.1, 0.7});
    }
    CHECK(splay::is_simple(turned));
  }
}

TEST_CASE("contains follows the notch") {
  CHECK(splay::contains(kU, {1, 4}));
  CHECK(splay::contains(kU, {3, 1}));
  CHECK_FALSE(splay::contains(kU, {3, 4}));
  CHECK_FALSE(splay::contains(kU, {7, 1}));
}

TEST_CASE("lines meet unless parallel") {
  const auto p = splay::meet({0, 1}, {1, 0}, {2, 0}, {0, 5});
  REQUIRE(p);
  CHECK(*p == Vec2{2, 1});
  CHECK_FALSE(splay::meet({0, 0}, {1, 2}, {5, 5}, {-2, -4}));
}

TEST_CASE("edges offset inwards and outwards") {
  const auto in = splay::offset_edges(kSquare, std::vector<double>{1, 0.5, 1, 0.5});
  REQUIRE(in);
  CHECK(splay::signed_area(*in) == Approx(2 * 3));
  CHECK((*in)[0].x == Approx(0.5));
  CHECK((*in)[0].y == Approx(1));
  const auto out = splay::offset_edges(kU, std::vector<double>(8, -0.5));
  REQUIRE(out);
  CHECK(splay::signed_area(*out) == Approx(7 * 6 - 1 * 3));
  CHECK_FALSE(splay::offset_edges(kSquare, std::vector<double>(4, 2)));     // vanishes
  CHECK_FALSE(splay::offset_edges(kSquare, std::vector<double>(4, 2.5)));   // turns round
  CHECK_FALSE(splay::offset_edges(Polygon{{0, 0}, {2, 0}, {4, 0}, {4, 4}},  // parallel neighbours
                                  std::vector<double>(4, 0.1)));
}

namespace {

void check_pieces(const Polygon& polygon, std::size_t most) {
  const auto pieces = splay::convex_pieces(polygon);
  CHECK(pieces.size() <= most);
  double sum = 0;
  for (const Polygon& piece : pieces) {
    sum += splay::signed_area(piece);
    for (std::size_t i = 0; i < piece.size(); ++i) {
      const Vec2 a = piece[i], b = piece[(i + 1) % piece.size()], c = piece[(i + 2) % piece.size()];
      CHECK(splay::cross(b - a, c - b) >= -1e-9);
    }
  }
  CHECK(sum == Approx(splay::signed_area(polygon)).epsilon(1e-12));
}

}  // namespace

TEST_CASE("convex pieces cover the polygon and are convex") {
  check_pieces(kSquare, 1);
  check_pieces(kU, 3);
  // Corners on straight runs, and a diagonal that would pass through one.
  check_pieces({{0, 0}, {2, 0}, {4, 0}, {4, 2}, {4, 4}, {2, 4}, {2, 2}, {0, 2}, {0, 1}}, 3);
  Polygon star;
  for (int i = 0; i < 24; ++i) {
    const double r = i % 2 == 0 ? 10 : 4, t = i * std::acos(-1.0) / 12;
    star.push_back({r * std::cos(t), r * std::sin(t)});
  }
  check_pieces(star, 20);
}

TEST_CASE("a segment is clipped to its inside parts") {
  const auto parts = splay::clip_segment(kU, {-1, 4}, {7, 4});
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].from == Approx(1.0 / 8));
  CHECK(parts[0].to == Approx(3.0 / 8));
  CHECK(parts[1].from == Approx(5.0 / 8));
  CHECK(parts[1].to == Approx(7.0 / 8));
  const auto through_corner = splay::clip_segment(kSquare, {-2, -2}, {6, 6});
  REQUIRE(through_corner.size() == 1);
  CHECK(through_corner[0].from == Approx(0.25));
  CHECK(through_corner[0].to == Approx(0.75));
  CHECK(splay::clip_segment(kSquare, {5, 0}, {5, 4}).empty());
}

TEST_CASE("a convex hull has the outermost points, in order, and no others") {
  Polygon points{{2, 2}, {0, 0}, {4, 4}, {4, 0}, {2, 0}, {0, 4}, {0, 4}, {4, 2}};
  CHECK(splay::convex_hull(points).size() == 4);
  CHECK(signed_area(splay::convex_hull(points)) == Approx(16));
  Polygon star;
  for (int i = 0; i < 24; ++i) {
    const double r = i % 2 == 0 ? 10 : 4, t = i * std::acos(-1.0) / 12;
    star.push_back({r * std::cos(t), r * std::sin(t)});
  }
  const Polygon hull = splay::convex_hull(star);
  REQUIRE(hull.size() == 12);
  // A regular twelve-sided polygon of circumradius r has the area 3 r^2.
  CHECK(signed_area(hull) == Approx(300));
  CHECK(splay::convex_hull({}).empty());
  CHECK(splay::convex_hull({{1, 1}, {1, 1}}).size() == 1);
}

// A square and the same turned by 45 degrees about its centre share the regular octagon whose
// inscribed circle is theirs: n r^2 tan(pi / n) (Bronshtein, Semendyayev, Handbook of Mathematics,
// plane geometry: regular polygons; from memory).
TEST_CASE("two convex outlines share the area that both cover") {
  const Polygon square{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
  const double corner = std::sqrt(2.0);
  const Polygon turned{{corner, 0}, {0, corner}, {-corner, 0}, {0, -corner}};
  CHECK(splay::shared_area(square, turned) == Approx(8 * std::tan(std::numbers::pi / 8)));
  CHECK(splay::shared_area(turned, square) == Approx(8 * std::tan(std::numbers::pi / 8)));
  const Polygon beside{{1, -1}, {3, -1}, {3, 1}, {1, 1}};
  CHECK(splay::shared_area(square, beside) == Approx(0).margin(1e-12));
  CHECK(splay::shared_area(square, {{0, 0}, {3, 0}, {3, 3}, {0, 3}}) == Approx(1));
}
