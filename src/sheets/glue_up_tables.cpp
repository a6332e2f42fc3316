#include "sheets/glue_up_tables.h"

#include "base/index.h"
#include "drafting/table.h"
#include "fabrication/glue_up.h"
#include "sheets/exploded_layout.h"
#include "sheets/glue_up_picture.h"
#include "sheets/glue_up_words.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Picture;
using drafting::Story;
using fabrication::ClampWay;
using fabrication::GlueStage;

constexpr double box = 3.2;  // of a square to tick

Picture tick_box(const Context& context) {
  Picture picture{{}, box, box};
  picture.items.emplace_back(ink::Group{
      "table", {ink::Stroke{ink::Path{}.rect({{0, -box}, {box, 0}}), context.kit.thin()}}});
  return picture;
}

drafting::Column ticks() { return {.head = "", .share = 0, .least = box + 1}; }

}  // namespace

Story tick_list(const Context& context, const std::vector<std::string>& lines, double width) {
  drafting::Table table;
  table.columns = {ticks(), {.head = "", .share = 1}};
  table.columns[1].head = "Done";
  for (const std::string& line : lines)
    table.rows.push_back({{Cell::drawn(tick_box(context)), line}, {}, false});
  return drafting::table(context.kit, table, width);
}

Story steps_table(const Context& context, const GlueStage& stage, double width) {
  drafting::Table table;
  table.columns = {ticks(),
                   {.head = "Step", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "Bring", .share = 1},
                   {.head = "to", .share = 1},
                   {.head = "Way", .share = 0.8},
                   {.head = "Joints", .share = 1.2}};
  for (std::size_t s = 0; s < stage.joinings.size(); ++s) {
    const fabrication::Joining& joining =
        context.plan.glue_up.order.joinings[index(stage.joinings[s])];
    table.rows.push_back(
        {{Cell::drawn(tick_box(context)), std::to_string(s + 1),
          parts_words(context, joining.moving), marks_words(context, joining.fixed),
          way_words(joining.way), joints_words(context, joining.joints)},
         {},
         false});
  }
  return drafting::table(context.kit, table, width);
}

Story clamps_table(const Context& context, const GlueStage& stage, double width) {
  drafting::Table table;
  table.columns = {{.head = "Row", .share = 0, .least = 7, .wrap = false},
                   {.head = "Joints", .share = 1},
                   {.head = "Clamps", .share = 1},
                   {.head = "Reach", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "Blocks, and what slides", .share = 2}};
  for (std::size_t r = 0; r < stage.clampings.size(); ++r) {
    const fabrication::Clamping& row = stage.clampings[r];
    const bool reaches = row.how == ClampWay::clamps || row.how == ClampWay::band;
    table.rows.push_back(
        {{Cell::bold(row_letter(r)), joint_marks(context, row.joints), clamp_words(row),
          reaches ? context.kit.figures.text(row.reach) : "", caul_words(context, row)},
         {},
         false});
  }
  return table.rows.empty() ? Story{} : drafting::table(context.kit, table, width);
}

Story checks_table(const Context& context, const GlueStage& stage, double width) {
  drafting::Table table;
  table.columns = {
      ticks(),
      {.head = stage.glued ? "While the glue is wet" : "Once it is together", .share = 2},
      {.head = "Must be", .align = ink::Align::right, .share = 0, .wrap = false},
      {.head = "Within", .align = ink::Align::right, .share = 0, .wrap = false},
      {.head = "Measured", .share = 1, .least = 20}};
  for (const fabrication::WetCheck& check : stage.checks) {
    const bool angle = check.kind == fabrication::MeasureKind::angle;
    table.rows.push_back({{Cell::drawn(tick_box(context)), check.name,
                           angle ? degrees_text(Angle{check.value}.degrees())
                                 : context.kit.figures.text(check.value),
                           angle ? degrees_text(Angle{check.tolerance}.degrees())
                                 : context.kit.figures.text(check.tolerance),
                           ""},
                          {},
                          false});
  }
  return table.rows.empty() ? Story{} : drafting::table(context.kit, table, width);
}

}  // namespace splay::sheets
