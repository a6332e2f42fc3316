// Part labels: a sheet to cut up and stick on, one label for every physical part.
#include <algorithm>
#include <cmath>

#include "drafting/text_block.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

using fabrication::PartRow;
using ink::Align;
using ink::Rect;

struct Grid {
  std::size_t columns = 1, rows = 1;
  double width = 0, height = 0;
};

// Labels about 62 by 34 mm, stretched so that they fill the paper.
Grid grid_of(Rect area) {
  Grid grid;
  grid.columns = static_cast<std::size_t>(std::max(1.0, std::floor(area.width() / 58)));
  grid.rows = static_cast<std::size_t>(std::max(1.0, std::floor(area.height() / 33)));
  grid.width = area.width() / static_cast<double>(grid.columns);
  grid.height = area.height() / static_cast<double>(grid.rows);
  return grid;
}

struct Label {
  const PartRow* row = nullptr;
  const parts::Part* part = nullptr;
  std::size_t number = 1;  // of the row's quantity
};

std::vector<Label> labels_of(const Context& context) {
  std::vector<Label> labels;
  for (const PartRow& row : context.plan.rows)
    for (std::size_t i = 0; i < row.members.size(); ++i)
      labels.push_back(
          {&row, &context.plan.assembly.parts[static_cast<std::size_t>(row.members[i])], i + 1});
  return labels;
}

// The side of a part whose outward direction is nearest to a direction of its frame.
const std::string& side_towards(const parts::Part& part, Vec3 local) {
  parts::Side best = parts::Side::x_low;
  for (int i = 1; i < 6; ++i) {
    const auto side = static_cast<parts::Side>(i);
    if (dot(parts::outward(side), local) > dot(parts::outward(best), local)) best = side;
  }
  return parts::side_name(part, best);
}

void arrow(ink::Group& group, Vec2 foot, double height, ink::Pen pen) {
  const Vec2 tip = foot + Vec2{0, height};
  group.items.emplace_back(ink::Stroke{ink::Path{}.move(foot).line(tip), pen});
  group.items.emplace_back(
      ink::Fill{ink::Path{}.polygon({tip, tip + Vec2{-1.2, -3}, tip + Vec2{1.2, -3}}), 0});
}

void write(ink::Group& group, const drafting::Kit& kit, std::string_view text, Rect box,
           double height, ink::Face face = ink::Face::regular) {
  group.items.emplace_back(drafting::fitted(kit, text, box, {height, face, Align::left}));
}

std::string size_of(const drafting::Kit& kit, const PartRow& row) {
  const FigureStyle& f = kit.figures;
  return f.text(row.finished.x) + " × " + f.text(row.finished.y) + " × " + f.text(row.finished.z);
}

ink::Group draw_label(const Context& context, const Label& label, Rect box) {
  const drafting::Kit& kit = context.kit;
  const parts::Part& part = *label.part;
  ink::Group group{"label", {}};
  group.items.emplace_back(ink::Stroke{ink::Path{}.rect(box), kit.thin()});
  const double left = box.low.x + 3, right = box.high.x - 3, top = box.high.y - 2;
  const double name_from = left + 24, arrow_at = right - 4;
  const std::string hand = label.row->hand == fabrication::Hand::none
                               ? ""
                               : std::string(fabrication::word(label.row->hand)) + " hand, ";
  const std::string of =
      std::to_string(label.number) + " of " + std::to_string(label.row->quantity());
  write(group, kit, label.row->mark, {{left, top - 11}, {name_from - 2, top}}, 8, ink::Face::bold);
  write(group, kit, part.name, {{name_from, top - 6}, {arrow_at - 4, top}}, 3.5, ink::Face::bold);
  write(group, kit, hand + of, {{name_from, top - 11}, {arrow_at - 4, top - 6}}, 2.5);
  const std::string show = part.show == parts::ShowFace::either
                               ? "either face shows"
                               : "show face: " + parts::side_name(part, parts::Side::z_high);
  const double step = std::min(5.0, (box.height() - 15) / 4);
  double y = top - 12;
  for (const std::string& line : {show,
                                  "front: " + side_towards(part, parts::local_front(part)) +
                                      "; up: " + side_towards(part, parts::local_up(part)),
                                  size_of(kit, *label.row),
                                  label.row->stock + ", job " + *context.job().number +
                                      " revision " + *context.job().revision}) {
    write(group, kit, line, {{left, y - step}, {right, y}}, 2.5);
    y -= step;
  }
  arrow(group, {arrow_at, top - 11}, 8, kit.visible());
  group.items.emplace_back(ink::PartClaim{label.row->mark, "label"});
  group.items.emplace_back(ink::Link{box, part_anchor(label.row->mark)});
  return group;
}

}  // namespace

std::vector<ink::Page> make_labels(const Context& context) {
  const std::vector<Label> labels = labels_of(context);
  Rect area = context.area();
  const double note = 9;
  area.high.y -= note;
  const Grid grid = grid_of(area);
  const std::size_t on_page = grid.columns * grid.rows;
  std::vector<ink::Page> pages;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    if (i % on_page == 0) {
      pages.push_back(start_page(context, "Part labels"));
      pages.back().items.emplace_back(
          drafting::fitted(context.kit,
                           "Cut apart and stick one on every part. The arrow stands upright as the "
                           "part stands in the piece.",
                           {{area.low.x, area.high.y + 2}, {area.high.x, area.high.y + note}},
                           {2.5, ink::Face::regular, Align::left}));
    }
    const std::size_t place = i % on_page;
    const Vec2 low{area.low.x + static_cast<double>(place % grid.columns) * grid.width,
                   area.high.y - static_cast<double>(place / grid.columns + 1) * grid.height};
    pages.back().items.emplace_back(
        draw_label(context, labels[i], {low, low + Vec2{grid.width, grid.height}}));
  }
  return pages;
}

}  // namespace splay::sheets
