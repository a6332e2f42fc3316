// A record to fill in when the piece is done: what was measured beside what was designed. What is
// written here goes into the file as [as_built], and from there into the archive.
#include "drafting/table.h"
#include "sheets/kinds.h"
#include "sheets/part_view_facts.h"
#include "sheets/table_columns.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;

constexpr double room = 17;  // mm to write a figure into

drafting::Column measured_column(const char* head, double share = 0) {
  return {.head = head, .share = share, .least = room};
}

// What was measured, if anything was; else room to write it into.
std::string measured(const Context& context, const model::Given<Length>& length) {
  return length.given ? context.kit.figures.text(length->mm) : std::string();
}

const model::AsBuilt& record_of(const Context& context) {
  static const model::AsBuilt blank;
  return context.as_built != nullptr ? *context.as_built : blank;
}

Story overall_table(const Context& context, double width) {
  const Vec3 size = parts::bounds(context.plan.assembly).size();
  const FigureStyle& style = context.kit.figures;
  const model::AsBuilt& built = record_of(context);
  drafting::Table table;
  table.columns = {
      words("Over everything"),    figures("Width"), measured_column("measured"), figures("Height"),
      measured_column("measured"), figures("Depth"), measured_column("measured")};
  table.rows.push_back(
      {{Cell::bold("the whole piece"), style.text(size.x), measured(context, built.width),
        style.text(size.z), measured(context, built.height), style.text(size.y),
        measured(context, built.depth)},
       {},
       false});
  return drafting::table(context.kit, table, width);
}

Story parts_table(const Context& context, double width) {
  const FigureStyle& style = context.kit.figures;
  drafting::Table table;
  table.columns = {{.head = "Mark", .share = 0, .wrap = false},
                   words("Part"),
                   figures("Length"),
                   measured_column("measured"),
                   figures("Width"),
                   measured_column("measured"),
                   figures("Thick"),
                   measured_column("measured")};
  const model::BuiltPart unmeasured;
  for (const fabrication::PartRow* row : rows_in_order(context.plan)) {
    const model::BuiltPart* found = record_of(context).parts.find(row->mark);
    const model::BuiltPart& built = found != nullptr ? *found : unmeasured;
    table.rows.push_back({{Cell::bold(row->mark), row->name, style.text(row->finished.x),
                           measured(context, built.length), style.text(row->finished.y),
                           measured(context, built.width), style.text(row->finished.z),
                           measured(context, built.thickness)},
                          {},
                          false});
  }
  return drafting::table(context.kit, table, width);
}

Story work_table(const Context& context, double width) {
  drafting::Table table;
  table.least_height = written_line;
  table.columns = {{.head = "The work", .share = 0, .wrap = false}, {.head = ""}};
  const model::AsBuilt& built = record_of(context);
  std::string finished;
  if (built.date.given) finished = model::iso_date(*built.date);
  if (built.hours.given)
    finished += (finished.empty() ? "" : ", ") + plain_number(*built.hours, 1) + " hours";
  const std::pair<const char*, std::string> lines[] = {
      {"Begun, finished, hours; measured by", finished},
      {"Room while it was made: warmth, dampness", ""},
      {"Wood, glue, finish: whence, batch", ""},
      {"Photographs: file names", joined(*built.photos)},
      {"Changed at the bench, and why", ""},
      {"To do otherwise next time", joined(*built.notes, " ")}};
  for (const auto& [line, written] : lines) table.rows.push_back({{line, written}, {}, false});
  return drafting::table(context.kit, table, width);
}

}  // namespace

std::vector<ink::Page> make_record(const Context& given) {
  const Context context = for_reading(given);
  const double width = story_width(context);
  Story story{drafting::body_text(
      context.kit,
      std::string(record_of(context).given
                      ? "As the project's record has it; what is empty is still to be filled in"
                      : "To be filled in") +
          " on the finished piece, dry and at rest. What stands here is copied into the project's "
          "record and archive, beside the designed figures; nothing is cut by it, and it voids no "
          "signature.",
      width)};
  story.back().space_after = 6;
  add_chapter(context, story, "The piece and the work", overall_table(context, width), width);
  drafting::add(story, work_table(context, width));
  add_chapter(context, story, "Parts", parts_table(context, width), width);
  return story_pages(context, "As-built record", story);
}

}  // namespace splay::sheets
