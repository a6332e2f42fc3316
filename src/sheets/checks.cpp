#include <algorithm>
#include <cmath>

#include "drafting/table.h"
#include "sheets/kinds.h"
#include "sheets/loop_picture.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;

Story findings_of(const Context& context, double width) {
  const drafting::Kit& kit = context.kit;
  Story story{drafting::heading(kit, "Cautions and notes", width)};
  if (context.plan.findings.empty()) {
    story.push_back(drafting::body_text(
        kit, "None: no part overlaps another and every joint closes as drawn.", width));
    story.back().space_after = 6;
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

// What to measure and what it must be, with room to write what it is.
Story loop_table(const Context& context, const parts::CheckLoop& loop, double check, double width) {
  const drafting::Kit& kit = context.kit;
  drafting::Table table;
  table.columns = {{.head = "Measure", .share = 0, .wrap = false},
                   {.head = "Must be", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "Measured", .share = 1, .least = 22}};
  for (const LoopMeasure& m : measures_of(loop)) {
    const std::string ends = std::to_string(m.from) + " to " + std::to_string(m.to);
    table.rows.push_back(
        {{(m.diagonal ? "Diagonal " : "Side ") + ends, kit.figures.text(m.mm), ""}, {}, false});
  }
  if (check > 0)
    table.rows.push_back({{"Height over side 1 to 2", kit.figures.text(check), ""}, {}, false});
  // What a difference of the diagonals means, where there should be none.
  const std::vector<Vec3>& c = loop.corners;
  if (c.size() == 4 && std::abs(norm(c[2] - c[0]) - norm(c[3] - c[1])) < 1e-6) {
    const double d = norm(c[2] - c[0]), apart = 2 * kit.figures.step_mm();
    const double error =
        fabrication::out_of_square(d, d + apart, norm(c[1] - c[0]), norm(c[2] - c[1]));
    table.rows.push_back({{"Diagonals " + kit.figures.text(apart) + " apart: corners out by",
                           degrees_text(Angle{error}.degrees()), ""},
                          {},
                          false});
  }
  return drafting::table(kit, table, width);
}

drafting::Block loop_block(const Context& context, std::size_t i, double width) {
  const parts::CheckLoop& loop = context.plan.assembly.loops[i];
  const double check = i < context.plan.loops.size() ? context.plan.loops[i].check : 0;
  constexpr double gap = 6, highest = 62;
  const double picture_width = (width - gap) * 0.45, table_width = width - gap - picture_width;
  drafting::Picture table =
      drafting::as_picture(loop_table(context, loop, check, table_width), table_width);
  drafting::Picture drawing =
      loop_picture(context.kit, loop, picture_width, std::min(table.height, highest));
  drafting::Picture both = drafting::side_by_side(std::move(drawing), table, gap);
  std::string name = loop.name;
  drafting::Story story{drafting::body_text(context.kit, name, width, ink::Face::bold),
                        drafting::of_picture(std::move(both), 0)};
  return drafting::of_picture(drafting::as_picture(story, width), 6);
}

Story loops_of(const Context& context, double width) {
  const drafting::Kit& kit = context.kit;
  Story story;
  for (std::size_t i = 0; i < context.plan.assembly.loops.size(); ++i)
    if (context.plan.assembly.loops[i].corners.size() >= 3)
      story.push_back(loop_block(context, i, width));
  if (story.empty()) return story;
  drafting::Block text = drafting::body_text(
      kit,
      "Measure between outer arrises while the clamps are on. Each length must agree with its own "
      "figure within " +
          kit.figures.with_unit(2 * kit.figures.step_mm()) +
          "; diagonals are compared with their figures, not with each other, for on a leaning face "
          "they may differ.",
      width);
  text.keep_with_next = true;
  Story whole{drafting::heading(kit, "Measure after glue-up", width), std::move(text)};
  drafting::add(whole, std::move(story));
  return whole;
}

}  // namespace

std::vector<ink::Page> make_checks(const Context& given) {
  const Context context = for_reading(given);
  const double width = story_width(context);
  Story story = findings_of(context, width);
  drafting::add(story, loops_of(context, width));
  return story_pages(context, "Checks and cautions", story);
}

}  // namespace splay::sheets
