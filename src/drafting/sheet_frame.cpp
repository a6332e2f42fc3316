#include "drafting/sheet_frame.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

#include "drafting/conventions.h"
#include "drafting/text_block.h"

namespace splay::drafting {

namespace {

// The block is 180 mm wide at the lower right (ISO 7200, from memory); on an upright sheet it is as
// wide as the frame and stands over the strip with the bar.
constexpr double block_width = 180, block_height = 24, bar_strip = 13;
constexpr double side_strip = 12;  // right of the drawing, for the upright bar
constexpr double frame_air = 3;

bool lying(const ink::Paper& paper) { return paper.width > paper.height; }

double band_height(const ink::Paper& paper) {
  return lying(paper) ? block_height : block_height + bar_strip;
}

ink::Rect block_rect(const ink::Paper& paper) {
  const ink::Rect frame = paper.area();
  const double low = frame.low.y + (lying(paper) ? 0 : bar_strip);
  const double left = lying(paper) ? frame.high.x - block_width : frame.low.x;
  return {{left, low}, {frame.high.x, low + block_height}};
}

// The strip with the bar across: left of the block, or under it.
ink::Rect bar_rect(const ink::Paper& paper) {
  const ink::Rect frame = paper.area();
  if (lying(paper)) return {frame.low, {frame.high.x - block_width, frame.low.y + block_height}};
  return {frame.low, {frame.high.x, frame.low.y + bar_strip}};
}

// One field of the title block: its name small above, its value below.
struct FieldBox {
  ink::Rect box;
  std::string_view name;
  std::string_view value;
  double height = 3.5;
  ink::Face face = ink::Face::regular;
};

constexpr double name_height = 2.5, cell_pad = 1.2;

void draw_field(const Kit& kit, const FieldBox& field, Items& items) {
  items.emplace_back(ink::Stroke{ink::Path{}.rect(field.box), kit.thin()});
  const Vec2 corner{field.box.low.x + cell_pad, field.box.high.y - cell_pad - name_height};
  items.emplace_back(ink::Text{corner, std::string(field.name), name_height, 0, ink::Align::left,
                               ink::Face::italic, 0.35});
  if (field.value.empty()) return;
  const ink::Rect inside{{field.box.low.x + cell_pad, field.box.low.y + 0.6},
                         {field.box.high.x - cell_pad, corner.y - 0.9}};
  items.emplace_back(
      fitted(kit, field.value, inside, {.height = field.height, .face = field.face}));
}

// Columns of the block, as parts of its width; two rows, the upper higher for the sheet's large
// title.
ink::Rect cell(ink::Rect block, double from, double to, int row) {
  constexpr double lower_row = 10.5;
  const double w = block.width() / block_width, between = block.low.y + lower_row;
  return {{block.low.x + from * w, row == 0 ? between : block.low.y},
          {block.low.x + to * w, row == 0 ? block.high.y : between}};
}

// The maker's own mark at the right end of the field, the name beside it, on two lines if need be.
void draw_maker(const Kit& kit, ink::Rect box, const std::string& maker, Items& items) {
  const Symbol& mark = *kit.look.symbols.shop;
  const double size = std::min((box.height() - 2 * cell_pad) / mark.height,
                               (box.width() * 0.4 - 2 * cell_pad) / mark.width);
  const double left = box.high.x - cell_pad - mark.width * size;
  append(items, placed_symbol(mark, {left + mark.width * size / 2, middle(box).y}, size).items);
  if (maker.empty()) return;
  const ink::Rect inside{{box.low.x + cell_pad, box.low.y + 0.25},
                         {left - cell_pad, box.high.y - cell_pad - name_height - 0.9}};
  items.emplace_back(fitted(kit, maker, inside, {.height = 3.5}));
}

ink::Rect page_cell(ink::Rect block) { return cell(block, 156, 180, 1); }

ink::Group title_block(const Kit& kit, const ink::Paper& paper, const TitleFields& fields) {
  const ink::Rect block = block_rect(paper);
  ink::Group group{"title block", {}};
  const auto field = [&](double from, double to, int row, std::string_view name,
                         std::string_view value, double height = 3.5,
                         ink::Face face = ink::Face::regular) {
    draw_field(kit, {cell(block, from, to, row), name, value, height, face}, group.items);
  };
  field(0, 68, 0, "Sheet", fields.sheet, 5, ink::Face::bold);
  field(68, 132, 0, "Client", fields.client);
  field(132, 156, 0, "Number", fields.number, 3.5, ink::Face::bold);
  field(156, 180, 0, "Revision", fields.revision, 3.5, ink::Face::bold);
  field(0, 68, 1, "Title", fields.job);
  const bool marked = kit.look.symbols.shop != nullptr;
  field(68, 97, 1, "Maker", marked ? std::string_view{} : std::string_view(fields.maker));
  if (marked) draw_maker(kit, cell(block, 68, 97, 1), fields.maker, group.items);
  field(97, 132, 1, "Scale", fields.scale.empty() ? "–" : fields.scale);
  field(132, 156, 1, "Date", fields.date);
  field(156, 180, 1, "Page", "");
  group.items.emplace_back(ink::Stroke{ink::Path{}.rect(block), kit.visible()});
  return group;
}

// What the drawing counts in, beside the bar.
ink::Group bar_notes(const Kit& kit, const ink::Paper& paper, const TitleFields& fields) {
  const ink::Rect strip = bar_rect(paper);
  const double from = strip.low.x + bar_length + 16;
  ink::Group group{"title block", {}};
  std::string words = fields.units;
  if (!words.empty()) words += "\n";
  words += "Check both bars with a rule";
  const double symbol = fields.projection ? 18 : 0;
  const ink::Rect box{{from, strip.low.y + 1}, {strip.high.x - symbol - 2, strip.high.y - 1}};
  group.items.emplace_back(fitted(kit, words, box, {.height = kit.look.lettering}));
  if (fields.projection)
    group.items.emplace_back(
        projection_symbol(kit, {strip.high.x - 10, middle(strip).y}, 6.5, fields.third_angle));
  return group;
}

}  // namespace

ink::Paper paper_named(std::string_view name) {
  ink::Paper paper;
  paper.name = std::string(name);
  const auto size = [&](double width, double height) {
    paper.width = width;
    paper.height = height;
  };
  if (name == "A4")
    size(210, 297);
  else if (name == "Letter")
    size(215.9, 279.4);
  else if (name == "A3")
    size(420, 297);
  else if (name == "Tabloid")
    size(431.8, 279.4);
  else
    throw std::invalid_argument("no paper is called \"" + std::string(name) + "\"");
  return paper;
}

ink::Rect free_area(const ink::Paper& paper) {
  const ink::Rect frame = paper.area();
  return {{frame.low.x + frame_air, frame.low.y + band_height(paper) + frame_air},
          {frame.high.x - side_strip, frame.high.y - frame_air}};
}

ink::Page start_page(const Kit& kit, const ink::Paper& paper, const TitleFields& fields) {
  ink::Page page;
  page.paper = paper;
  page.title = fields.sheet;
  const ink::Rect frame = paper.area();
  page.items.emplace_back(
      ink::Group{"frame", {ink::Stroke{ink::Path{}.rect(frame), {kit.look.frame}}}});
  page.items.emplace_back(title_block(kit, paper, fields));
  page.items.emplace_back(bar_notes(kit, paper, fields));
  const ink::Rect strip = bar_rect(paper);
  page.items.emplace_back(scale_bar(kit, {strip.low.x + 5, middle(strip).y}, false));
  page.items.emplace_back(
      scale_bar(kit, {frame.high.x - 5.8, frame.low.y + band_height(paper) + 4}, true));
  return page;
}

void put_warning(const Kit& kit, ink::Page& page, const std::string& words) {
  constexpr double height = 3.5, above = 1.6;
  const ink::Rect frame = page.paper.area();
  const std::string text = shortened(kit, words, frame.width(), height, ink::Face::bold);
  page.items.emplace_back(ink::Group{"frame",
                                     {ink::Text{{middle(frame).x, frame.high.y + above},
                                                text,
                                                height,
                                                0,
                                                ink::Align::centre,
                                                ink::Face::bold}}});
}

void number_page(const Kit& kit, ink::Page& page, int number, int count, bool bind_right) {
  const std::string label = std::to_string(number);
  label_page(kit, page, label, label + " of " + std::to_string(count), bind_right);
}

void put_change_bar(ink::Page& page, double low, double high) {
  constexpr double outside = 3, width = 1;
  const double x = page.paper.area().high.x + outside;
  page.items.emplace_back(
      ink::Group{"frame", {ink::Stroke{ink::Path{}.move({x, low}).line({x, high}), {width}}}});
}

void label_page(const Kit& kit, ink::Page& page, const std::string& label, const std::string& words,
                bool bind_right) {
  page.label = label;
  const ink::Rect box = page_cell(block_rect(page.paper));
  const ink::Rect inside{{box.low.x + cell_pad, box.low.y + 0.6},
                         {box.high.x - cell_pad, box.high.y - cell_pad - name_height - 0.9}};
  ink::Group group{"title block", {}};
  group.items.emplace_back(fitted(kit, words, inside, {.height = 3.5, .face = ink::Face::bold}));
  page.items.emplace_back(std::move(group));
  const ink::Rect frame = page.paper.area();
  page.items.emplace_back(ink::Anchor{"page " + page.label, {frame.low.x, frame.high.y}});
  if (!bind_right) return;
  const double shift = page.paper.margin_right - page.paper.margin_left;
  page.items = moved(std::move(page.items), {shift, 0});
  std::swap(page.paper.margin_left, page.paper.margin_right);
}

}  // namespace splay::drafting
