// The pages of saw steps: with steps set up here for parts of a demo, and with those of the plans.
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <numbers>
#include <random>

#include "part_pages.h"
#include "sheets/saw_steps_draw.h"
#include "sheets/saw_steps_words.h"

using namespace splay;
using fabrication::Flag;
using fabrication::Guide;
using fabrication::Step;
using fabrication::Tool;
using parts::Side;

namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr const char* cabinet = "projects/canted-tea-cabinet.toml";
constexpr const char* stool = "projects/splayed-stool.toml";

int row_of(const test::Built& piece, const std::string& part) {
  const auto& parts = piece.plan.assembly.parts;
  for (std::size_t i = 0; i < parts.size(); ++i)
    if (parts[i].name == part) return piece.plan.row_of_part[i];
  FAIL("no part named " << part);
  return -1;
}

// At the gauge, show face up, the stop on the right, the low end off: machine x runs along the
// length.
Step at_gauge(int row, const std::string& id, double distance) {
  Step step;
  step.id = id;
  step.row = row;
  step.name = "end";
  step.guide = Guide::gauge;
  step.face = Side::z_low;
  step.against = Side::y_low;
  step.leads = Side::y_high;
  step.stopped = Side::x_high;
  step.exact.distance = distance;
  step.exact.width = 3.2;
  step.proven = true;
  return step;
}

Step bevel_flat(int row) {
  Step step = at_gauge(row, "T.1", 500);
  step.name = "bevel";
  step.exact.tilt = 37.5 * degree;
  return step;
}

// Its high end down, the inside to the tall fence on the right.
Step bevel_on_end(int row) {
  Step step;
  step.id = "T.2";
  step.row = row;
  step.name = "mitre";
  step.face = Side::x_high;
  step.against = Side::z_low;
  step.leads = Side::y_low;
  step.exact.distance = 18;
  step.exact.tilt = 30 * degree;
  step.exact.width = 3.2;
  step.flags = {Flag::complement, Flag::tall_fence, Flag::try_first};
  step.proven = true;
  return step;
}

Step housing(int row) {
  Step step = at_gauge(row, "T.3", 300);
  step.name = "housing for shelf";
  step.tool = Tool::stack;
  step.cuts_through = false;
  step.exact.tilt = 15 * degree;
  step.exact.height = 6.35;
  step.exact.width = 18.1;
  step.flags = {Flag::guard_off};
  return step;
}

Step lap(int row) {
  Step step = at_gauge(row, "T.4", 200);
  step.name = "half lap";
  step.tool = Tool::stack;
  step.cuts_through = false;
  step.exact.gauge = 15 * degree;
  step.exact.height = 12;
  step.exact.width = 18;
  step.flags = {Flag::guard_off};
  return step;
}

Step taper(int row) {
  Step step;
  step.id = "T.5";
  step.row = row;
  step.name = "taper";
  step.guide = Guide::marks;
  step.face = Side::z_low;
  step.against = Side::y_low;
  step.leads = Side::x_high;
  step.stopped = Side::x_low;
  step.across_from = Side::y_low;
  step.waste_right = true;
  step.exact.width = 3.2;
  step.exact.jig_offset = 13;
  step.exact.marks = {{0, 13}, {360, 0}};
  step.flags = {Flag::narrow_offcut};
  step.proven = true;
  return step;
}

// The plan with these steps instead of its own, printed as they are exact.
test::Built with_steps(const char* path, std::vector<Step> steps) {
  test::Built piece = test::piece_from(path);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    steps[i].printed = steps[i].exact;
    steps[i].group = static_cast<int>(i);
  }
  piece.plan.steps = std::move(steps);
  return piece;
}

sheets::Context context_of(const test::Built& piece) {
  return {piece.plan,
          {&test::fonts(), sheets::look_of(model::Style{}), piece.project->job.figures()},
          drafting::paper_named("A4"),
          {}};
}

std::vector<const ink::Page*> step_pages(const ink::Packet& packet) {
  std::vector<const ink::Page*> pages;
  for (const ink::Page& page : packet.pages)
    if (page.title == "Saw steps") pages.push_back(&page);
  return pages;
}

template <class T>
std::vector<T> all_in(const drafting::Picture& picture) {
  ink::Page page;
  page.items = picture.items;
  return test::all_of<T>(page);
}

