// The glue-up: timeline, dry fit, and for each stage a picture of what comes in, its clamps, and
// what is measured while the glue is wet.
#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "drafting/flow.h"
#include "fabrication/glue_up.h"
#include "sheets/exploded_layout.h"
#include "sheets/glue_up_picture.h"
#include "sheets/glue_up_tables.h"
#include "sheets/glue_up_words.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

using drafting::Story;
using fabrication::GlueStage;

// mm: how high the pictures of a stage are, air below them and below the stage.
constexpr double least_pictured = 56, after_pictures = 2, after_steps = 2, after_stage = 7;

void add_text(const Context& context, const std::string& text, double width, Story& story) {
  if (text.empty()) return;
  story.push_back(drafting::body_text(context.kit, text, width));
  story.back().space_after = 1.5;
}

void space(Story& story, double after) {
  if (!story.empty()) story.back().space_after = after;
}

// What a stage has in front: its title, pictures as high as that (or none), its steps.
Story stage_front(const Context& context, std::size_t number, double width, double pictured) {
  const GlueStage& stage = context.plan.glue_up.stages[number];
  Story story{drafting::heading(
      context.kit, "Stage " + std::to_string(number + 1) + ": " + stage_title(context, stage),
      width)};
  add_text(context, time_words(context, stage), width, story);
  story.back().keep_with_next = true;
  if (pictured > 0) {
    story.push_back(
        drafting::of_picture(stage_pictures(context, stage, width, pictured), after_pictures));
    story.back().keep_with_next = true;
  }
  drafting::add(story, steps_table(context, stage, width));
  space(story, after_steps);
  return story;
}

// And after them its clamps, what else is to be minded, its measures.
Story stage_rest(const Context& context, std::size_t number, double width) {
  const GlueStage& stage = context.plan.glue_up.stages[number];
  Story story = clamps_table(context, stage, width);
  space(story, 2);
  for (const std::string& text : stage_notes(context, stage)) add_text(context, text, width, story);
  drafting::add(story, checks_table(context, stage, width));
  return story;
}

// The step that glues a strip to a panel: ", step B-L.3"; nothing where it is cut for itself.
std::string edging_step(const Context& context, int strip, int panel) {
  const auto row = [&](int part) { return context.plan.row_of_part[index(part)]; };
  for (const fabrication::Step& step : context.plan.steps)
    if (step.row == row(panel) && step.glued == row(strip)) return ", step " + step.id;
  return {};
}

// Edging that is on its panel before the panel's ends are cut: "E edge band on B-L left, step
// B-L.3".
std::vector<std::string> edged_before_cuts(const Context& context) {
  std::vector<std::pair<std::string, int>> lines;
  for (const parts::Joint& joint : context.plan.assembly.joints) {
    if (joint.made != parts::Made::before_cuts) continue;
    std::string line = parts_words(context, {joint.between.front()}) + " on " +
                       parts_words(context, {joint.between.begin() + 1, joint.between.end()});
    line += edging_step(context, joint.between.front(), joint.between.back());
    auto known = std::ranges::find(lines, line, &std::pair<std::string, int>::first);
    if (known == lines.end()) known = lines.insert(lines.end(), {line, 0});
    ++known->second;
  }
  std::vector<std::string> all;
  all.reserve(lines.size());
  for (const auto& [line, times] : lines)
    all.push_back(line + (times > 1 ? ", " + std::to_string(times) + " times" : ""));
  return all;
}

void add_edging(const Context& context, double width, Story& story) {
  const std::vector<std::string> lines = edged_before_cuts(context);
  if (lines.empty()) return;
  story.push_back(drafting::heading(context.kit, "Edging, before the ends are cut", width));
  add_text(
      context,
      "Taped or clamped on while the panel is still long, dry and trimmed to both faces before "
      "its ends are cut through both. In the stages below the two are one, and this time is "
      "not in the timeline.",
      width, story);
  story.back().keep_with_next = true;
  drafting::add(story, tick_list(context, lines, width));
  space(story, 5);
}

void add_cautions(const Context& context, double width, Story& story) {
  story.push_back(drafting::heading(context.kit, "Cautions for gluing", width));
  for (const std::string& caution : glue_cautions(context))
    add_text(context, caution, width, story);
  space(story, 7);
}

