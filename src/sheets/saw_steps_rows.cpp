#include "sheets/saw_steps_rows.h"

#include <algorithm>
#include <functional>

#include "drafting/table.h"
#include "sheets/part_view_facts.h"
#include "sheets/saw_steps_draw.h"
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

namespace {

using drafting::Kit;
using drafting::Picture;
using fabrication::Step;
using fabrication::Turned;

std::string turn_word(const StepWork& work) {
  switch (work.step->turned) {
    case Turned::as_before:
      return "not";
    case Turned::end_for_end:
      return "end for end";
    case Turned::face_for_face:
      return "rolled over";
    case Turned::over_ends:
      return "over its ends";
    case Turned::another_side:
      return "another side";
    default:
      return "first step";
  }
}

// A column of what the steps of a card may differ in.
struct Differing {
  std::string head;
  std::function<std::string(const StepWork&)> says;
};

std::vector<Differing> columns_of(const Context& context, const Step& like, bool heights) {
  const auto side = [&context](const StepWork& work, parts::Side which) {
    return side_name_of(context, *work.step, which);
  };
  std::vector<Differing> columns;
  if (like.tool == fabrication::Tool::edging) {
    columns.push_back({"Edging", [&context](const StepWork& work) {
                         return context.plan.rows[static_cast<std::size_t>(work.step->glued)].mark;
                       }});
    columns.push_back(
        {"On", [side](const StepWork& work) { return side(work, work.step->against); }});
    return columns;
  }
  const bool led = stance_of(like).led;
  if (like.at_fence() || like.at_gauge())
    columns.push_back({like.at_fence() ? "Fence" : "Stop", [&context](const StepWork& work) {
                         return context.kit.figures.text(work.step->printed.distance);
                       }});
  if (heights)
    columns.push_back({led ? "Depth" : "Height", [&context](const StepWork& work) {
                         return context.kit.figures.text(work.step->printed.height);
                       }});
  columns.push_back(
      {led ? "Up" : "Down", [side](const StepWork& work) { return side(work, work.step->face); }});
  if (like.at_fence() || like.at_gauge())
    columns.push_back({like.at_fence() || like.machine == fabrication::Machine::mitre_saw
                           ? "At fence"
                           : "At gauge",
                       [side](const StepWork& work) { return side(work, work.step->against); }});
  if (like.at_gauge())
    columns.push_back(
        {"At stop", [side](const StepWork& work) { return side(work, work.step->stopped); }});
  else if (!led)
    columns.push_back(
        {"Leads", [side](const StepWork& work) { return side(work, work.step->leads); }});
  if (told_by_marks(like))
    columns.push_back(
        {"Marked", [&context](const StepWork& work) { return mark_words(context, work); }});
  columns.push_back({"Turned", turn_word});
  return columns;
}

// What is cut, where its face mark is if not as in the first, what to mind.
std::string cut_words(const Context& context, const StepWork& work, const StepWork& first) {
  std::string words = capitalised(work.step->name);
  const auto more = [&words](std::string text) {
    if (!text.empty()) words += (words.ends_with(".") ? " " : ". ") + std::move(text);
  };
  if (std::string mark = mark_side_words(context, *work.step);
      mark != mark_side_words(context, *first.step) && !mark.empty())
    more(mark.substr(1));
  std::string mind;
  for (const fabrication::Flag flag : work.step->flags)
    if (const std::string caution = short_caution(*work.step, flag); !caution.empty())
      mind += (mind.empty() ? "Mind: " : "; ") + caution;
  more(mind);
  more(proof_words(context, *work.step));
  return words;
}

bool next_alike(const Context& context, const StepWork& a, const StepWork& b) {
  if (b.step != a.step + 1 || a.step->row != b.step->row) return false;
  const std::vector<Differing> columns = columns_of(context, *a.step, sawn(*a.step));
  return cut_words(context, a, a) == cut_words(context, b, a) &&
         std::ranges::all_of(columns, [&](const Differing& column) {
           return column.says == nullptr || column.head == "Turned" ||
                  column.says(a) == column.says(b);
         });
}

Picture step_cell(const Context& context, const JoinedSteps& run) {
  const Kit& kit = context.kit;
  const double side = 3.4, letter = kit.look.lettering;
  const std::size_t pieces =
      context.plan.rows[static_cast<std::size_t>(run.front()->step->row)].quantity();
  Picture cell = tick_boxes(kit, pieces, side);
  const std::string ids = ids_of(run);
  cell.items.emplace_back(ink::Text{
      {cell.width + 1, -side / 2 - letter / 2}, ids, letter, 0, ink::Align::left, ink::Face::bold});
  cell.width += 1 + kit.width(ids, letter, ink::Face::bold);
  return cell;
}

drafting::TableRow row_of(const Context& context, const JoinedSteps& run, const StepWork& first,
                          const std::vector<Differing>& columns) {
  const StepWork& work = *run.front();
  drafting::TableRow row;
  row.cells.push_back(drafting::Cell::drawn(step_cell(context, run)));
  row.cells.back().link =
      part_anchor(context.plan.rows[static_cast<std::size_t>(work.step->row)].mark);
  row.cells.emplace_back(cut_words(context, work, first));
  for (const Differing& column : columns) row.cells.emplace_back(column.says(work));
  return row;
}

}  // namespace