// The corners of the blade: the only black shape of four corners.
std::vector<Vec2> blade_in(const drafting::Picture& picture) {
  for (const ink::Fill& fill : all_in<ink::Fill>(picture))
    if (fill.grey == 0 && fill.path.points.size() == 4) return fill.path.points;
  FAIL("no blade is drawn");
  return {};
}

const ink::Text& text_in(const std::vector<ink::Text>& texts, const std::string& words) {
  for (const ink::Text& text : texts)
    if (text.utf8 == words) return text;
  FAIL("\"" << words << "\" is not written");
  return texts.front();
}

}  // namespace

TEST_CASE("a plan without steps has no page of them") {
  test::Built piece = test::piece_from(cabinet);
  piece.plan.steps.clear();
  const ink::Packet packet = test::binder(piece);
  CHECK(step_pages(packet).empty());
  for (const ink::Page& page : packet.pages) CHECK(page.title != "Saw steps");
}

TEST_CASE("steps of all kinds make sound pages on any paper, in inches and millimetres") {
  test::Built inches = with_steps(cabinet, {});
  test::Built metric = with_steps(stool, {});
  const int panel = row_of(inches, "left panel"), leg = row_of(metric, "left front leg");
  inches = with_steps(cabinet, {bevel_flat(panel), housing(panel), bevel_on_end(panel)});
  metric = with_steps(stool, {lap(leg), taper(leg)});
  for (const test::Built* piece : {&inches, &metric})
    for (const auto paper : {model::PaperSize::a4, model::PaperSize::letter, model::PaperSize::a3,
                             model::PaperSize::tabloid}) {
      const ink::Packet packet = test::binder(*piece, paper);
      INFO(packet.pages.front().paper.name);
      CHECK_THAT(test::page_faults(*piece, packet), Catch::Equals(""));
      const auto pages = step_pages(packet);
      REQUIRE_FALSE(pages.empty());
      for (const Step& step : piece->plan.steps) {
        CHECK(test::shows(pages, step.id));
        CHECK_FALSE(test::shows(pages, "Not drawn"));
      }
      CHECK(test::shows(pages, "push sticks"));
      CHECK(test::shows(pages, "manual"));
      CHECK(test::shows(pages, "scrap"));
      CHECK(test::shows(pages, "rules of the place prevail"));
    }
}

// tan 37.5 degrees = 0.76733, tan 15 degrees = 0.26795 (tables of natural tangents, from memory):
// 9.208 in 12, nearest 32nd 9 7/32; 80.4 in 300.
TEST_CASE("angles have their degree sign, their rise, and what the scale shows") {
  test::Built inches = test::piece_from(cabinet);
  inches = with_steps(cabinet, {bevel_flat(row_of(inches, "left panel"))});
  const auto says = [](const test::Built& piece, const std::string& words) {
    return test::shows(step_pages(test::binder(piece)), words);
  };
  CHECK(says(inches, "check 9 7/32 in 12, scale 37.5°"));
  CHECK(says(inches, "Tilt, to the left"));
  inches.project->shop.saw.tilt_scale.value = model::Scale::ninety_is_square;
  CHECK(says(inches, "check 9 7/32 in 12, scale 52.5°"));

  test::Built metric = test::piece_from(stool);
  metric = with_steps(stool, {lap(row_of(metric, "left front leg"))});
  CHECK(says(metric, "check 80.4 in 300, scale 15.0°"));
  CHECK(says(metric, "Gauge, right end forward"));
  CHECK(says(metric, "scale 0.0°"));
  metric.project->shop.saw.gauge_scale.value = model::Scale::ninety_is_square;
  CHECK(says(metric, "check 80.4 in 300, scale 75.0°"));
  metric.plan.steps[0].exact.gauge = metric.plan.steps[0].printed.gauge = -15 * degree;
  CHECK(says(metric, "Gauge, left end forward"));
}

