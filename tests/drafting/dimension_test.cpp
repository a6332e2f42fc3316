#include "drafting/dimension.h"

#include <cmath>
#include <functional>
#include <numbers>

#include "ink/outline.h"
#include "page_fixture.h"

using namespace splay;
using namespace splay::drafting;

namespace {

struct Direction {
  Vec2 along, out;
};
const std::vector<Direction> directions{{{1, 0}, {0, -1}},
                                        {{1, 0}, {0, 1}},
                                        {{0, 1}, {-1, 0}},
                                        {{0, 1}, {1, 0}},
                                        {unit(Vec2{3, 1}), left_of(unit(Vec2{3, 1}))}};

// Chain and overall over the same stations, drawn from a middle of the page.
DrawnRows chain_and_overall(const Kit& kit, const std::vector<double>& at, const Direction& d,
                            double scale) {
  Row chain;
  chain.along = d.along;
  chain.out = d.out;
  chain.chain = "test";
  for (const double x : at) chain.stations.push_back(d.along * x);
  Row overall = chain;
  overall.kind = RowKind::overall;
  overall.stations = {chain.stations.front(), chain.stations.back()};
  const Placement placement{scale, {140, 110}};
  const ink::Rect outline{placement.origin, placement.origin};
  const std::vector<Row> rows{chain, overall};
  return draw_rows(kit, placement, outline, rows);
}

void each_claim(const Items& items, const std::function<void(const ink::DimensionClaim&)>& use) {
  for (const ink::Item& item : items) {
    if (const auto* claim = std::get_if<ink::DimensionClaim>(&item)) use(*claim);
    if (const auto* group = std::get_if<ink::Group>(&item)) each_claim(group->items, use);
  }
}

}  // namespace

TEST_CASE("a chain of thirds of an inch adds up to its overall, in every direction") {
  const Kit kit = test::kit();
  // Seven gaps of 33.3 mm: each is 1 5/16 in rounded by itself, together 9 3/16, but 233.1 mm are
  // 9 6/32.
  std::vector<double> at;
  for (int i = 0; i <= 7; ++i) at.push_back(33.3 * i);
  for (const Direction& d : directions) {
    Items items;
    append(items, chain_and_overall(kit, at, d, 0.5).groups);
    std::int64_t sum = 0, overall = 0;
    int links = 0;
    each_claim(items, [&](const ink::DimensionClaim& claim) {
      (claim.overall ? overall : sum) += claim.steps;
      links += claim.overall ? 0 : 1;
      CHECK(std::abs(dot(claim.to - claim.from, claim.along)) ==
            Approx(claim.exact_mm * claim.scale));
    });
    CHECK(links == 7);
    CHECK(sum == overall);
    CHECK(overall == kit.figures.round(33.3 * 7).steps);
    CHECK_THAT(test::faults(items), Catch::Equals(""));
  }
}

TEST_CASE("a row a little off upright is read from the right, whichever way it leans") {
  // ISO 129-1 has figures read from below or from the right; common practice, no source, how far
  // past upright that still goes.
  const Kit kit = test::kit();
  for (const double lean : {-5.0, -0.1, 0.0, 0.1, 5.0})
    for (const double sense : {1.0, -1.0}) {
      const double turn = (90 + lean) * std::numbers::pi / 180;
      const Vec2 along = Vec2{std::cos(turn), std::sin(turn)} * sense;
      Items items;
      append(items, chain_and_overall(kit, {0, 40, 90}, {along, left_of(along)}, 1).groups);
      int figures = 0;
      ink::walk(
          items,
          [&](const ink::Item& item) {
            const auto* text = std::get_if<ink::Text>(&item);
            if (text == nullptr) return;
            ++figures;
            CHECK(text->turn == Approx(turn));
          },
          [](const ink::Group&) {}, [](const ink::Group&) {});
      CHECK(figures == 3);
      CHECK_THAT(test::faults(items), Catch::Equals(""));
    }
}

TEST_CASE("figures of small spaces overlap nothing") {
  const Kit kit = test::kit();
  const std::vector<std::vector<double>> cases{{0, 18, 36, 300, 306, 318},
                                               {0, 5, 10, 15, 20, 25, 30},
                                               {0, 18.1, 600},
                                               {0, 582, 600},
                                               {0, 7}};
  for (const auto& at : cases) {
    for (const Direction& d : directions) {
      Items items;
      append(items, chain_and_overall(kit, at, d, 0.25).groups);
      // Judged as if every item were of a group of its own: nothing may cross a figure at all.
      std::vector<Quad> texts;
      std::vector<std::pair<Vec2, Vec2>> lines;
      for (const ink::Item& item : items)
        for (const ink::Item& part : std::get<ink::Group>(item).items) {
          if (const auto* text = std::get_if<ink::Text>(&part))
            texts.push_back(kit.fonts->box(*text));
          if (const auto* stroke = std::get_if<ink::Stroke>(&part))
            for (std::size_t i = 0; i + 1 < stroke->path.points.size(); ++i)
              if (stroke->path.verbs[i + 1] == ink::Path::Verb::line)
                lines.emplace_back(stroke->path.points[i], stroke->path.points[i + 1]);
        }
      CHECK(texts.size() == at.size());
      for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) CHECK_FALSE(touch(texts[i], texts[k]));
        for (const auto& [a, b] : lines) CHECK_FALSE(touch(texts[i], a, b));
      }
    }
  }
}

