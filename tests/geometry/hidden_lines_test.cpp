#include "geometry/hidden_lines.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "regions.h"

using splay::Plane;
using splay::Solid;
using splay::Vec3;
using splay::View;

namespace {

struct Lengths {
  double visible = 0, hidden = 0;
  std::size_t count = 0;
};

Lengths measure(const std::vector<Solid>& solids, const View& view) {
  Lengths sum;
  for (const splay::ViewLine& line : splay::hidden_lines(solids, view)) {
    (line.hidden ? sum.hidden : sum.visible) += norm(line.b - line.a);
    ++sum.count;
  }
  return sum;
}

double tone_area(const std::vector<Solid>& solids, const View& view, int solid = -1) {
  double sum = 0;
  for (const splay::ToneFace& face : splay::visible_faces(solids, view)) {
    if (solid >= 0 && face.solid != solid) continue;
    for (const auto& loop : face.loops) sum += splay::signed_area(loop);
  }
  return sum;
}

const View kCorner = View::axonometric(0.6, 0.5);

}  // namespace

TEST_CASE("views are right-handed frames") {
  for (const View& v : {View::front(), View::back(), View::left(), View::right_side(), View::top(),
                        View::bottom(), kCorner}) {
    CHECK(norm(cross(v.right, v.up) - v.toward) < 1e-15);
    CHECK(norm(v.right) == Approx(1));
    CHECK(norm(v.up) == Approx(1));
  }
}

TEST_CASE("a box from the front shows its outline once and hides nothing else") {
  const Lengths l = measure({Solid::box({0, 0, 0}, {10, 5, 4})}, View::front());
  CHECK(l.visible == Approx(28));
  CHECK(l.hidden == 0);
  CHECK(l.count == 4);
}

TEST_CASE("a box from a corner shows nine edges and hides three") {
  const Solid box = Solid::box({0, 0, 0}, {10, 5, 4});
  double visible = 0, hidden = 0;
  for (const auto& [edge, shown] :
       {std::pair{Vec3{10, 0, 0}, 3}, {Vec3{0, 5, 0}, 3}, {Vec3{0, 0, 4}, 3}}) {
    visible += shown * norm(kCorner.project(edge));
    hidden += norm(kCorner.project(edge));
  }
  const Lengths l = measure({box}, kCorner);
  CHECK(l.visible == Approx(visible));
  CHECK(l.hidden == Approx(hidden));
  CHECK(l.count == 12);
}

TEST_CASE("cells cut inside a part never show") {
  Solid s = Solid::box({0, 0, 0}, {10, 5, 4});
  Solid halves = Solid::box({0, 0, 0}, {3, 5, 4});
  halves.add_disjoint(Solid::box({3, 0, 0}, {10, 2, 4}));
  halves.add_disjoint(Solid::box({3, 2, 0}, {10, 5, 4}));
  for (const View& view : {View::front(), View::top(), kCorner}) {
    const Lengths one = measure({s}, view), many = measure({halves}, view);
    CHECK(many.visible == Approx(one.visible));
    CHECK(many.hidden == Approx(one.hidden));
    CHECK(many.count == one.count);
  }
}

TEST_CASE("the edges of an inside corner are visible") {
  // An L of two parts that touch: the valley between them faces the eye.
  const std::vector<Solid> l = {Solid::box({0, 0, 0}, {10, 10, 1}),
                                Solid::box({0, 9, 1}, {10, 10, 8})};
  bool found = false;
  for (const auto& line : splay::hidden_lines(l, kCorner)) {
    const splay::Vec2 a = kCorner.project({0, 9, 1}), b = kCorner.project({10, 9, 1});
    if (line.hidden) continue;
    found = found || norm(line.a - a) + norm(line.b - b) < 1e-9 ||
            norm(line.a - b) + norm(line.b - a) < 1e-9;
  }
  CHECK(found);
  Solid one = l[0];
  one.add_disjoint(l[1]);
  // As one part the flush ends have no seam.
  CHECK(measure({one}, kCorner).visible <
        measure(l, kCorner).visible - 0.9 * norm(kCorner.project({0, 1, 0})));
}

TEST_CASE("a part behind another is hidden where it is covered") {
  const std::vector<Solid> two = {Solid::box({0, 0, 0}, {10, 1, 10}),
                                  Solid::box({4, 3, 4}, {20, 4, 6})};
  const Lengths l = measure(two, View::front());
  CHECK(l.visible == Approx(40 + 10 + 10 + 2));
  CHECK(l.hidden == Approx(6 + 6 + 2));
}

