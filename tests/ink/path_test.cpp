#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include "ink/outline.h"

using namespace splay;
using namespace splay::ink;

namespace {

constexpr double pi = std::numbers::pi;
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

double worst_radius_error(const Path& path, Vec2 centre, double radius) {
  double worst = 0;
  for (const Polyline& line : flatten(path, 1e-5))
    for (const Vec2 p : line.points) worst = std::max(worst, std::abs(norm(p - centre) - radius));
  return worst;
}

}  // namespace

TEST_CASE("an arc stays within a thousandth of a millimetre of its circle, whatever its size") {
  for (const double radius : {0.5, 10.0, 150.0, 400.0, 2000.0}) {
    Path path;
    path.arc({3, -2}, radius, 0.3, 2 * pi);
    CHECK(worst_radius_error(path, {3, -2}, radius) < 1.1e-3);
    CHECK(norm(path.points.front() - path.points.back()) < 1e-9);
  }
}

TEST_CASE("an arc runs the way of its sweep and ends where it should") {
  Path path;
  path.arc({0, 0}, 2, pi / 2, -pi / 2);
  CHECK(norm(path.points.front() - Vec2{0, 2}) < 1e-12);
  CHECK(norm(path.points.back() - Vec2{2, 0}) < 1e-12);
  const std::vector<Vec2> points = flatten(path).front().points;
  CHECK(points[points.size() / 2].x > 1);
  CHECK(points[points.size() / 2].y > 1);
}

TEST_CASE("an arc begins with move, or with line when a path is under way") {
  Path path;
  path.arc({0, 0}, 1, 0, pi / 4);
  CHECK(path.verbs.front() == Path::Verb::move);
  path.arc({5, 0}, 1, 0, pi / 4);
  CHECK(std::count(path.verbs.begin(), path.verbs.end(), Path::Verb::move) == 1);
  CHECK(std::count(path.verbs.begin(), path.verbs.end(), Path::Verb::line) == 1);
  path.close().arc({0, 0}, 1, 0, pi / 4);
  CHECK(std::count(path.verbs.begin(), path.verbs.end(), Path::Verb::move) == 2);
  CHECK_THROWS_AS(path.arc({0, 0}, not_a_number, 0, 1), std::invalid_argument);
  CHECK_THROWS_AS(path.arc({0, 0}, 1, 0, std::numeric_limits<double>::infinity()),
                  std::invalid_argument);
}

TEST_CASE("a rectangle and a polygon are closed") {
  Path path;
  path.rect({{1, 2}, {4, 6}});
  const std::vector<Polyline> lines = flatten(path);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].closed);
  CHECK(lines[0].points == std::vector<Vec2>{{1, 2}, {4, 2}, {4, 6}, {1, 6}, {1, 2}});
  CHECK(bounds(lines[0].points).height() == 4);
  CHECK(Path{}.polygon({}).verbs.empty());
}

TEST_CASE("flattened curves stay within the tolerance asked for") {
  Path path;
  path.move({0, 0}).curve({0, 40}, {100, 40}, {100, 0});
  const std::vector<Vec2> coarse = flatten(path, 0.5).front().points;
  CHECK(coarse.size() < 30);
  for (int i = 0; i <= 1000; ++i) {
    const double t = i / 1000.0, s = 1 - t;
    const Vec2 p{300 * s * t * t + 100 * t * t * t, 120 * s * s * t + 120 * s * t * t};
    double nearest = 1e9;
    for (std::size_t k = 1; k < coarse.size(); ++k) {
      const Vec2 a = coarse[k - 1], d = coarse[k] - a;
      const double along = std::clamp(dot(p - a, d) / dot(d, d), 0.0, 1.0);
      nearest = std::min(nearest, norm(p - a - d * along));
    }
    REQUIRE(nearest < 0.5);
  }
}

TEST_CASE("what can't be drawn is named") {
  Stroke stroke{Path{}.move({0, 0}).line({1, 1}), {}};
  CHECK(number_fault(stroke).empty());
  stroke.path.points[1].y = not_a_number;
  CHECK(!number_fault(stroke).empty());
  stroke.path.points.pop_back();
  CHECK(!number_fault(stroke).empty());
  CHECK(!number_fault(Stroke{Path{}.line({1, 1}), {}}).empty());
  CHECK(!number_fault(Stroke{Path{}.move({1, 1}), {0.0}}).empty());
  CHECK(!number_fault(Fill{Path{}.move({1e7, 1}), 0}).empty());
  CHECK(!number_fault(Fill{Path{}.move({1, 1}), 1.5}).empty());
  CHECK(!number_fault(Text{.at = {0, not_a_number}, .utf8 = "a"}).empty());
  CHECK(!number_fault(Text{.at = {0, 0}, .utf8 = "a", .height = 0}).empty());
  CHECK(!number_fault(Anchor{"a", {not_a_number, 0}}).empty());
  CHECK(!number_fault(Link{{{0, 0}, {not_a_number, 0}}, "a"}).empty());
  DimensionClaim claim;
  CHECK(number_fault(claim).empty());
  claim.along = {0, 0};
  CHECK(!number_fault(claim).empty());
}

TEST_CASE("a walk visits the items of groups in drawing order") {
  Group inner{"view", {Anchor{"b", {}}}};
  const std::vector<Item> items = {Anchor{"a", {}}, Group{"note", {inner, Anchor{"c", {}}}},
                                   Anchor{"d", {}}};
  std::string order;
  walk(
      items, [&](const Item& item) { order += std::get<Anchor>(item).name; },
      [&](const Group& group) { order += "(" + group.role; }, [&](const Group&) { order += ")"; });
  CHECK(order == "a(note(viewb)c)d");
}
