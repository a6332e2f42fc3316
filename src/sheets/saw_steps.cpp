// Saw steps: every cut in the order of the bench, grouped by setting.
#include <algorithm>
#include <memory>

#include "drafting/text_block.h"
#include "sheets/kinds.h"
#include "sheets/saw_steps_card.h"
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

namespace {

using drafting::Story;
using fabrication::Flag;

// The usual cautions of the trade.
Story cautions(const Context& context, double width) {
  const drafting::Kit& kit = context.kit;
  Story story{drafting::heading(kit, "Before the first cut", width)};
  story.push_back(drafting::body_text(
      kit,
      "Guards, riving knife and hold-downs are left out of the drawings for clearness only: keep "
      "them on the machine, and use push sticks, eye, ear and dust protection. Read the machine's "
      "manual; it and the rules of the place prevail over these pages. Practise each new set-up on "
      "scrap, unplug the machine to change a blade, and never make a cut you don't feel safe with.",
      width, ink::Face::bold));
  story.push_back(drafting::body_text(
      kit,
      "Each drawing pair shows the cut as one stands to it: left, along the line of cut; right, "
      "from above. They are not to scale and long wood is broken; the figures count. Hatched wood "
      "is waste. Tilt and gauge are angles off square; the scale's own reading stands below "
      "them, and the rise to check the cut or the blade with a square and a rule. A setting is "
      "made once and serves every step under it, in this order; cut one and try it first. Cuts "
      "that differ only in what they are set to stand in rows under the one that is drawn.",
      width));
  story.push_back(drafting::body_text(kit, proved_words(context), width));
  story.back().space_after = 4;
  return story;
}

// The steps of a setting, each part's together: "A.1, 2; B.3". Where they are many the parts alone.
std::string steps_of(const Context& context, const Bench& bench) {
  constexpr std::size_t longest = 110;  // letters, a line and a half
  std::string steps, parts;
  std::vector<int> rows;
  for (const StepWork* work : bench.steps)
    if (std::ranges::find(rows, work->step->row) == rows.end()) rows.push_back(work->step->row);
  for (const int row : rows) {
    const std::string& mark = context.plan.rows[static_cast<std::size_t>(row)].mark;
    parts += (parts.empty() ? "" : ", ") + mark;
    std::string own;
    for (const StepWork* work : bench.steps)
      if (work->step->row == row)
        own += own.empty() ? work->step->id : ", " + work->step->id.substr(mark.size() + 1);
    steps += (steps.empty() ? "" : "; ") + own;
  }
  const std::string count = std::to_string(bench.steps.size());
  const bool glued = bench.steps.front()->step->tool == fabrication::Tool::edging;
  return (glued ? count + " edges" : "Set once, " + count + " cuts") +
         (steps.size() <= longest ? ": " + steps : " of these parts: " + parts);
}

// What is to be minded at every step of a setting.
std::vector<Flag> minded_throughout(const Bench& bench) {
  std::vector<Flag> flags;
  for (const Flag flag : bench.steps.front()->step->flags)
    if (!caution_words(*bench.steps.front()->step, flag).empty() &&
        std::ranges::all_of(bench.steps,
                            [&](const StepWork* work) { return work->step->has(flag); }))
      flags.push_back(flag);
  if (bench.steps.size() > 1 && std::ranges::find(flags, Flag::try_first) == flags.end())
    flags.push_back(Flag::try_first);
  return flags;
}

std::string mind_words(const Bench& bench, const std::vector<Flag>& flags) {
  std::string words;
  for (const Flag flag : flags)
    if (flag != Flag::try_first)
      words += (words.empty() ? "Mind: " : " ") + caution_words(*bench.steps.front()->step, flag);
  return words;
}

// "Setting 3: table saw, blade tilted 37.5° left", the steps it serves and what to mind at them.
drafting::Block setting_head(const Context& context, const std::string& title,
                             const std::string& steps, const std::string& mind, double width) {
  const drafting::Kit& kit = context.kit;
  const double whole = kit.width(title, kit.look.figures, ink::Face::bold);
  const double letter = whole < width ? kit.look.figures : kit.look.lettering;
  Story story{drafting::of_picture(
      drafting::paragraph(kit, title, width, {.height = letter, .face = ink::Face::bold}), 1)};
  constexpr double apart = 4;
  const double beside = whole + apart;
  drafting::Picture& head = story.front().picture;
  if (beside + kit.width(steps, kit.look.lettering) < width)
    drafting::append(
        head.items,
        drafting::moved(
            drafting::paragraph(kit, steps, width - beside, {.height = kit.look.lettering}).items,
            {beside, kit.look.lettering - kit.look.figures}));
  else if (!steps.empty())
    story.push_back(drafting::body_text(kit, steps, width));
  if (!mind.empty()) story.push_back(drafting::body_text(kit, mind, width, ink::Face::bold));
  for (drafting::Block& block : story) block.space_after = 1;
  drafting::Picture picture = drafting::as_picture(story, width);
  picture.height += 1;
  drafting::Block block = drafting::of_picture(std::move(picture), 0);
  block.keep_with_next = true;
  return block;
}

void add_setting(const Context& context, const Bench& bench, std::size_t number, double width,
                 Story& story) {
  const std::string title =
      "Setting " + std::to_string(number) + ": " + group_words(context, *bench.steps.front());
  CardPlace place;
  place.said = minded_throughout(bench);
  const std::string mind = mind_words(bench, place.said);
  place.head = std::make_shared<const drafting::Picture>(
      setting_head(context, title + ", going on", {}, mind, width).picture);
  const std::string steps = bench.steps.size() > 1 ? steps_of(context, bench) : std::string();
  story.push_back(setting_head(context, title, steps, mind, width));
  story.back().head = place.head;
  int setting = -1;
  for (const JoinedSteps& joined : joined_steps(bench)) {
    const fabrication::Step& step = *joined.front()->step;
    place.as_before = step.same_as >= 0 && setting == step.same_as;
    const auto own = static_cast<int>(&step - context.plan.steps.data());
    setting = step.same_as >= 0 ? step.same_as : own;
    drafting::add(story, step_cards(context, joined, width, place));
  }
}

// The story on pages, each later one with a reminder at its head.
std::vector<ink::Page> pages_of(const Context& context, const Story& story) {
  const drafting::Kit& kit = context.kit;
  const double line = 2 * kit.look.lettering;
  const std::vector<ink::Rect> first = drafting::columns(context.area(), context.wide() ? 2 : 1);
  std::vector<ink::Rect> next = first;
  for (ink::Rect& column : next) column.high.y -= line;
  std::vector<ink::Page> pages;
  for (drafting::Items& items : drafting::flow(story, first, next, false)) {
    const bool later = !pages.empty();
    pages.push_back(start_page(context, "Saw steps", "not to scale"));
    if (later)
      pages.back().items.emplace_back(ink::Text{
          {context.area().low.x, context.area().high.y - kit.look.lettering},
          "Guard, riving knife and hold-downs are left out of the drawings only: keep them on.",
          kit.look.lettering,
          0,
          ink::Align::left,
          ink::Face::bold});
    drafting::append(pages.back().items, std::move(items));
  }
  return pages;
}

}  // namespace

std::vector<ink::Page> make_saw_steps(const Context& given) {
  if (given.plan.steps.empty()) return {};
  const Context context = for_reading(given);
  const double width = story_width(context);
  const std::vector<StepWork> works = step_works(context.plan);
  Story story = cautions(context, width);
  std::size_t number = 0;
  for (const Bench& bench : bench_order(works)) add_setting(context, bench, ++number, width, story);
  return pages_of(context, story);
}

}  // namespace splay::sheets