TEST_CASE("the blade is drawn at its tilt, on the side it leans to, the fence where it is") {
  test::Built piece = test::piece_from(cabinet);
  const int panel = row_of(piece, "left panel");
  for (const bool right : {false, true}) {
    Step flat = bevel_flat(panel), standing = bevel_on_end(panel);
    flat.tilts_right = standing.tilts_right = right;
    standing.exact.distance = right ? 30 : 18;
    piece = with_steps(cabinet, {flat, standing});
    const std::vector<sheets::StepWork> works = sheets::step_works(piece.plan);
    for (const sheets::StepWork& work : works) {
      INFO(work.step->id << " " << work.why);
      REQUIRE(work.why.empty());
      const drafting::Picture picture = sheets::end_picture(context_of(piece), work);
      const std::vector<Vec2> blade = blade_in(picture);
      const Vec2 up = blade[1] - blade[0];
      REQUIRE(up.y > 0);
      CHECK(std::atan2(up.x, up.y) ==
            Approx((right ? 1 : -1) * work.step->exact.tilt).margin(1e-9));
    }
    const drafting::Picture picture = sheets::end_picture(context_of(piece), works[1]);
    const auto texts = all_in<ink::Text>(picture);
    // Where the blade comes through the table is its foot; the fence is to the right of that.
    CHECK(text_in(texts, "tall fence").at.x > blade_in(picture)[0].x);
    const auto claims = all_in<ink::DimensionClaim>(picture);
    REQUIRE(claims.size() == 1);
    CHECK(claims[0].exact_mm == Approx(standing.exact.distance));
    CHECK(claims[0].to.x > claims[0].from.x);
  }
}

// The wood left by a bevel is a prism: width times thickness times the mean of both points'
// lengths.
TEST_CASE("the wood that is drawn is what the setting leaves") {
  test::Built piece = test::piece_from(cabinet);
  piece = with_steps(cabinet, {bevel_flat(row_of(piece, "left panel"))});
  const std::vector<sheets::StepWork> works = sheets::step_works(piece.plan);
  const Vec3 size = works[0].before.bounds().size();
  const double longest = 500 + size.z * std::tan(37.5 * degree);
  CHECK(works[0].after.volume() == Approx(size.y * size.z * (500 + longest) / 2));
  CHECK(works[0].after.bounds().size().x == Approx(longest));
}

TEST_CASE("from above the gauge and the stop stand at their angle and distance") {
  test::Built piece = test::piece_from(stool);
  for (const double turn : {15.0, -15.0}) {
    Step step = lap(row_of(piece, "left front leg"));
    step.exact.gauge = turn * degree;
    piece = with_steps(stool, {step});
    const auto works = sheets::step_works(piece.plan);
    REQUIRE(works[0].why.empty());
    const drafting::Picture picture = sheets::plan_picture(context_of(piece), works[0]);
    const auto texts = all_in<ink::Text>(picture);
    CHECK(text_in(texts, "gauge").turn == Approx(turn * degree));
    const auto claims = all_in<ink::DimensionClaim>(picture);
    REQUIRE(claims.size() == 1);
    // From the line of cut to the stop, which is on the right.
    const Vec2 along = claims[0].to - claims[0].from;
    CHECK(std::atan2(along.y, along.x) == Approx(turn * degree));
    CHECK(claims[0].exact_mm == Approx(200));
    text_in(texts, "stop");
  }
}

// Common practice, no source: a mitre saw has a fence and mitre angles, a table saw a mitre gauge.
TEST_CASE("the mitre saw's settings have its own words") {
  const test::Built piece =
      test::build(test::job("mm") + "[shop.saw]\ngauge = \"30 deg\"\n[shop.mitre_saw]\n" +
                  test::board("oak", "20 mm") +
                  "[board.b]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 500\nwidth = "
                  "60\n[board.b.cut.head]\ncut = "
                  "\"angles\"\nalong = 480\nface_angle = \"48 deg\"\n");
  const ink::Packet packet = test::binder(piece);
  const auto pages = test::titled(packet, "Saw steps");
  CHECK(test::shows(pages, "Mitre saw, blade upright, mitre 48.0°"));
  CHECK(test::shows(pages, "against the fence"));
  CHECK_FALSE(test::shows(pages, "gauge 48.0°"));
}

TEST_CASE("what the saw takes is hatched, what stays is not") {
  test::Built piece = test::piece_from(cabinet);
  piece = with_steps(cabinet, {bevel_flat(row_of(piece, "left panel"))});
  const auto works = sheets::step_works(piece.plan);
  const drafting::Picture picture = sheets::plan_picture(context_of(piece), works[0]);
  const auto claims = all_in<ink::DimensionClaim>(picture);
  REQUIRE(claims.size() == 1);
  const double line = claims[0].from.x;
  int hatched = 0;
  for (const ink::Stroke& stroke : all_in<ink::Stroke>(picture)) {
    if (stroke.path.points.size() < 8 || stroke.pen.dash != ink::Dash::continuous) continue;
    // Hatching: many short strokes of one direction.
    const Vec2 first = stroke.path.points[1] - stroke.path.points[0];
    bool parallel = std::abs(first.x) > 1e-6 && std::abs(first.y) > 1e-6;
    for (std::size_t i = 0; i + 1 < stroke.path.points.size() && parallel; i += 2)
      parallel =
          std::abs(cross(unit(first), stroke.path.points[i + 1] - stroke.path.points[i])) < 1e-6;
    if (!parallel) continue;
    ++hatched;
    for (const Vec2 p : stroke.path.points) CHECK(p.x < line + 0.05);
  }
  CHECK(hatched >= 1);
}

