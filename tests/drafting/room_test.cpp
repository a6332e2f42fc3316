#include <catch2/catch.hpp>
#include <random>

#include "drafting/room.h"

using namespace splay;
using namespace splay::drafting;

TEST_CASE("spread keeps order, widths and limits, and moves nothing that is free") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> place(0, 100), width(1, 9);
  for (int round = 0; round < 200; ++round) {
    std::vector<double> wanted(10), widths(10);
    double total = 0;
    for (double& w : wanted) w = place(random);
    for (double& w : widths) total += w = width(random);
    std::sort(wanted.begin(), wanted.end());
    const std::vector<double> centres = spread(wanted, widths, 0, 100);
    REQUIRE(centres.size() == wanted.size());
    CHECK(total < 100);
    CHECK(centres.front() - widths.front() / 2 >= -1e-9);
    CHECK(centres.back() + widths.back() / 2 <= 100 + 1e-9);
    for (std::size_t i = 0; i + 1 < centres.size(); ++i)
      CHECK(centres[i + 1] - centres[i] >= (widths[i] + widths[i + 1]) / 2 - 1e-9);
  }
  const std::vector<double> apart{10, 30, 50}, small{4, 4, 4};
  CHECK(spread(apart, small, 0, 100) == apart);
}

TEST_CASE("two items that want one place move evenly") {
  const std::vector<double> wanted{50, 50}, widths{4, 4};
  const std::vector<double> centres = spread(wanted, widths, 0, 100);
  CHECK(centres[0] == Approx(48));
  CHECK(centres[1] == Approx(52));
}

TEST_CASE("touching: quads, segments, turned ones") {
  const Quad box = quad({{0, 0}, {10, 5}});
  CHECK(touch(box, Vec2{-1, 2}, Vec2{11, 2}));
  CHECK(touch(box, Vec2{2, 2}, Vec2{3, 3}));
  CHECK_FALSE(touch(box, Vec2{-5, 2}, Vec2{-1, 2}));  // in line with it, but short of it
  CHECK_FALSE(touch(box, Vec2{11, 0}, Vec2{8, -4}));  // passes the corner
  CHECK(touch(box, Quad{{9, 4}, {12, 7}, {9, 10}, {6, 7}}));
  CHECK_FALSE(touch(box, Quad{{11, 6}, {14, 9}, {11, 12}, {8, 9}}));
  CHECK(crossing({0, 0}, {2, 2}, {0, 2}, {2, 0}));
  CHECK_FALSE(crossing({0, 0}, {1, 1}, {2, 2}, {3, 3}));
  CHECK_FALSE(crossing({0, 0}, {2, 0}, {0, 1}, {2, 1}));
}

TEST_CASE("a place is free off texts and lines, inside the area") {
  Room room({{0, 0}, {100, 100}});
  room.take(Vec2{0, 50}, Vec2{100, 50});
  room.take(quad({{10, 10}, {30, 14}}));
  CHECK(room.free(quad({{40, 60}, {60, 64}})));
  CHECK_FALSE(room.free(quad({{40, 48}, {60, 52}})));
  CHECK_FALSE(room.free(quad({{28, 12}, {40, 16}})));
  CHECK_FALSE(room.free(quad({{90, 60}, {110, 64}})));
  CHECK(room.over_text(Vec2{20, 0}, Vec2{20, 30}));
  CHECK(room.lines_crossed({50, 40}, {50, 60}) == 1);
}

TEST_CASE("the two ways to ask for a free place agree") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> place(-20, 120), size(0.5, 30);
  for (int round = 0; round < 40; ++round) {
    Room room({{0, 0}, {100, 90}});
    for (int i = 0; i < 6; ++i)
      room.take(Vec2{place(random), place(random)}, Vec2{place(random), place(random)});
    room.take(Vec2{0, place(random)}, Vec2{100, 45});
    const double x = place(random), y = place(random);
    room.take(Vec2{x, 0}, Vec2{x, 90});
    room.take(Vec2{0, y}, Vec2{100, y});
    room.take(quad({{20, 20}, {40, 24}}));
    room.take(Quad{{60, 60}, {70, 70}, {67, 73}, {57, 63}});
    for (int i = 0; i < 200; ++i) {
      const Vec2 low{place(random), place(random)};
      const ink::Rect rect{low, low + Vec2{size(random), size(random) / 3}};
      CHECK(room.free(rect, 1) == room.free(quad(rect), 1));
    }
  }
}