TEST_CASE("running figures are rounded once from the datum and keep apart") {
  const Kit kit = test::kit(Unit::millimetre);
  for (const Direction& d : directions) {
    Row row;
    row.kind = RowKind::running;
    row.along = d.along;
    row.out = d.out;
    row.chain = "places";
    row.has_datum = true;
    for (const double x : {0.0, 17.64, 35.28, 37.0, 400.0}) row.stations.push_back(d.along * x);
    const Placement placement{0.25, {140, 110}};
    const DrawnRow drawn = draw_row(kit, placement, row, dot(d.out, placement.origin) + 12);
    const std::vector<std::string> expected{"0", "17.6", "35.3", "37", "400"};
    CHECK(test::words({drawn.group}) == expected);
    for (std::size_t i = 0; i < drawn.texts.size(); ++i)
      for (std::size_t k = 0; k < i; ++k) CHECK_FALSE(touch(drawn.texts[i], drawn.texts[k]));
    CHECK_THAT(test::faults({drawn.group}), Catch::Equals(""));
  }
}

TEST_CASE("stations that print alike are one") {
  const Kit kit = test::kit(Unit::millimetre);
  Row row;
  row.stations = {{0, 0}, {0.01, 5}, {100, 0}};
  const DrawnRow drawn = draw_row(kit, {1, {100, 100}}, row, -80);
  CHECK(test::words({drawn.group}) == std::vector<std::string>{"100"});
}

TEST_CASE("a chain runs to the same end as its overall, however near its last two stations are") {
  const Kit kit = test::kit(Unit::inch);  // steps of 1/32 in: 0.79 mm
  Row chain, overall;
  chain.stations = {{0, 0}, {16.8, 0}, {32.83, 0}, {33.05, 0}};
  overall.kind = RowKind::overall;
  overall.stations = {{0, 0}, {33.05, 0}};
  chain.chain = overall.chain = "it";
  Items items;
  const DrawnRow links = draw_row(kit, {1, {100, 100}}, chain, -80);
  items.emplace_back(links.group);
  items.emplace_back(draw_row(kit, {1, {100, 100}}, overall, -70, links.texts).group);
  CHECK_THAT(test::faults(items), Catch::Equals(""));
}

TEST_CASE("an outer extension line stops short of an inner figure") {
  const Kit kit = test::kit(Unit::millimetre);
  Row inner, outer;
  inner.kind = outer.kind = RowKind::overall;
  inner.stations = {{0, 0}, {200, 0}};
  outer.stations = {{100, 0}, {300, 0}};  // runs through the middle of the inner figure
  const Placement placement{0.5, {60, 150}};
  const ink::Rect outline{{60, 150}, {210, 150}};
  const std::vector<Row> rows{inner, outer};
  Items items;
  append(items, draw_rows(kit, placement, outline, rows).groups);
  CHECK_THAT(test::faults(items), Catch::Equals(""));
}

TEST_CASE("an angle is named in degrees and rise, off everything in the room") {
  const Kit kit = test::kit();
  Room room({{40, 40}, {380, 280}});
  Items items;
  for (const double degrees : {5.0, 12.0, 45.0, 75.0, 105.0, 170.0}) {
    AngleMark mark;
    mark.at = {100 + degrees, 150};
    mark.from = {0, 1};
    const double rad = degrees * std::numbers::pi / 180;
    mark.to = {std::sin(rad), std::cos(rad)};
    mark.radians = rad;
    mark.name = "lean";
    items.emplace_back(draw_angle(kit, room, mark));
  }
  const std::vector<std::string> all = test::words(items);
  CHECK(std::count(all.begin(), all.end(), "12.00°") == 1);
  CHECK(std::count(all.begin(), all.end(), rise_text(12, kit.figures)) == 1);
  CHECK(std::count(all.begin(), all.end(), "lean") == 6);
  // An obtuse angle by what it has over a right one: 12 tan 15° = 3.215 (plain trigonometry).
  CHECK(angle_rise(kit, 105 * std::numbers::pi / 180) == "3 7/32 in 12 past square");
  CHECK(angle_rise(kit, std::numbers::pi / 2) == "plumb");
  CHECK(std::count(all.begin(), all.end(), "3 7/32 in 12 past square") == 1);
}
