#include "ink/lint.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <numbers>
#include <set>

using namespace splay;
using namespace splay::ink;

namespace {

const FontSet& fonts() {
  static const FontSet set;
  return set;
}

Packet packet_of(std::vector<Item> items) {
  Packet packet;
  Page page;
  page.label = "7";
  page.items = std::move(items);
  packet.pages.push_back(std::move(page));
  return packet;
}

Text word(double x, double y, const char* utf8 = "Shelf upper") {
  return {.at = {x, y}, .utf8 = utf8, .height = 3.5};
}

Stroke line(Vec2 a, Vec2 b, double width = 0.25) {
  return {Path{}.move(a).line(b), {width, Dash::continuous, 0}};
}

Fill box(Rect r, double grey = 1) { return {Path{}.rect(r), grey}; }

Group group(const char* role, std::vector<Item> items) { return {role, std::move(items)}; }

std::vector<LintFault> faults_of(std::vector<Item> items,
                                 const std::vector<std::string>& marks = {}) {
  return lint(packet_of(std::move(items)), fonts(), marks);
}

// Exactly this rule is broken, and nothing else.
void caught(const std::string& rule, std::vector<Item> items,
            const std::vector<std::string>& marks = {}) {
  const std::vector<LintFault> faults = faults_of(std::move(items), marks);
  std::set<std::string> rules;
  for (const LintFault& fault : faults) {
    INFO(fault.rule << " on " << fault.page << ": " << fault.text);
    CHECK(!fault.text.empty());
    rules.insert(fault.rule);
  }
  CHECK(rules == std::set<std::string>{rule});
}

void clean(std::vector<Item> items, const std::vector<std::string>& marks = {}) {
  const std::vector<LintFault> faults = faults_of(std::move(items), marks);
  for (const LintFault& fault : faults) FAIL_CHECK(fault.rule << ": " << fault.text);
  CHECK(faults.empty());
}

DimensionClaim dimension(double from, double to, std::int64_t steps, const char* chain = "") {
  DimensionClaim claim;
  claim.from = {from, 100};
  claim.to = {to, 103};  // measured along x only
  claim.scale = 0.1;
  claim.exact_mm = (to - from) * 10;
  claim.step_mm = 0.1;
  claim.steps = steps;
  claim.chain = chain;
  return claim;
}

DimensionClaim overall(double from, double to, std::int64_t steps, const char* chain) {
  DimensionClaim claim = dimension(from, to, steps, chain);
  claim.overall = true;
  return claim;
}

}  // namespace

TEST_CASE("a text over a text is caught, in one group or two") {
  caught("text-over-text", {word(50, 100), word(60, 101)});
  caught("text-over-text", {group("view", {word(50, 100)}), group("note", {word(52, 99)})});
  Text upright = word(60, 95);
  upright.turn = std::numbers::pi / 2;
  caught("text-over-text", {word(50, 100), upright});
  clean({word(50, 100), word(50, 106)});
  clean({word(50, 100), word(50 + fonts().width("Shelf upper", 3.5) + 0.5, 100)});
}

TEST_CASE("turned texts whose upright bounds overlap but which do not touch pass") {
  Text slanted = word(50, 100, "A long slanted line of text");
  slanted.turn = std::numbers::pi / 4;
  clean({slanted, word(75, 103, "Near")});
  caught("text-over-text", {slanted, word(62, 110, "On it")});
}

TEST_CASE("a text box and a line of another group is caught") {
  caught("text-over-line",
         {group("view", {line({40, 90}, {70, 115})}), group("dimension", {word(50, 100)})});
  caught("text-over-line", {group("view", {line({30, 101}, {150, 101})}), word(50, 100)});
  caught("text-over-line", {line({30, 101}, {150, 101}), group("note", {word(50, 100)})});
  // A group inside a group is another group.
  caught("text-over-line",
         {group("view", {line({30, 101}, {150, 101}), group("dimension", {word(50, 100)})})});
}

TEST_CASE("a curve and a wide line that touch a text are caught") {
  Stroke circle{Path{}.arc({60, 101}, 5, 0, 2 * std::numbers::pi).close(), {0.25, {}, 0}};
  caught("text-over-line", {group("view", {circle}), group("note", {word(50, 100)})});
  const double under = fonts().box(word(50, 100))[0].y;
  caught("text-over-line", {group("view", {line({30, under - 0.4}, {150, under - 0.4}, 1.0)}),
                            group("note", {word(50, 100)})});
  clean({group("view", {line({30, under - 0.4}, {150, under - 0.4}, 0.5)}),
         group("note", {word(50, 100)})});
}

TEST_CASE("a text may stand in its own group's frame") {
  clean({group("table", {Stroke{Path{}.rect({{49, 98}, {90, 105}}), {}}, line({49, 100}, {90, 100}),
                         word(50, 100)})});
  clean({line({40, 90}, {70, 115}), word(50, 100)});
}

