#include <algorithm>

#include "drafting/conventions.h"
#include "drafting/text_block.h"
#include "sheets/part_view_panel.h"

namespace splay::sheets {

namespace {

struct Field {
  std::string name, value;
};

constexpr double head_pad = 1.5;

// Name and quantity: 9 mm for a heading of 5 mm over lettering of 2.5 mm, and as much more as
// larger letters want.
double band_height(const drafting::Kit& kit) {
  constexpr double line = 1.4;
  const drafting::Look& look = kit.look;
  return 9 + std::max({0.0, line * (look.heading - 5), 2 * line * (look.lettering - 2.5)});
}

std::vector<Field> fields_of(const PartSheet& sheet) {
  const drafting::Kit& kit = sheet.kit();
  const fabrication::PartRow& row = sheet.row;
  const double step = kit.figures.step_mm();
  const bool pointed = row.long_point - row.short_point > step / 2;
  const std::string points =
      pointed ? kit.figures.text(row.long_point) + " / " + kit.figures.text(row.short_point)
              : kit.figures.text(row.long_point);
  return {{"Stock", stock_words(sheet.context, row.stock)},
          {"Finished L × W × T", size_words(kit, row.finished)},
          {"Blank L × W", kit.figures.text(row.blank.x) + " × " + kit.figures.text(row.blank.y)},
          {"Long / short", points}};
}

void draw_field(const drafting::Kit& kit, const Field& field, ink::Rect box,
                std::vector<ink::Item>& items) {
  items.emplace_back(ink::Stroke{ink::Path{}.rect(box), kit.thin()});
  const double base = box.high.y - 1.2 - kit.look.lettering;
  items.emplace_back(ink::Text{{box.low.x + head_pad, base},
                               drafting::shortened(kit, field.name, box.width() - 2 * head_pad,
                                                   kit.look.lettering, ink::Face::italic),
                               kit.look.lettering,
                               0,
                               ink::Align::left,
                               ink::Face::italic,
                               0.35});
  const ink::Rect inside{{box.low.x + head_pad, box.low.y + 0.3},
                         {box.high.x - head_pad, base - 0.6}};
  items.emplace_back(drafting::fitted(kit, field.value, inside, {.height = kit.look.figures}));
}

// What each column needs, stretched to the whole, or its value written as small as the name.
std::vector<double> column_widths(const drafting::Kit& kit, const std::vector<Field>& fields,
                                  double whole) {
  std::vector<double> least, wanted;
  double least_sum = 0, sum = 0;
  for (const Field& field : fields) {
    constexpr double air = 0.1;
    least.push_back(2 * head_pad + air +
                    std::max(kit.width(field.value, kit.look.lettering),
                             kit.width(field.name, kit.look.lettering, ink::Face::italic)));
    wanted.push_back(
        std::max(least.back(), 2 * head_pad + kit.width(field.value, kit.look.figures)));
    least_sum += least.back();
    sum += wanted.back();
  }
  const bool tight = sum > whole && sum > least_sum;
  for (std::size_t i = 0; i < fields.size(); ++i)
    wanted[i] = tight ? least[i] + (wanted[i] - least[i]) * (whole - least_sum) / (sum - least_sum)
                      : wanted[i] * whole / sum;
  return wanted;
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

// Name, show face over hand, and quantity, from the left edge to the right one.
void draw_band(const PartSheet& sheet, double left, double right, drafting::Scale scale,
               std::vector<ink::Item>& items) {
  const drafting::Kit& kit = sheet.kit();
  constexpr double gap = 4;
  const double letter = kit.look.lettering, band = band_height(kit), middle = -band / 2;
  const auto write = [&](const std::string& words, double height, double base) {
    items.emplace_back(ink::Text{{right, base}, words, height, 0, ink::Align::right});
    return kit.width(words, height);
  };
  right -= gap + write(std::to_string(sheet.row.quantity()) + " off, views " +
                           drafting::short_text(scale),
                       kit.look.figures, middle - kit.look.figures / 2);
  const std::string show = "show face: " + show_words(sheet);
  if (sheet.row.pair < 0) {
    right -= gap + write(show, letter, middle - letter / 2);
  } else {
    const std::string& other =
        sheet.context.plan.rows[static_cast<std::size_t>(sheet.row.pair)].mark;
    const double upper = write(show, letter, middle + 0.25 * letter);
    const double lower =
        write(hand_words(sheet.row) + ", pair of " + other, letter, middle - 1.25 * letter);
    items.emplace_back(
        ink::Link{{{right - lower, -band + 0.5}, {right, middle}}, part_anchor(other)});
    right -= gap + std::max(upper, lower);
  }
  items.emplace_back(drafting::fitted(kit, row_name(sheet.context, sheet.row),
                                      {{left, -band + 0.4}, {right, -0.4}},
                                      {.height = kit.look.heading, .face = ink::Face::bold}));
}

}  // namespace

double panel_head_height(const drafting::Kit& kit) {
  constexpr double line = 1.4;
  const drafting::Look& look = kit.look;
  return band_height(kit) + 11 + line * (look.lettering - 2.5) + line * (look.figures - 3.5);
}

drafting::Picture panel_head(const PartSheet& sheet, double width, drafting::Scale scale,
                             bool first) {
  const drafting::Kit& kit = sheet.kit();
  const double height = panel_head_height(kit);
  ink::Group group{"table", {}};
  if (first) {
    group.items.emplace_back(ink::Anchor{part_anchor(sheet.row.mark), {0, 0}});
    group.items.emplace_back(ink::PartClaim{sheet.row.mark, "view"});
  }
  const double left = draw_mark(sheet, height, group.items);
  draw_band(sheet, left + head_pad, width - head_pad, scale, group.items);
  const std::vector<Field> fields = fields_of(sheet);
  const std::vector<double> widths = column_widths(kit, fields, width - left);
  double x = left;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    draw_field(kit, fields[i], {{x, -height}, {x + widths[i], -band_height(kit)}}, group.items);
    x += widths[i];
  }
  group.items.emplace_back(
      ink::Stroke{ink::Path{}.rect({{0, -height}, {width, 0}}), kit.visible()});
  return {{std::move(group)}, width, height};
}

}  // namespace splay::sheets
