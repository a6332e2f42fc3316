#include "drafting/conventions.h"
#include "drafting/text_block.h"
#include "sheets/part_view_panel.h"

namespace splay::sheets {

namespace {

struct Field {
  std::string name, value, link;
};

constexpr double band = 8;  // name and quantity
constexpr double field_height = 10;
constexpr double pad = 1.5;

std::vector<Field> fields_of(const PartSheet& sheet) {
  const drafting::Kit& kit = sheet.kit();
  const fabrication::PartRow& row = sheet.row;
  const double step = kit.figures.step_mm();
  const bool pointed = row.long_point - row.short_point > step / 2;
  std::vector<Field> fields{
      {"Stock", stock_words(sheet.context, row.stock), {}},
      {"Finished L × W × T", size_words(kit, row.finished), {}},
      {"Blank", size_words(kit, row.blank), {}}};
  fields.push_back(
      {"Long point / short point",
       pointed ? kit.figures.text(row.long_point) + " / " + kit.figures.text(row.short_point)
               : kit.figures.text(row.long_point) + " square",
       {}});
  fields.push_back({"Show face / grain", show_words(sheet) + " / " + grain_words(sheet.part), {}});
  if (row.pair >= 0) {
    const std::string& other = sheet.context.plan.rows[static_cast<std::size_t>(row.pair)].mark;
    fields.push_back({"Hand", hand_words(row) + ", pair of " + other, part_anchor(other)});
  } else {
    fields.push_back({"Hand", "none", {}});
  }
  return fields;
}

void draw_field(const drafting::Kit& kit, const Field& field, ink::Rect box,
                std::vector<ink::Item>& items) {
  items.emplace_back(ink::Stroke{ink::Path{}.rect(box), kit.thin()});
  const double base = box.high.y - 1 - kit.look.lettering;
  items.emplace_back(ink::Text{{box.low.x + pad, base},
                               drafting::shortened(kit, field.name, box.width() - 2 * pad,
                                                   kit.look.lettering, ink::Face::italic),
                               kit.look.lettering,
                               0,
                               ink::Align::left,
                               ink::Face::italic,
                               0.35});
  const ink::Rect inside{{box.low.x + pad, box.low.y + 0.3}, {box.high.x - pad, base - 0.6}};
  items.emplace_back(drafting::fitted(kit, field.value, inside, {.height = kit.look.figures}));
  if (!field.link.empty()) items.emplace_back(ink::Link{box, field.link});
}

// The mark in a box of its own, with the sign of the hand.
double draw_mark(const PartSheet& sheet, double height, std::vector<ink::Item>& items) {
  const drafting::Kit& kit = sheet.kit();
  constexpr double letter = 10;
  const bool handed = sheet.row.hand != fabrication::Hand::none;
  const double text = kit.width(sheet.row.mark, letter, ink::Face::bold);
  const double sign = handed ? 16 : 0;
  const double width = std::max(20.0, text + 8) + sign;
  items.emplace_back(ink::Stroke{ink::Path{}.rect({{0, -height}, {width, 0}}), kit.visible()});
  items.emplace_back(ink::Text{{(width - sign) / 2, -height / 2 - letter / 2},
                               sheet.row.mark,
                               letter,
                               0,
                               ink::Align::centre,
                               ink::Face::bold});
  if (handed)
    drafting::append(items, drafting::hand_mark(kit, {width - sign / 2 - 1, -height / 2}, 7,
                                                sheet.row.hand == fabrication::Hand::left)
                                .items);
  return width;
}

}  // namespace

drafting::Picture panel_head(const PartSheet& sheet, double width, drafting::Scale scale) {
  const drafting::Kit& kit = sheet.kit();
  const std::vector<Field> fields = fields_of(sheet);
  const std::size_t columns = width > 260 ? fields.size() : 3;
  const std::size_t rows = (fields.size() + columns - 1) / columns;
  const double height = band + field_height * static_cast<double>(rows);
  ink::Group group{"table", {}};
  group.items.emplace_back(ink::Anchor{part_anchor(sheet.row.mark), {0, 0}});
  group.items.emplace_back(ink::PartClaim{sheet.row.mark, "view"});
  const double left = draw_mark(sheet, height, group.items);

  const std::string quantity = std::to_string(sheet.row.quantity()) + " off, views " +
                               drafting::text(scale, *sheet.context.job().units);
  const double room = kit.width(quantity, kit.look.figures) + 2 * pad;
  const ink::Rect title{{left + pad, -band}, {width - room - pad, 0}};
  group.items.emplace_back(drafting::fitted(kit, sheet.row.name, title,
                                            {.height = kit.look.heading, .face = ink::Face::bold}));
  group.items.emplace_back(ink::Text{{width - pad, -band / 2 - kit.look.figures / 2},
                                     quantity,
                                     kit.look.figures,
                                     0,
                                     ink::Align::right});
  const double each = (width - left) / static_cast<double>(columns);
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const double x = left + each * static_cast<double>(i % columns);
    const double y = -band - field_height * static_cast<double>(i / columns);
    draw_field(kit, fields[i], {{x, y - field_height}, {x + each, y}}, group.items);
  }
  group.items.emplace_back(
      ink::Stroke{ink::Path{}.rect({{0, -height}, {width, 0}}), kit.visible()});
  return {{std::move(group)}, width, height};
}

}  // namespace splay::sheets