TEST_CASE("a fill under a text is allowed, and hides the lines under it") {
  clean({group("view", {box({{40, 95}, {100, 110}}, 0.9)}), group("note", {word(50, 100)})});
  const Item lines = group("view", {line({30, 101}, {150, 101})});
  clean({lines, group("note", {box({{49, 98}, {90, 106}}), word(50, 100)})});
  // Too small a fill hides too little; a fill with a hole hides nothing in the hole.
  caught("text-over-line", {lines, group("note", {box({{55, 98}, {90, 106}}), word(50, 100)})});
  Fill holed{Path{}.rect({{49, 98}, {90, 106}}).rect({{55, 99}, {60, 103}}), 1};
  caught("text-over-line", {lines, group("note", {holed, word(50, 100)})});
  // A line drawn after the fill is on top of it.
  caught("text-over-line", {group("note", {box({{49, 98}, {90, 106}}), word(50, 100)}), lines});
}

TEST_CASE("a fill over an earlier text is caught") {
  caught("text-covered", {word(50, 100), box({{55, 99}, {80, 110}}, 0.8)});
  clean({word(50, 100), box({{50, 104.5}, {80, 110}}, 0.8)});
}

TEST_CASE("ink outside the margins is caught") {
  caught("outside-margins", {word(15, 100)});
  caught("outside-margins", {word(185, 100, "Too far to the right")});
  caught("outside-margins", {group("view", {line({15, 50}, {100, 50})})});
  caught("outside-margins", {box({{50, 5}, {60, 20}}, 0.5)});
  clean({line({20, 10}, {200, 10}), line({200, 10}, {200, 287}), word(20, 10, "HE")});
}

TEST_CASE("only the frame may stand outside the margins, and it on the sheet") {
  clean({group("frame", {line({20, 10}, {200, 10}), line({105, 0}, {105, 12}),
                         Text{.at = {5, 100}, .utf8 = "C", .height = 3.5}})});
  caught("outside-margins", {group("frame", {line({105, -2}, {105, 12})})});
}

TEST_CASE("small text is caught, at the packet's own limit") {
  Text small = word(50, 100);
  small.height = 2.4;
  caught("small-text", {small});
  small.height = 2.5;
  clean({small});
  Packet packet = packet_of({small});
  packet.least_text_height = 3;
  REQUIRE(lint(packet, fonts(), {}).size() == 1);
  CHECK(lint(packet, fonts(), {})[0].rule == "small-text");
}

TEST_CASE("a printed figure that is not the length is caught") {
  clean({dimension(50, 100, 5000)});
  caught("dimension-off", {dimension(50, 100, 5001)});
  DimensionClaim half = dimension(50, 100, 5000);
  half.exact_mm = 500.05;  // exactly between two steps: either is right
  clean({half});
  half.exact_mm = 500.06;
  caught("dimension-off", {half});
}

TEST_CASE("a length drawn wrong is caught") {
  DimensionClaim claim = dimension(50, 100, 5000);
  claim.to.x = 100.05;  // half a millimetre of the real thing
  caught("dimension-off", {claim});
  claim = dimension(50, 100, 5000);
  claim.scale = 0.2;
  caught("dimension-off", {claim});
}

TEST_CASE("a chain that does not add up is caught") {
  const auto chain = [](std::int64_t b, std::int64_t whole) {
    return std::vector<Item>{dimension(50, 60.004, 1000, "front"),
                             dimension(60.004, 80.009, b, "front"),
                             overall(50, 80.009, whole, "front")};
  };
  clean(chain(2001, 3001));
  caught("chain-open", chain(2000, 3001));  // each figure is well rounded by itself
  caught("chain-open", {dimension(50, 60, 1000, "front")});
  caught("chain-open", {dimension(50, 60, 1000, "front"), dimension(60, 70, 1000, "front"),
                        overall(50, 80, 3000, "front")});
}

TEST_CASE("chains of one name in two directions are two chains") {
  std::vector<Item> items = {dimension(50, 60, 1000, "c"), dimension(60, 80, 2000, "c"),
                             overall(50, 80, 3000, "c")};
  for (const auto& [from, to, steps, whole] :
       {std::tuple{50, 70, 2000, false}, {70, 75, 500, false}, {50, 75, 2500, true}}) {
    DimensionClaim up = dimension(from, to, steps, "c");
    up.from = {30, static_cast<double>(from)};
    up.to = {33, static_cast<double>(to)};
    up.along = {0, whole ? -1.0 : 1.0};
    up.overall = whole;
    items.push_back(up);
  }
  clean(items);
}

TEST_CASE("a running figure that passes the overall is caught") {
  DimensionClaim running = dimension(50, 80.004, 3001, "r");
  running.exact_mm = 300.06;
  running.to.x = 80.006;
  running.running = true;
  caught("chain-open", {running, overall(50, 80.004, 3000, "r")});
  running.steps = 3000;
  running.exact_mm = 300.04;
  running.to.x = 80.004;
  clean({running, overall(50, 80.004, 3000, "r")});
}

