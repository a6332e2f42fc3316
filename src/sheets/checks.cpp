#include "drafting/table.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

using drafting::Cell;

drafting::Story findings_of(const Context& context, double width) {
  const drafting::Kit& kit = context.kit;
  drafting::Story story{drafting::heading(kit, "Cautions and notes", width)};
  if (context.plan.findings.empty()) {
    story.push_back(drafting::body_text(
        kit, "None: no part overlaps another, every joint closes, every cut is within the saw.",
        width));
    return story;
  }
  drafting::Table table;
  table.columns = {{.head = "", .share = 0, .wrap = false},
                   {.head = "About", .share = 0},
                   {.head = "What is so", .share = 2},
                   {.head = "What to do", .share = 2}};
  for (const Finding& finding : context.plan.findings) {
    std::string about;
    for (const std::string& name : finding.about) about += (about.empty() ? "" : ", ") + name;
    table.rows.push_back(
        {{Cell::bold(std::string(word(finding.level))), about, finding.text, finding.remedy},
         {},
         false});
  }
  drafting::add(story, drafting::table(kit, table, width));
  return story;
}

drafting::Story loops_of(const Context& context, double width) {
  const drafting::Kit& kit = context.kit;
  drafting::Table table;
  table.columns = {{.head = "Face", .share = 2},
                   {.head = "Sides in order"},
                   {.head = "Diagonal 1", .align = ink::Align::right, .wrap = false},
                   {.head = "Diagonal 2", .align = ink::Align::right, .wrap = false},
                   {.head = "Check length", .align = ink::Align::right, .wrap = false}};
  for (const fabrication::LoopReport& loop : context.plan.loops) {
    std::string sides;
    for (const double side : loop.sides)
      sides += (sides.empty() ? "" : " · ") + kit.figures.text(side);
    const auto figure = [&](double mm) { return mm > 0 ? kit.figures.text(mm) : std::string("–"); };
    table.rows.push_back(
        {{loop.name, sides, figure(loop.diagonal_1), figure(loop.diagonal_2), figure(loop.check)},
         {},
         false});
  }
  if (table.rows.empty()) return {};
  drafting::Story story{drafting::heading(kit, "Measure after glue-up", width)};
  story.push_back(drafting::body_text(
      kit,
      "The two diagonals of a leaning face are not equal. Measure both: each must agree with its "
      "figure within " +
          kit.figures.with_unit(2 * kit.figures.step_mm()) +
          ". The check length stands square to the first side and fixes the lean.",
      width));
  drafting::add(story, drafting::table(kit, table, width));
  return story;
}

}  // namespace

std::vector<ink::Page> make_checks(const Context& context) {
  const double width = story_width(context);
  drafting::Story story = loops_of(context, width);
  drafting::add(story, findings_of(context, width));
  return story_pages(context, "Checks and cautions", story);
}

}  // namespace splay::sheets