TEST_CASE("a step that is not proven says so and why") {
  test::Built piece = test::piece_from(cabinet);
  Step step = bevel_flat(row_of(piece, "left panel"));
  step.proven = false;
  step.unproven_why = "Cut so, the part is off by 1 mm.";
  piece = with_steps(cabinet, {step});
  const ink::Packet packet = test::binder(piece);
  CHECK(test::shows(step_pages(packet), "NOT PROVEN: Cut so, the part is off by 1 mm."));
}

TEST_CASE("every flag is a sentence or shows in the words") {
  test::Built piece = test::piece_from(cabinet);
  Step step = bevel_flat(row_of(piece, "left panel"));
  for (const Flag flag :
       {Flag::try_first, Flag::tall_fence, Flag::sacrificial, Flag::guard_off, Flag::narrow_offcut,
        Flag::small_piece, Flag::stop_behind, Flag::square_corners, Flag::block}) {
    step.flags = {flag};
    sheets::StepWork work;
    work.step = &step;
    INFO(fabrication::word(flag));
    CHECK(sheets::caution_words(work).size() == 1);
  }
}

// Common practice, no source: nothing shorter than a foot goes over a jointer or through a planer.
TEST_CASE("a short piece is not held in a sled over knives") {
  test::Built piece = test::piece_from(cabinet);
  Step step = bevel_flat(row_of(piece, "left panel"));
  CHECK(sheets::short_caution(step, Flag::small_piece).find("sled") != std::string::npos);
  step.tool = Tool::thickness;
  for (const std::string& words : {sheets::short_caution(step, Flag::small_piece),
                                   sheets::caution_words(step, Flag::small_piece)}) {
    CHECK(words.find("sled") == std::string::npos);
    CHECK(words.find("hand plane") != std::string::npos);
  }
}

TEST_CASE("the bench keeps each part's order and leaves a setting only when nothing is ready") {
  std::mt19937 random(20260302);
  for (int round = 0; round < 300; ++round) {
    std::vector<Step> steps(40);
    std::uniform_int_distribution<int> group(0, 5), coin(0, 3);
    int row = 0;
    for (Step& step : steps) {
      step.row = row += coin(random) == 0 ? 1 : 0;
      step.group = group(random);
    }
    std::vector<sheets::StepWork> works(steps.size());
    for (std::size_t i = 0; i < steps.size(); ++i) works[i].step = &steps[i];
    std::map<int, const Step*> last;
    std::size_t count = 0;
    for (const sheets::Bench& bench : sheets::bench_order(works)) {
      REQUIRE_FALSE(bench.steps.empty());
      const int own = bench.steps.front()->step->group;
      for (const sheets::StepWork* work : bench.steps) {
        ++count;
        CHECK(work->step->group == own);
        const auto [before, first] = last.try_emplace(work->step->row, nullptr);
        const bool starts = work->step == steps.data() || (work->step - 1)->row != work->step->row;
        CHECK(before->second == (starts ? nullptr : work->step - 1));
        before->second = work->step;
      }
      for (const Step& step : steps) {
        const bool starts = &step == steps.data() || (&step - 1)->row != step.row;
        const auto done = last.find(step.row);
        const Step* latest = done == last.end() ? nullptr : done->second;
        const bool ready = starts ? latest == nullptr : latest == &step - 1;
        CHECK_FALSE((ready && step.group == own));
      }
    }
    CHECK(count == steps.size());
  }
}

