// Pages of the glue-up: a stage is worked from one page, and nothing is clamped that is one
// already.
#include <algorithm>
#include <catch2/catch.hpp>

#include "fabrication/glue_up.h"
#include "part_pages.h"
#include "sheets/glue_up_picture.h"
#include "support/demos.h"

using namespace splay;

namespace {

// Texts at the size of headings that begin with "Stage ".
std::vector<std::string> stages_on(const ink::Page& page) {
  std::vector<std::string> found;
  for (const ink::Text& text : test::all_of<ink::Text>(page))
    if (text.height > 4 && text.utf8.starts_with("Stage ")) found.push_back(text.utf8);
  return found;
}

bool has_text(const ink::Page& page, const std::string& words) {
  return std::ranges::any_of(test::all_of<ink::Text>(page),
                             [&](const ink::Text& text) { return text.utf8 == words; });
}

}  // namespace

TEST_CASE("What goes on from the page before shares its page with no other stage") {
  for (const std::filesystem::path& file : test::demos()) {
    const test::Built piece = test::build(test::text_of(file));
    for (const model::PaperSize paper : {model::PaperSize::a4, model::PaperSize::letter}) {
      const ink::Packet packet = test::binder(piece, paper);
      std::size_t headed = 0, after = 0;
      for (const ink::Page& page : packet.pages) {
        if (page.title != "Glue-up") continue;
        INFO(file << ", page " << page.label);
        const std::vector<std::string> stages = stages_on(page);
        headed += stages.size();
        // The tables below a stage's steps: of its clamps, and of what is measured.
        const bool clamps = has_text(page, "Row"), measures = has_text(page, "Within");
        const bool steps = has_text(page, "Step");
        CHECK((!stages.empty()) == steps);
        if (stages.empty() && (clamps || measures)) CHECK(test::shows(page, ", going on"));
        after += stages.empty() && (clamps || measures) ? 1 : 0;
      }
      const auto& all = piece.plan.glue_up.stages;
      CHECK(headed == all.size());
      CHECK(after <= 2);
    }
  }
}

TEST_CASE("A stage is called by what it adds, and to what") {
  const test::Built piece = test::piece_from("projects/tall-legged-tea-cabinet.toml");
  const ink::Packet packet = test::binder(piece);
  std::string titles;
  for (const ink::Page& page : packet.pages)
    for (const std::string& title : stages_on(page)) titles += title + "\n";
  INFO(titles);
  for (const char* title : {"Stage 2: cabinet: bottom panel, top panel, to stage 1\n",
                            "Stage 3: cabinet back, to stage 2\n"})
    CHECK(titles.find(title) != std::string::npos);
}

// Common practice, no source: a lipping that is part of its panel needs no clamp where the panels
// are pressed together.
TEST_CASE("Mitres of edging that is one with its panels are pressed by the panels' clamps") {
  const test::Built piece = test::piece_from("projects/six-sided-wall-case.toml");
  const parts::Assembly& all = piece.plan.assembly;
  const auto core_of = [&](int part) {
    for (const parts::Joint& joint : all.joints)
      if (joint.made == parts::Made::before_cuts && joint.between.front() == part)
        return joint.between.back();
    return part;
  };
  int mitres = 0;
  for (const fabrication::GlueStage& stage : piece.plan.glue_up.stages)
    for (const fabrication::Clamping& row : stage.clampings)
      for (const int index : row.joints) {
        const std::vector<int>& between = all.joints[static_cast<std::size_t>(index)].between;
        std::vector<int> cores;
        for (const int part : between) cores.push_back(core_of(part));
        if (std::ranges::is_permutation(cores, between)) continue;
        ++mitres;
        CHECK(std::ranges::any_of(row.joints, [&](int other) {
          return std::ranges::is_permutation(all.joints[static_cast<std::size_t>(other)].between,
                                             cores);
        }));
      }
  CHECK(mitres == 6);
}

TEST_CASE("Pictures of a stage take the width or the height there is, parts and clamped alike") {
  constexpr double width = 165, room = 140, labels = 9;
  for (const std::filesystem::path& file : test::demos()) {
    const test::Built piece = test::build(test::text_of(file));
    const sheets::Context context{
        piece.plan,
        {&test::fonts(), sheets::look_of(model::Style{}), piece.project->job.figures()},
        drafting::paper_named("Letter"),
        {}};
    for (const fabrication::GlueStage& stage : piece.plan.glue_up.stages) {
      const drafting::Picture picture = sheets::stage_pictures(context, stage, width, room);
      std::vector<ink::Rect> drawn;
      double across = 0, up = 0;
      for (const ink::Item& item : picture.items) {
        const auto* group = std::get_if<ink::Group>(&item);
        if (group == nullptr || group->role != "view") continue;
        std::vector<Vec2> points;
        ink::walk(group->items, [&](const ink::Item& inner) {
          if (const auto* stroke = std::get_if<ink::Stroke>(&inner))
            points.insert(points.end(), stroke->path.points.begin(), stroke->path.points.end());
        });
        drawn.push_back(ink::bounds(points));
        across += drawn.back().width();
        up += drawn.back().height();
      }
      REQUIRE_FALSE(drawn.empty());
      INFO(file << ", " << picture.width << " by " << picture.height << ", " << drawn.size());
      const auto count = static_cast<double>(drawn.size());
      const double all_across = width - (count - 1) * 5 - 2 * labels * count;
      const double one_up = room - 2 * labels, all_up = room - (count - 1) * 5 - 2 * labels * count;
      const bool beside = drawn.size() == 1 || drawn[0].high.x < drawn[1].low.x;
      const double highest =
          std::ranges::max(drawn, {}, [](const ink::Rect& r) { return r.height(); }).height();
      const double widest =
          std::ranges::max(drawn, {}, [](const ink::Rect& r) { return r.width(); }).width();
      if (beside)
        CHECK((across > all_across - 0.5 || highest > one_up - 0.5));
      else
        CHECK((up > all_up - 0.5 || widest > width - 2 * labels - 0.5));
    }
  }
}
