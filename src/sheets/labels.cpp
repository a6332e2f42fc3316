// Part labels: a sheet to cut up and stick on, one label for every physical part.
#include <algorithm>
#include <cmath>

#include "drafting/conventions.h"
#include "drafting/text_block.h"
#include "sheets/kinds.h"
#include "sheets/part_view_facts.h"
#include "sheets/part_view_set.h"

namespace splay::sheets {

namespace {

using fabrication::PartRow;
using ink::Align;
using ink::Rect;

constexpr double least_width = 58, least_height = 40, most_height = 52;
constexpr const char* labels_how_to =
    "Cut apart along the lines and stick one on every part, its arrow upright as the part stands "
    "in the piece.";

struct LabelGrid {
  std::size_t columns = 1, rows = 1;
  double width = 0, height = 0;
  std::size_t on_page() const { return columns * rows; }
};

// As few pages as can be, about equally full, with labels of a handy shape that fill the width.
LabelGrid grid_of(Rect area, std::size_t labels) {
  const auto whole = [](double n) {
    return static_cast<std::size_t>(std::max(1.0, std::floor(n)));
  };
  const std::size_t most_columns = whole(area.width() / least_width);
  const std::size_t most_rows = whole(area.height() / least_height);
  const auto parts = [](std::size_t n, std::size_t by) { return (n + by - 1) / by; };
  const std::size_t pages = parts(labels, most_columns * most_rows);
  const std::size_t each = parts(labels, pages);
  LabelGrid best;
  double least_off = 1e300;
  for (std::size_t columns = 1; columns <= most_columns; ++columns) {
    LabelGrid grid;
    grid.columns = columns;
    grid.rows = parts(each, columns);
    if (grid.rows > most_rows) continue;
    grid.width = area.width() / static_cast<double>(columns);
    grid.height = std::min(area.height() / static_cast<double>(grid.rows), most_height);
    constexpr double handy = 1.8;  // width to height
    const double off = std::abs(std::log(grid.width / grid.height / handy));
    if (off >= least_off) continue;
    least_off = off;
    best = grid;
  }
  return best;
}

struct Label {
  const PartRow* row = nullptr;
  const parts::Part* part = nullptr;
  std::size_t number = 1;  // of the row's quantity
};

std::vector<Label> labels_of(const Context& context) {
  std::vector<Label> labels;
  for (const PartRow* row : rows_in_order(context.plan))
    for (std::size_t i = 0; i < row->members.size(); ++i)
      labels.push_back(
          {row, &context.plan.assembly.parts[static_cast<std::size_t>(row->members[i])], i + 1});
  return labels;
}

class LabelDrawing {
 public:
  LabelDrawing(const Context& context, const Label& label, Rect box)
      : context_(context), kit_(context.kit), label_(label), box_(box) {}

  ink::Group draw() {
    group_.items.emplace_back(ink::Stroke{ink::Path{}.rect(box_), kit_.thin()});
    top_row();
    lines();
    group_.items.emplace_back(ink::PartClaim{label_.row->mark, "label"});
    group_.items.emplace_back(ink::Link{box_, part_anchor(label_.row->mark)});
    return std::move(group_);
  }

 private:
  double left() const { return box_.low.x + 3; }
  double right() const { return box_.high.x - 3; }

  void write(std::string_view text, Rect box, double height, ink::Face face = ink::Face::regular) {
    group_.items.emplace_back(drafting::fitted(kit_, text, box, {height, face, Align::left}));
  }

  // Mark, hand, which of how many, and the arrow that stands upright with the part.
  void top_row() {
    const double top = box_.high.y - 2.5, low = top - row_height;
    constexpr double letter = 8;
    const std::string& mark = label_.row->mark;
    group_.items.emplace_back(
        ink::Text{{left(), top - letter - 0.5}, mark, letter, 0, Align::left, ink::Face::bold});
    double x = left() + kit_.width(mark, letter, ink::Face::bold) + 3;
    if (label_.row->hand != fabrication::Hand::none) {
      const bool is_left = label_.row->hand == fabrication::Hand::left;
      drafting::append(group_.items,
                       drafting::hand_mark(kit_, {x + 6, top - 5}, 6.5, is_left).items);
      x += 14;
    }
    const double arrow = right() - 4;
    write(std::to_string(label_.number) + " of " + std::to_string(label_.row->quantity()),
          {{x, low}, {arrow - 5, top}}, 2.5);
    const Vec2 tip{arrow, top};
    group_.items.emplace_back(
        ink::Stroke{ink::Path{}.move({arrow, top - 6.5}).line(tip), kit_.visible()});
    group_.items.emplace_back(
        ink::Fill{ink::Path{}.polygon({tip, tip + Vec2{-1.4, -3}, tip + Vec2{1.4, -3}})});
    group_.items.emplace_back(ink::Text{{arrow, top - 10}, "up", 2.5, 0, Align::centre});
  }

  void lines() {
    const parts::Part& part = *label_.part;
    const std::string& up = parts::side_name(part, side_seen(parts::local_up(part)));
    const std::string& front = parts::side_name(part, side_seen(parts::local_front(part)));
    const bool either = part.show == parts::ShowFace::either;
    const std::vector<std::string> words = {
        either ? "either face shows" : "show face: " + parts::side_name(part, parts::Side::z_high),
        "up: " + up + "; to the front: " + front, size_words(kit_, label_.row->finished),
        stock_words(context_, label_.row->stock),
        "job " + *context_.job().number + ", revision " + *context_.job().revision};
    double y = box_.high.y - 2.5 - row_height;
    const double room = y - box_.low.y - 1.5;
    const double name = std::min(7.0, room * 0.22);
    write(part.name, {{left(), y - name}, {right(), y}}, name > 6 ? 4.0 : 3.5, ink::Face::bold);
    y -= name;
    const double letter = box_.height() > 44 ? 3 : 2.5;
    const double pitch = std::min(2 * letter, (room - name) / static_cast<double>(words.size()));
    for (const std::string& line : words) {
      write(line, {{left(), y - pitch}, {right(), y}}, letter);
      y -= pitch;
    }
  }

  static constexpr double row_height = 11.5;
  const Context& context_;
  const drafting::Kit& kit_;
  const Label& label_;
  Rect box_;
  ink::Group group_{"label", {}};
};

}  // namespace

std::vector<ink::Page> make_labels(const Context& context) {
  const std::vector<Label> labels = labels_of(context);
  Rect area = context.area();
  const drafting::Picture note = page_note(context, labels_how_to);
  const Vec2 top{area.low.x, area.high.y};
  area.high.y -= note.height;
  const LabelGrid grid = grid_of(area, std::max<std::size_t>(labels.size(), 1));
  std::vector<ink::Page> pages;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    if (i % grid.on_page() == 0) {
      pages.push_back(start_page(context, "Part labels"));
      drafting::append(pages.back().items, drafting::moved(note.items, top));
    }
    const std::size_t place = i % grid.on_page();
    const std::size_t row = place / grid.columns;
    const Vec2 low{area.low.x + static_cast<double>(place % grid.columns) * grid.width,
                   area.high.y - static_cast<double>(row + 1) * grid.height};
    const Rect box{low, low + Vec2{grid.width, grid.height}};
    pages.back().items.emplace_back(LabelDrawing(context, labels[i], box).draw());
  }
  return pages;
}

}  // namespace splay::sheets