TEST_CASE("a broken axis fits its room, keeps its order and the place that matters") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> length(0, 200), part(0, 1);
  for (int round = 0; round < 2000; ++round) {
    const double low = -length(random), high = length(random) + 1;
    const double room = 20 + 60 * part(random), at = low + (high - low) * part(random);
    const bool low_end = part(random) < 0.5, high_end = part(random) < 0.5;
    const sheets::BrokenAxis axis({low, high, room, at, low_end, high_end});
    INFO(low << " to " << high << " in " << room << " about " << at);
    CHECK(axis.high() - axis.low() <= room + 1e-6);
    CHECK(axis(at) == Approx(at).margin(1e-9));
    if (low_end) CHECK(axis.stretches().front().from == Approx(low).margin(1e-9));
    if (high_end) CHECK(axis.stretches().back().to == Approx(high).margin(1e-9));
    for (std::size_t i = 0; i + 1 < axis.stretches().size(); ++i) {
      const sheets::Stretch &a = axis.stretches()[i], &b = axis.stretches()[i + 1];
      CHECK(a.to < b.from + 1e-9);
      CHECK(a.to + a.shift < b.from + b.shift);
    }
    double before = -1e9;
    for (int i = 0; i <= 50; ++i) {
      const double now = axis(low + (high - low) * i / 50);
      CHECK(now >= before);
      before = now;
    }
  }
}

TEST_CASE("every step of every demo stands on its pages once, each part's in order") {
  for (const char* path :
       {cabinet, stool, "projects/six-sided-wall-case.toml", "projects/plain-bookcase.toml"}) {
    const test::Built piece = test::piece_from(path);
    if (piece.plan.steps.empty()) continue;
    const ink::Packet packet = test::binder(piece);
    std::map<std::string, int> heads;
    std::map<int, int> place;
    std::map<std::string, const Step*> steps;
    for (const Step& step : piece.plan.steps) steps[step.id] = &step;
    // At the head of a card, or of its row in a card of several like cuts; "A.3 to 5" where they
    // are told together.
    for (const ink::Page* page : step_pages(packet))
      for (const ink::Text& text : test::all_of<ink::Text>(*page)) {
        const std::size_t to = text.utf8.find(" to ");
        const auto step = steps.find(text.utf8.substr(0, to));
        if (step == steps.end()) continue;
        const std::size_t dot = step->first.rfind('.') + 1;
        int number = std::stoi(step->first.substr(dot));
        const int last = to == std::string::npos ? number : std::stoi(text.utf8.substr(to + 4));
        for (; number <= last; ++number) {
          ++heads[step->first.substr(0, dot) + std::to_string(number)];
          CHECK(number == ++place[step->second->row]);
        }
      }
    for (const Step& step : piece.plan.steps) {
      INFO(path << " " << step.id);
      CHECK(heads[step.id] == 1);
    }
  }
}

TEST_CASE(
    "steps that are the same cut stand on one card, each once and none before its part's last") {
  for (const char* file : {cabinet, stool, "projects/plain-bookcase.toml"}) {
    INFO(file);
    const test::Built piece = test::piece_from(file);
    const std::vector<sheets::StepWork> works = sheets::step_works(piece.plan);
    std::map<int, const Step*> last;
    std::size_t steps = 0, cards = 0;
    std::map<std::string, int> others, said;  // how often a fence or stop is to be told
    for (const sheets::Bench& bench : sheets::bench_order(works))
      for (const sheets::JoinedSteps& joined : sheets::joined_steps(bench)) {
        ++cards;
        for (const sheets::StepWork* work : joined) {
          ++steps;
          const Step*& before = last[work->step->row];
          CHECK((before == nullptr || before < work->step));
          before = work->step;
          const fabrication::Setting &one = joined.front()->step->printed,
                                     &two = work->step->printed;
          // Only fence and stop may be set otherwise, and the row says to what.
          const bool as_drawn = std::abs(one.distance - two.distance) < 1e-3;
          CHECK((as_drawn || work->step->guide != Guide::marks));
          if (work != joined.front() && work->step->guide != Guide::marks &&
              work->step->tool != Tool::thickness)
            ++others[piece.project->job.figures().text(two.distance)];
          CHECK(one.tilt == Approx(two.tilt).margin(1e-9));
          CHECK((one.height > 0) == (two.height > 0));
          if (std::abs(one.height - two.height) > 1e-3)
            ++others[piece.project->job.figures().text(two.height)];
        }
      }
    CHECK(steps == piece.plan.steps.size());
    CHECK(cards < steps);
    const ink::Packet packet = test::binder(piece);
    for (const ink::Page* page : step_pages(packet))
      for (const ink::Text& text : test::all_of<ink::Text>(*page)) ++said[text.utf8];
    for (const auto& [figure, times] : others) {
      INFO(figure);
      CHECK(said[figure] >= times);
    }
  }
}
