// The finish schedule: what goes on which parts, how much of it, what before assembly, and a record
// to fill in.
#include "fabrication/finish.h"

#include <algorithm>

#include "drafting/table.h"
#include "fabrication/row_order.h"
#include "sheets/hold_stories.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;
using fabrication::FinishJob;

std::string marks_of(const Context& context, const std::vector<int>& parts) {
  const std::string text = joined(fabrication::marks_in_order(context.plan, parts));
  return text.empty() ? "none" : text;
}

const std::string& product(const FinishJob& job) {
  return job.finish->product.given ? *job.finish->product : job.finish->name;
}

Story schedule(const Context& context, const std::vector<FinishJob>& jobs, double width) {
  drafting::Table table;
  table.columns = {words("Finish"), words("On parts"), words("Before assembly"), figures("Coats"),
                   figures("Area"), figures("Litres"), words("Between coats")};
  for (const FinishJob& job : jobs)
    table.rows.push_back(
        {{Cell::bold(product(job)), marks_of(context, job.parts), marks_of(context, job.before),
          std::to_string(*job.finish->coats), area_words(context, job.area),
          job.litres > 0 ? plain_number(job.litres, 2) : "", *job.finish->between},
         {},
         false});
  return drafting::table(context.kit, table, width);
}

// One row for each coat.
Story record(const Context& context, const std::vector<FinishJob>& jobs, double width) {
  constexpr int most_rows = 6;  // of one finish: more coats go on the back of the page
  drafting::Table table;
  table.least_height = written_line;
  table.columns = {words("Finish"),
                   figures("No"),
                   {.head = "Batch number", .share = 1, .least = 26},
                   {.head = "On, by", .share = 1, .least = 26},
                   {.head = "Air: heat, damp", .share = 1, .least = 26}};
  for (const FinishJob& job : jobs)
    for (int coat = 1; coat <= std::min(*job.finish->coats, most_rows); ++coat)
      table.rows.push_back(
          {{Cell::bold(coat == 1 ? product(job) : ""), std::to_string(coat), "", "", ""},
           {},
           coat == 1});
  return drafting::table(context.kit, table, width);
}

}  // namespace

Story finish_story(const Context& context, double width) {
  const std::vector<FinishJob> jobs = fabrication::plan_finish(context.plan);
  if (jobs.empty()) return {};
  const drafting::Kit& kit = context.kit;
  Story story{drafting::heading(kit, "Finish schedule: what goes where", width)};
  drafting::add(story, schedule(context, jobs, width));
  story.push_back(drafting::body_text(
      kit,
      "Areas are of the finished parts without what their joints cover: keep finish off surfaces "
      "that will be glued. Litres are for all coats by the coverage given, nothing added for "
      "what is lost. Panels that lie loose in grooves are finished before, so that none shows bare "
      "wood when it shrinks. Try the whole schedule on an off-cut first.",
      width));
  story.back().space_after = 6;
  std::vector<std::string> cautions;
  for (const FinishJob& job : jobs)
    for (std::string& caution : fabrication::finish_cautions(*job.finish->kind))
      if (std::ranges::find(cautions, caution) == cautions.end())
        cautions.push_back(std::move(caution));
  story.push_back(drafting::heading(kit, "Cautions for finishing", width));
  for (const std::string& caution : cautions) {
    story.push_back(drafting::body_text(kit, caution, width));
    story.back().keep_with_next = true;
  }
  story.back().keep_with_next = false;
  story.back().space_after = 6;
  story.push_back(drafting::heading(kit, "Record of finishing", width));
  drafting::add(story, record(context, jobs, width));
  return story;
}

}  // namespace splay::sheets
