#include "geometry/solid.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numbers>

#include "regions.h"

using splay::Plane;
using splay::Solid;
using splay::Vec3;

namespace {

void check_counts(const Solid& solid, std::size_t faces, std::size_t edges) {
  const splay::Boundary b = solid.boundary();
  CHECK(b.faces.size() == faces);
  CHECK(b.edges.size() == edges);
  for (const splay::Edge& e : b.edges) {
    CHECK(e.face_1 >= 0);
    CHECK(e.face_2 >= 0);
    CHECK(e.face_1 != e.face_2);
  }
}

}  // namespace

TEST_CASE("a box") {
  const Solid s = Solid::box({1, 2, 3}, {3, 5, 7});
  CHECK(s.volume() == Approx(24));
  CHECK(s.area() == Approx(2 * (6 + 8 + 12)));
  CHECK(s.centroid().x == Approx(2));
  CHECK(s.centroid().y == Approx(3.5));
  CHECK(s.centroid().z == Approx(5));
  CHECK(s.extent({0, 1, 0})[1] == Approx(5));
  check_counts(s, 6, 12);
  CHECK(Solid::box({0, 0, 0}, {0, 1, 1}).empty());
}

TEST_CASE("a prism of a concave outline, either sense") {
  std::vector<splay::Vec2> l = {{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 3}, {0, 3}};
  for (int turn = 0; turn < 2; ++turn) {
    const Solid s = Solid::prism(l, 0, 2);
    CHECK(s.volume() == Approx(12));
    CHECK(s.area() == Approx(2 * 6 + 14 * 2));
    check_counts(s, 8, 18);
    std::reverse(l.begin(), l.end());
  }
  CHECK_THROWS_AS(Solid::prism(std::vector<splay::Vec2>{{0, 0}, {1, 1}, {1, 0}, {0, 1}}, 0, 1),
                  std::invalid_argument);
}

TEST_CASE("a convex region: a tetrahedron") {
  const Solid s = Solid::convex(
      {Plane::through({3, 0, 0}, {1, 1, 1}), {{-1, 0, 0}, 0}, {{0, -1, 0}, 0}, {{0, 0, -1}, 0}});
  CHECK(s.volume() == Approx(27.0 / 6).epsilon(1e-13));
  check_counts(s, 4, 6);
  CHECK(Solid::convex({{{1, 0, 0}, -1}, {{-1, 0, 0}, -1}}).empty());
}

TEST_CASE("cuts: blind hole, through hole, dado, and a cutter that misses") {
  Solid s = Solid::box({0, 0, 0}, {10, 10, 10});
  s.subtract(box_region({20, 0, 0}, {30, 10, 10}));
  CHECK(s.cells().size() == 1);
  s.subtract(box_region({4, 4, 6}, {6, 6, 20}));  // blind from the top
  CHECK(s.volume() == Approx(1000 - 16));
  CHECK(s.area() == Approx(600 + 4 * 8));
  check_counts(s, 11, 24);
  s.subtract(box_region({-1, 4, 1}, {11, 6, 3}));  // through along x
  CHECK(s.volume() == Approx(1000 - 16 - 40));
  CHECK(s.area() == Approx(600 + 32 - 2 * 4 + 4 * 20));
  check_counts(s, 15, 36);
  s.subtract(box_region({-1, -1, 9}, {11, 2, 11}));  // rabbet along the top
  CHECK(s.volume() == Approx(1000 - 16 - 40 - 20));
  check_counts(s, 17, 42);
}

TEST_CASE("a hole wholly inside leaves a closed cavity") {
  Solid s = Solid::box({0, 0, 0}, {10, 10, 10});
  s.subtract(box_region({3, 3, 3}, {6, 6, 6}));
  CHECK(s.volume() == Approx(1000 - 27));
  CHECK(s.area() == Approx(600 + 54));
  check_counts(s, 12, 24);
}

TEST_CASE("faces of cells that overlap in part across a plane") {
  // Two bars on one plane, crossing like a plus sign, one above and one below.
  Solid s = Solid::box({-5, -1, 0}, {5, 1, 1});
  s.add_disjoint(Solid::box({-1, -5, -1}, {1, 5, 0}));
  CHECK(s.volume() == Approx(40));
  CHECK(s.area() == Approx(2 * (20 + 20) + 2 * 24 - 2 * 4));
  // Tops whole; on the common plane two pieces looking down and two looking up.
  check_counts(s, 14, 32);
}

