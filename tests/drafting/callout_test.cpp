#include "drafting/callout.h"

#include <random>

#include "page_fixture.h"

using namespace splay;
using namespace splay::drafting;

namespace {

std::vector<Callout> many(int count, ink::Rect within, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> x(within.low.x, within.high.x),
      y(within.low.y, within.high.y);
  std::vector<Callout> callouts;
  for (int i = 0; i < count; ++i) {
    Callout callout;
    callout.tip = {x(random), y(random)};
    callout.lines = {std::string(1, static_cast<char>('A' + i % 26)) + (i % 3 == 0 ? "-L" : "")};
    callouts.push_back(std::move(callout));
  }
  return callouts;
}

// The leader of a balloon is its last stroke.
std::pair<Vec2, Vec2> leader_of(const ink::Group& group) {
  std::pair<Vec2, Vec2> ends;
  for (const ink::Item& item : group.items)
    if (const auto* stroke = std::get_if<ink::Stroke>(&item))
      if (stroke->path.points.size() == 2) ends = {stroke->path.points[0], stroke->path.points[1]};
  return ends;
}

}  // namespace

TEST_CASE("balloons stand apart, off the view, inside the area, and their leaders do not cross") {
  const Kit kit = test::kit();
  const ink::Rect view{{120, 80}, {280, 220}}, area{{40, 50}, {370, 280}};
  for (unsigned seed = 1; seed <= 20; ++seed) {
    const std::vector<Callout> callouts = many(24, view, seed);
    const std::vector<ink::Group> groups = place_balloons(kit, view, area, callouts);
    REQUIRE(groups.size() == callouts.size());
    Items items;
    append(items, groups);
    CHECK_THAT(test::faults(items), Catch::Equals(""));
    for (std::size_t i = 0; i < groups.size(); ++i) {
      const auto [a, b] = leader_of(groups[i]);
      for (std::size_t k = 0; k < i; ++k) {
        const auto [c, d] = leader_of(groups[k]);
        const bool same_side = (a.x < view.low.x) == (c.x < view.low.x);
        if (same_side) CHECK_FALSE(crossing(a, b, c, d));
      }
    }
    for (const ink::Group& group : groups) {
      const ink::Rect box = extent(kit, {group});
      CHECK(box.low.y >= area.low.y - 1e-6);
      CHECK(box.high.y <= area.high.y + 1e-6);
    }
  }
}

TEST_CASE("labels find free places: no text over text, none over a line of the view") {
  const Kit kit = test::kit();
  Items items;
  ink::Group view{"view", {}};
  ink::Path lines;
  for (int i = 0; i <= 6; ++i) lines.move({100.0 + 30 * i, 80}).line({100.0 + 30 * i, 220});
  view.items.emplace_back(ink::Stroke{std::move(lines), {0.5}});
  Room room({{40, 50}, {370, 280}});
  room.take(kit, view.items);
  items.emplace_back(std::move(view));
  std::vector<Callout> callouts = many(20, {{100, 80}, {280, 220}}, 3);
  for (Callout& callout : callouts) callout.lines.push_back("second line");
  append(items, place_labels(kit, room, callouts));
  CHECK_THAT(test::faults(items), Catch::Equals(""));
}

TEST_CASE("the same callouts get the same places") {
  const Kit kit = test::kit();
  const std::vector<Callout> callouts = many(12, {{100, 80}, {280, 220}}, 5);
  std::vector<ink::Rect> boxes[2];
  for (auto& list : boxes) {
    Room room({{40, 50}, {370, 280}});
    for (const ink::Group& group : place_labels(kit, room, callouts))
      list.push_back(extent(kit, {group}));
  }
  for (std::size_t i = 0; i < boxes[0].size(); ++i) {
    CHECK(boxes[0][i].low == boxes[1][i].low);
    CHECK(boxes[0][i].high == boxes[1][i].high);
  }
}
