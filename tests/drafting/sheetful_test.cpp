#include "drafting/sheetful.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace splay;
using namespace splay::drafting;

namespace {

std::size_t pages_of(const std::vector<Laid>& all) {
  std::size_t count = 0;
  for (const Laid& laid : all) count = std::max(count, laid.page + 1);
  return count;
}

}  // namespace

TEST_CASE("pictures laid on pages keep apart, stay inside, and on few pages") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> side(15, 90);
  constexpr Vec2 area{160, 220}, gap{4, 6};
  for (int round = 0; round < 50; ++round) {
    std::vector<Vec2> sizes(30);
    double taken = 0;
    for (Vec2& size : sizes) {
      size = {side(random), side(random)};
      taken += size.x * size.y;
    }
    const std::vector<Laid> laid = lay_out(sizes, area, gap);
    REQUIRE(laid.size() == sizes.size());
    for (std::size_t i = 0; i < laid.size(); ++i) {
      CHECK(laid[i].at.x >= 0);
      CHECK(laid[i].at.y <= 0);
      CHECK(laid[i].at.x + sizes[i].x <= area.x + 1e-6);
      CHECK(sizes[i].y - laid[i].at.y <= area.y + 1e-6);
      for (std::size_t j = 0; j < i; ++j) {
        if (laid[i].page != laid[j].page) continue;
        const bool apart = laid[i].at.x >= laid[j].at.x + sizes[j].x + gap.x - 1e-5 ||
                           laid[j].at.x >= laid[i].at.x + sizes[i].x + gap.x - 1e-5 ||
                           laid[i].at.y <= laid[j].at.y - sizes[j].y - gap.y + 1e-5 ||
                           laid[j].at.y <= laid[i].at.y - sizes[i].y - gap.y + 1e-5;
        CHECK(apart);
      }
    }
    // Two thirds of every page but the last, on average, is paper that is drawn on.
    CHECK(static_cast<double>(pages_of(laid)) <= 1 + taken / (area.x * area.y) / 0.66);
  }
}

TEST_CASE("what fits in the order given stays in it, and pages are numbered by it") {
  const std::vector<Laid> one = lay_out({{50, 40}, {50, 60}, {50, 20}}, {160, 100}, {5, 5});
  CHECK(one[0].at == Vec2{0, 0});
  CHECK(one[1].at == Vec2{55, 0});
  CHECK(one[2].at == Vec2{110, 0});
  // Highest first needs two pages, the order given three.
  const std::vector<Laid> two =
      lay_out({{100, 40}, {100, 70}, {100, 60}, {100, 30}}, {100, 100}, {0, 0});
  CHECK(pages_of(two) == 2);
  CHECK(two[0].page == 0);
}

TEST_CASE("a picture larger than the page has a page of its own") {
  const std::vector<Laid> laid = lay_out({{50, 40}, {300, 40}, {50, 40}}, {160, 100}, {5, 5});
  CHECK(laid[1].page != laid[0].page);
  CHECK(laid[2].page == laid[0].page);
}
