// What is marked on the work for the hand: from where it is counted, which way a wall leans, how
// deep a sloping floor is.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "part_pages.h"
#include "sheets/saw_steps_words.h"
#include "support/demos.h"

using namespace splay;

namespace {

struct Told {
  const fabrication::Step* step;
  std::string words;
};

// Each step that clears to lines, with what the page says of it.
std::vector<Told> told(const test::Built& piece) {
  const sheets::Context context{
      piece.plan,
      {&test::fonts(), sheets::look_of(model::Style{}), piece.project->job.figures()},
      drafting::paper_named("A4"),
      {}};
  std::vector<Told> all;
  for (const sheets::StepWork& work : sheets::step_works(piece.plan))
    if (work.step->tool == fabrication::Tool::clear)
      all.push_back({work.step, sheets::mark_words(context, work)});
  return all;
}

std::string words_of(const std::vector<Told>& all, const std::string& id) {
  const auto found = std::ranges::find(all, id, [](const Told& one) { return one.step->id; });
  REQUIRE(found != all.end());
  return found->words;
}

bool has(const std::string& words, const std::string& what) {
  return words.find(what) != std::string::npos;
}

}  // namespace

// The sides of the cabinet lean in as they rise, and its back follows them: in the bottom, cut from
// above, the back's rabbet grows wider downwards, so its ends are undercut; in the top, cut from
// below, it grows narrower as it goes in, so they are open.
TEST_CASE("a wall that leans away from the waste on its way down is undercut") {
  const std::vector<Told> all = told(test::piece_from("projects/tall-legged-tea-cabinet.toml"));
  const std::string bottom = words_of(all, "A.6"), top = words_of(all, "C.6");
  INFO(bottom << "\n" << top);
  CHECK((has(bottom, "7.00°") && has(bottom, "undercut") && !has(bottom, "open")));
  CHECK((has(top, "7.00°") && has(top, "open") && !has(top, "undercut")));
}

// A shelf level in sides that lean 30 degrees: its housing is counted from the inner arris of the
// foot in both places, not from the long point outside.
TEST_CASE("a line beside a bevelled end is counted from the arris of the face it is marked on") {
  const test::Built piece = test::piece_from("projects/six-sided-wall-case.toml");
  const std::string words = words_of(told(piece), "C-R.8");
  INFO(words);
  CHECK(has(words, "238.3 from foot, inside"));
  CHECK(has(words, "218 from foot, inside"));
  const ink::Packet packet = test::binder(piece);
  const std::vector<const ink::Page*> pages = test::pages_of(packet, "C-R");
  for (const char* figure : {"238.3", "218"})
    CHECK(std::ranges::any_of(pages,
                              [&](const ink::Page* page) { return test::shows(*page, figure); }));
}

TEST_CASE("the depth of a sloping floor is told where there is wood above it") {
  for (const std::filesystem::path& file : test::demos()) {
    const test::Built piece = test::build(test::text_of(file));
    for (const Told& one : told(piece)) {
      const std::vector<fabrication::DepthMark>& depths = one.step->exact.depths;
      if (depths.size() != 3) continue;
      INFO(file << " " << one.step->id << ": " << one.words);
      const Vec3 size = piece.plan.rows[static_cast<std::size_t>(one.step->row)].blank;
      double deepest = 0;
      for (const fabrication::DepthMark& depth : depths) {
        CHECK(depth.depth > -1e-6);
        CHECK((depth.at.along > -1e-6 && depth.at.along < size.x + 1e-6));
        CHECK((depth.at.across > -1e-6 && depth.at.across < std::max(size.y, size.z) + 1e-6));
        deepest = std::max(deepest, depth.depth);
      }
      CHECK(deepest > 0.1);
    }
  }
}

// Tapered in width the rail has no square edge left; its faces are planed to lines on its edges
// (common practice, no source), from 29 mm to what is asked for, half of it on either side.
TEST_CASE("a face that tapers a little is marked on the edges, however little it is") {
  const double thin = GENERATE(25.0, 28.0, 28.972);
  const test::Built piece = test::build(
      test::job("mm") + test::board("ash", "29 mm") +
      "[stick.rail]\nfrom = [0, 0, 0]\nto = [700, 0, 0]\nstock = \"ash\"\nwidth = 60\nto_width = "
      "90\nroll = 90\nto_thickness = " +
      plain_number(thin, 3) + "\n");
  REQUIRE(piece.stops() == "");
  int faces = 0;
  for (const fabrication::Step& step : piece.plan.steps) {
    if (step.name != "taper, back" && step.name != "taper, face") continue;
    ++faces;
    INFO(step.id);
    CHECK(step.proven);
    CHECK(step.position() == fabrication::Position::on_edge);
    CHECK(step.exact.tilt == Approx(0).margin(1e-6));
    const auto from = step.exact.marks[0], to = step.exact.marks[1];
    CHECK(std::abs(to.along - from.along) == Approx(700));
    CHECK(std::abs(to.across - from.across) == Approx((29 - thin) / 2));
  }
  CHECK(faces == 2);
  CHECK(test::page_faults(piece, test::binder(piece)) == "");
}