Picture tick_boxes(const Kit& kit, std::size_t pieces, double side) {
  constexpr std::size_t most = 4;
  Picture boxes{{}, 0, side};
  for (std::size_t i = 0; i < std::min(pieces, most); ++i, boxes.width += side + 1)
    boxes.items.emplace_back(ink::Stroke{
        ink::Path{}.rect({{boxes.width, -side}, {boxes.width + side, 0}}), {kit.look.middle}});
  if (pieces <= most) return boxes;
  const double letter = kit.look.lettering;
  const std::string all = "of " + std::to_string(pieces);
  boxes.items.emplace_back(ink::Text{{boxes.width, -side / 2 - letter / 2}, all, letter});
  boxes.width += kit.width(all, letter) + 1;
  return boxes;
}

std::vector<JoinedSteps> runs_of(const Context& context, const JoinedSteps& steps) {
  std::vector<JoinedSteps> runs;
  for (const StepWork* work : steps)
    if (!runs.empty() && next_alike(context, *runs.back().back(), *work))
      runs.back().push_back(work);
    else
      runs.push_back({work});
  return runs;
}

std::string ids_of(const JoinedSteps& run) {
  const std::string &first = run.front()->step->id, &last = run.back()->step->id;
  return run.size() == 1 ? first : first + " to " + last.substr(last.rfind('.') + 1);
}

drafting::Story run_rows(const Context& context, const std::vector<JoinedSteps>& runs, double width,
                         const Picture& head) {
  if (runs.size() < 2) return {};
  const StepWork& first = *runs.front().front();
  const bool heights = std::ranges::any_of(runs, [&](const JoinedSteps& run) {
    return run.front()->step->printed.height != first.step->printed.height;
  });
  const std::vector<Differing> columns = columns_of(context, *first.step, heights);
  drafting::Table table;
  table.columns = {{.head = "Step", .share = 0}, {.head = "Likewise"}};
  for (const Differing& column : columns)
    table.columns.push_back({.head = column.head,
                             .share = column.head == "Marked" ? 1.0 : 0.0,
                             .wrap = column.head == "Marked"});
  for (std::size_t i = 1; i < runs.size(); ++i)
    table.rows.push_back(row_of(context, runs[i], first, columns));
  drafting::Story story = drafting::table(context.kit, table, width);
  Picture both = head;
  drafting::append(both.items, drafting::moved(story.front().picture.items, {0, -both.height}));
  both.height += story.front().picture.height;
  const auto again = std::make_shared<const Picture>(std::move(both));
  for (drafting::Block& block : story) block.head = again;
  story[1].keep_with_next = false;  // what comes after it has a head of its own on a later page
  return story;
}

}  // namespace splay::sheets