TEST_CASE("a cutter within the tolerance of a face leaves no sliver") {
  for (const double off : {0.0, 9e-7, -9e-7, 1e-9, -1e-9}) {
    Solid s = Solid::box({0, 0, 0}, {600, 300, 18});
    s.subtract(box_region({-10, -10, 12 + off}, {30, 310, 18 + off}));
    s.subtract(box_region({30 + off, -10, 12}, {60, 310, 30}));
    check_counts(s, 8, 18);
    CHECK(s.volume() == Approx(600 * 300 * 18 - 60 * 300 * 6).margin(60 * 300 * 1e-6));
    s.keep(Plane{{1, 0, 0}, 600 + off});
    s.keep(Plane::through({0, 300 + off, 0}, {0, 1, 1e-9}));
    check_counts(s, 8, 18);
  }
}

TEST_CASE("intersection, overlap and difference") {
  const Solid a = Solid::box({0, 0, 0}, {4, 4, 4});
  const Solid b = Solid::box({2, 3, -1}, {9, 9, 9});
  CHECK(overlap_volume(a, b) == Approx(2 * 1 * 4));
  CHECK(difference_volume(a, b) == Approx(64 + 420 - 16));
  Solid c = a;
  c.subtract(b);
  Solid d = Solid::box({0, 0, 0}, {2, 4, 4});
  d.add_disjoint(Solid::box({2, 0, 0}, {4, 3, 4}));
  CHECK(difference_volume(c, d) == 0);
  CHECK(c.boundary().faces.size() == d.boundary().faces.size());
  CHECK(overlap_volume(a, Solid::box({4, 0, 0}, {5, 4, 4})) == 0);
}

TEST_CASE("motions keep volume and the surface closed") {
  Solid s = Solid::box({0, 0, 0}, {10, 6, 2});
  s.subtract(box_region({2, 2, -1}, {4, 4, 3}));
  const splay::Rigid motion = splay::frame({100, 20, -7}, {1, 2, 0.5}, {0, 0.3, 1});
  const Solid moved = s.transformed(motion);
  CHECK(moved.volume() == Approx(s.volume()).epsilon(1e-13));
  CHECK(moved.area() == Approx(s.area()).epsilon(1e-13));
  check_counts(moved, 10, 24);
  const Solid turned = s.mirrored_x();
  CHECK(turned.volume() == Approx(s.volume()).epsilon(1e-13));
  CHECK(turned.centroid().x == Approx(-s.centroid().x));
  check_counts(turned, 10, 24);
  CHECK(difference_volume(moved, s.transformed(motion)) == 0);
}

TEST_CASE("sections") {
  Solid s = Solid::box({0, 0, 0}, {10, 10, 10});
  s.subtract(box_region({4, 4, -1}, {6, 6, 11}));
  auto faces = s.section({{0, 0, 1}, 5});
  REQUIRE(faces.size() == 1);
  CHECK(faces[0].area == Approx(96));
  CHECK(faces[0].loops.size() == 2);
  CHECK(faces[0].loops[0].size() == 4);
  faces = s.section({{1, 0, 0}, 5});
  REQUIRE(faces.size() == 2);
  CHECK(faces[0].area + faces[1].area == Approx(80));
  CHECK(s.section({{0, 0, 1}, 10}).empty());  // touches the top
  CHECK(s.section({{0, 0, 1}, 12}).empty());
  s.subtract(box_region({-1, -1, 5}, {11, 4, 11}));
  // On the floor of the rabbet there is material on both sides only behind it.
  faces = s.section({{0, 0, -1}, -5});
  double area = 0;
  for (const auto& face : faces) area += face.area;
  CHECK(area == Approx(60 - 4));
}

TEST_CASE("facets of a cylinder are one smooth surface") {
  std::vector<splay::Vec2> circle;
  std::vector<Plane> facets;
  constexpr int kFacets = 48;
  for (int i = 0; i < kFacets; ++i) {
    const double t = 2 * std::numbers::pi * i / kFacets;
    circle.push_back({20 * std::cos(t), 20 * std::sin(t)});
    const double middle = t + std::numbers::pi / kFacets;
    const Vec3 n{std::cos(middle), std::sin(middle), 0};
    facets.push_back(Plane::through({circle.back().x, circle.back().y, 0}, n));
  }
  Solid s = Solid::prism(circle, 0, 100);
  s.mark_smooth(facets);
  s.subtract(box_region({-30, -4, 40}, {30, 4, 60}));
  int smooth_edges = 0, smooth_faces = 0;
  const splay::Boundary b = s.boundary();
  for (const auto& edge : b.edges) smooth_edges += edge.smooth;
  for (const auto& face : b.faces) smooth_faces += face.smooth;
  CHECK(smooth_faces >= kFacets);
  CHECK(smooth_edges >= kFacets);
  CHECK(static_cast<std::size_t>(smooth_edges) < b.edges.size());
}