Story opening(const Context& context, double width) {
  const drafting::Kit& kit = context.kit;
  Story story;
  if (context.plan.glue_up.stages.empty()) {
    add_edging(context, width, story);
    add_cautions(context, width, story);
    return story;
  }
  story.push_back(drafting::heading(kit, "Order and time", width));
  add_text(context, glue_words(context), width, story);
  // As many stages at a time as a page of any paper takes.
  constexpr std::size_t together = 24;
  const std::size_t stages = context.plan.glue_up.stages.size();
  for (std::size_t s = 0; s < stages; s += together)
    story.push_back(
        drafting::of_picture(timeline(context, width, s, std::min(s + together, stages)), 5));
  add_edging(context, width, story);
  story.push_back(drafting::heading(kit, "Dry fit, before any glue", width));
  drafting::add(story, tick_list(context, dry_fit_lines(context), width));
  space(story, 5);
  add_cautions(context, width, story);
  return story;
}

// Not to be split: it was reckoned to fit.
void keep_together(Story& story, double room) {
  if (drafting::height(story) > room) return;
  for (std::size_t i = 0; i + 1 < story.size(); ++i) story[i].keep_with_next = true;
}

// Stages that share a column, or one that takes two: its steps in one, its clamps in the next.
struct Share {
  std::size_t first = 0, next = 0;
  double left = 0;  // mm: what pictures may be higher than the least, each
  bool longer = false;
};

std::vector<Share> shares_of(const Context& context, double width, double room) {
  const std::size_t count = context.plan.glue_up.stages.size();
  std::vector<Share> shares;
  for (std::size_t first = 0, next = 0; first < count; first = next) {
    double used = -after_stage;
    for (; next < count; ++next) {
      const double high = drafting::height(stage_front(context, next, width, 0)) + after_pictures +
                          after_steps + least_pictured +
                          drafting::height(stage_rest(context, next, width)) + after_stage;
      if (next > first && used + high > room) break;
      used += high;
    }
    shares.push_back({first, next, (room - used) / static_cast<double>(next - first), used > room});
  }
  return shares;
}

Story share_story(const Context& context, const Share& share, double width, double room) {
  Story all;
  for (std::size_t s = share.first; s < share.next; ++s) {
    const double left = share.longer ? room - drafting::height(stage_front(context, s, width, 0)) -
                                           after_pictures - least_pictured
                                     : share.left;
    Story one =
        stage_front(context, s, width, std::max(least_pictured + left - 0.1, least_pictured));
    one.front().own_column = s == share.first;
    Story rest = stage_rest(context, s, width);
    if (share.longer && !rest.empty()) {
      keep_together(one, room);
      rest.insert(rest.begin(),
                  drafting::body_text(context.kit, "Stage " + std::to_string(s + 1) + ", going on",
                                      width, ink::Face::bold));
      rest.front().own_column = rest.front().keep_with_next = true;
      keep_together(rest, room);
    }
    drafting::add(one, std::move(rest));
    if (!share.longer) keep_together(one, room);
    space(one, after_stage);
    drafting::add(all, std::move(one));
  }
  return all;
}

// Each stage in one column, for it is worked from; several where all of them have room, and one
// that has none in two of one page, where pages have two. Pictures take what the tables leave.
Story stages_story(const Context& context, double width, double room, std::size_t columns) {
  std::vector<Share> shares = shares_of(context, width, room);
  Story all;
  bool right = context.wide() && columns % 2 == 1;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    Share& share = shares[i];
    const bool two = context.wide() && share.longer;
    if (two && right) {
      // A column is left empty; or the stage before had it, for larger pictures.
      all.emplace_back();
      all.back().own_column = true;
      right = false;
    }
    const bool alone = share.next == share.first + 1;
    const bool free_beside = i + 1 == shares.size() || shares[i + 1].longer;
    if (context.wide() && !right && alone && !share.longer && free_beside)
      share.longer = !stage_rest(context, share.first, width).empty();
    drafting::add(all, share_story(context, share, width, room));
    if (context.wide() && !share.longer) right = !right;
  }
  return all;
}

}  // namespace

std::vector<ink::Page> make_glue_up(const Context& given) {
  if (given.plan.glue_up.stages.empty() && edged_before_cuts(given).empty()) return {};
  const Context context = for_reading(given);
  const double width = story_width(context);
  Story story = opening(context, width);
  const double room = story_height(context);
  keep_together(story, room);
  const auto columns = static_cast<std::size_t>(std::ceil(drafting::height(story) / room));
  drafting::add(story, stages_story(context, width, room, columns));
  return story_pages(context, "Glue-up", story);
}

}  // namespace splay::sheets