TEST_CASE("marks and rows that do not meet are caught") {
  clean({PartClaim{"B-L", "view"}, PartClaim{"B-L", "row"}}, {"B-L"});
  clean({PartClaim{"B-L", "balloon"}, PartClaim{"B-L", "row"}});
  caught("mark-without-row", {PartClaim{"B-L", "view"}}, {"B-L"});
  caught("mark-without-row", {PartClaim{"Z", "label"}});
  caught("row-without-mark", {PartClaim{"Z", "row"}});
  caught("part-not-drawn", {PartClaim{"B-L", "label"}, PartClaim{"B-L", "row"}}, {"B-L"});
  std::set<std::string> rules;
  for (const LintFault& fault : faults_of({}, {"B-L"})) rules.insert(fault.rule);
  CHECK(rules == std::set<std::string>{"mark-without-row", "part-not-drawn"});
}

TEST_CASE("broken links are caught") {
  const Link link{{{50, 50}, {60, 60}}, "part B-L"};
  clean({Anchor{"part B-L", {20, 200}}, link});
  caught("broken-link", {link});
  caught("broken-link", {Anchor{"part B-L", {20, 200}}, Anchor{"part B-L", {20, 100}}});
  caught("broken-link",
         {Anchor{"part B-L", {20, 200}}, link, Link{{{55, 55}, {70, 70}}, "part B-L"}});
  caught("broken-link", {Anchor{"part B-L", {20, 200}}, Link{{{200, 50}, {220, 60}}, "part B-L"}});
  caught("broken-link", {Anchor{"part B-L", {20, 200}}, Link{{{50, 50}, {50, 60}}, "part B-L"}});
}

TEST_CASE("what can't be drawn is caught and does not stop the rest") {
  constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
  caught("bad-text", {word(50, 100, "漢")});
  caught("bad-text", {word(50, 100, "\xFF")});
  caught("not-finite", {line({not_a_number, 50}, {60, 60})});
  caught("not-finite", {word(50, not_a_number)});
  caught("not-finite", {Stroke{Path{}.line({50, 50}), {}}});
  const std::vector<LintFault> faults =
      faults_of({word(50, 100, "漢"), word(50, 100), word(50, 101)});
  CHECK(faults.size() == 2);
}

TEST_CASE("a fault names its page and its place") {
  const std::vector<LintFault> faults = faults_of({word(50, 100), word(60, 101, "Lower")});
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].page == "7");
  CHECK(faults[0].text == "\"Lower\" at 60, 101 mm over \"Shelf upper\" at 50, 100 mm");
}

TEST_CASE("the grid finds what a search of all pairs finds") {
  // A deterministic scatter of lines and texts, some off the sheet.
  std::uint32_t state = 12345;
  const auto next = [&](double range) {
    state = state * 1664525u + 1013904223u;
    return static_cast<double>(state >> 8) / (1u << 24) * range;
  };
  std::vector<Item> items;
  std::vector<Text> texts;
  std::vector<std::pair<Vec2, Vec2>> lines;
  for (int i = 0; i < 60; ++i) {
    Text text = word(next(260) - 20, next(340) - 20, "Text");
    text.turn = next(6.28);
    texts.push_back(text);
    items.push_back(group("note", {text}));
  }
  for (int i = 0; i < 200; ++i) {
    const Vec2 a{next(300) - 40, next(380) - 40};
    const Vec2 b = i % 3 == 0 ? Vec2{a.x, next(300)} : Vec2{next(300) - 40, next(380) - 40};
    lines.emplace_back(a, b);
    items.push_back(line(a, b));
  }
  std::size_t expected = 0;
  for (const Text& text : texts) {
    const std::vector<Vec2> corners = fonts().box(text);
    bool hit = false;
    for (const auto& [a, b] : lines)
      for (int i = 0; i <= 20000 && !hit; ++i) {
        const Vec2 p = a + (b - a) * (i / 20000.0) - corners[0];
        const Vec2 u = corners[1] - corners[0], v = corners[3] - corners[0];
        const double x = dot(p, unit(u)), y = dot(p, unit(v));
        hit = x > -0.07 && x < norm(u) + 0.07 && y > -0.07 && y < norm(v) + 0.07;
      }
    expected += hit ? 1 : 0;
  }
  const std::vector<LintFault> faults = faults_of(items);
  const auto found = std::count_if(faults.begin(), faults.end(), [](const LintFault& fault) {
    return fault.rule == "text-over-line";
  });
  CHECK(expected > 20);
  CHECK(static_cast<std::size_t>(found) == expected);
}

TEST_CASE("a packet without a list, or without drawings of parts, is held to what is left") {
  const Packet drawn = packet_of({PartClaim{"A", "view"}});
  const Packet listed = packet_of({PartClaim{"A", "row"}});
  PartsWanted views({"A"}), rows({"A"});
  views.listed = false;
  rows.drawn = false;
  CHECK(lint(drawn, fonts(), views).empty());
  CHECK(lint(listed, fonts(), rows).empty());
  // What is left is still looked for.
  REQUIRE(lint(listed, fonts(), views).size() == 2);
  CHECK(lint(listed, fonts(), views)[0].rule == "row-without-mark");
  CHECK(lint(listed, fonts(), views)[1].rule == "part-not-drawn");
  REQUIRE(lint(drawn, fonts(), rows).size() == 1);
  CHECK(lint(drawn, fonts(), rows)[0].rule == "mark-without-row");
}
