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

Story overall_table(const Context& context, double width) {
  const Vec3 size = parts::bounds(context.plan.assembly).size();
  const FigureStyle& style = context.kit.figures;
  drafting::Table table;
  table.columns = {
      words("Over everything"),    figures("Width"), measured_column("measured"), figures("Height"),
      measured_column("measured"), figures("Depth"), measured_column("measured")};
  table.rows.push_back({{Cell::bold("the whole piece"), style.text(size.x), "", style.text(size.z),
                         "", style.text(size.y), ""},
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
  for (const fabrication::PartRow* row : rows_in_order(context.plan))
    table.rows.push_back({{Cell::bold(row->mark), row->name, style.text(row->finished.x), "",
                           style.text(row->finished.y), "", style.text(row->finished.z), ""},
                          {},
                          false});
  return drafting::table(context.kit, table, width);
}

Story work_table(const Context& context, double width) {
  drafting::Table table;
  table.least_height = written_line;
  table.columns = {{.head = "The work", .share = 0, .wrap = false}, {.head = ""}};
  for (const char* line :
       {"Begun, finished, hours; measured by", "Room while it was made: warmth, dampness",
        "Wood, glue, finish: whence, batch", "Photographs: file names",
        "Changed at the bench, and why", "To do otherwise next time"})
    table.rows.push_back({{line, ""}, {}, false});
  return drafting::table(context.kit, table, width);
}

}  // namespace

std::vector<ink::Page> make_record(const Context& given) {
  const Context context = for_reading(given);
  const double width = story_width(context);
  Story story{drafting::body_text(
      context.kit,
      "To be filled in on the finished piece, dry and at rest. What stands here is copied "
      "into the project's record and archive, beside the designed figures; nothing is cut by it, "
      "and "
      "it voids no signature.",
      width)};
  story.back().space_after = 6;
  add_chapter(context, story, "The piece and the work", overall_table(context, width), width);
  drafting::add(story, work_table(context, width));
  add_chapter(context, story, "Parts", parts_table(context, width), width);
  return story_pages(context, "As-built record", story);
}

}  // namespace splay::sheets