TEST_CASE("flush parts show their seam, once") {
  const std::vector<Solid> two = {Solid::box({0, 0, 0}, {5, 1, 10}),
                                  Solid::box({5, 0, 0}, {10, 1, 10})};
  const Lengths l = measure(two, View::front());
  CHECK(l.visible == Approx(40 + 10));
  CHECK(l.hidden == 0);
  CHECK(l.count == 7);
}

TEST_CASE("a blind mortise from the side is hidden lines only") {
  Solid s = Solid::box({0, 0, 0}, {40, 40, 400});
  s.subtract(box_region({10, -1, 100}, {20, 25, 160}));
  const Lengths side = measure({s}, View::right_side());
  CHECK(side.visible == Approx(880));
  CHECK(side.hidden == Approx(25 + 25 + 60));
  const Lengths front = measure({s}, View::front());
  CHECK(front.visible == Approx(880 + 140));
  CHECK(front.hidden == 0);
}

TEST_CASE("a smooth surface shows its silhouette") {
  std::vector<splay::Vec2> circle;
  std::vector<Plane> facets;
  constexpr int kFacets = 36;
  for (int i = 0; i < kFacets; ++i) {
    const double t = 2 * std::acos(-1.0) * i / kFacets, m = t + std::acos(-1.0) / kFacets;
    circle.push_back({10 * std::cos(t), 10 * std::sin(t)});
    facets.push_back(
        Plane::through({circle.back().x, circle.back().y, 0}, {std::cos(m), std::sin(m), 0}));
  }
  Solid s = Solid::prism(circle, 0, 50);
  s.mark_smooth(facets);
  const Lengths l = measure({s}, View::front());
  CHECK(l.visible == Approx(2 * 50 + 2 * 20));
  CHECK(l.hidden == 0);
}

TEST_CASE("visible faces: a covered face keeps only what shows") {
  const std::vector<Solid> two = {Solid::box({0, 0, 0}, {10, 1, 10}),
                                  Solid::box({4, 3, 4}, {20, 4, 6})};
  CHECK(tone_area(two, View::front(), 0) == Approx(100));
  CHECK(tone_area(two, View::front(), 1) == Approx(20));
  CHECK(tone_area(two, View::back(), 1) == Approx(32));
  CHECK(tone_area(two, View::back(), 0) == Approx(100 - 12));
}

TEST_CASE("visible faces tile the silhouette of three parts that cover one another in a ring") {
  // Three bars, each over the next at one end and under the other at its other end.
  std::vector<Solid> ring;
  for (int i = 0; i < 3; ++i) {
    const double t = i * 2 * std::acos(-1.0) / 3;
    const Vec3 along{std::cos(t), std::sin(t), 0.2}, up{0, 0, 1};
    const Vec3 out{std::sin(t), -std::cos(t), 0};
    ring.push_back(
        Solid::box({-60, -3, -2}, {60, 3, 2}).transformed(splay::frame(out * 17, along, up)));
  }
  REQUIRE(splay::find_clashes(ring).empty());
  // Count the image by points.
  const auto faces = splay::visible_faces(ring, View::top());
  int wrong = 0;
  for (int i = 0; i < 200; ++i) {
    for (int j = 0; j < 200; ++j) {
      const splay::Vec2 p{-65 + i * 0.6513, -65 + j * 0.6511};
      int nearest = -1;
      double height = -1e300;
      for (int s = 0; s < 3; ++s) {
        double from = -1e300, to = 1e300;
        for (const Plane& plane : ring[static_cast<std::size_t>(s)].cell_region(0)) {
          const double rest = plane.d - plane.n.x * p.x - plane.n.y * p.y;
          if (plane.n.z > 1e-12) to = std::min(to, rest / plane.n.z);
          if (plane.n.z < -1e-12) from = std::max(from, rest / plane.n.z);
          if (std::abs(plane.n.z) <= 1e-12 && rest < 0) to = -1e300;
        }
        if (from < to && to > height) {
          height = to;
          nearest = s;
        }
      }
      int shown = -1, times = 0;
      for (const auto& face : faces) {
        int inside = 0;
        for (const auto& loop : face.loops) inside += splay::contains(loop, p);
        if (inside % 2 == 1) {
          shown = face.solid;
          ++times;
        }
      }
      wrong += shown != nearest || times > 1;
    }
  }
  CHECK(wrong == 0);
}
