// Sheets and boards: what to buy of each stock, and one drawing for each sheet and board with the
// cuts in their order.
#include <algorithm>
#include <cmath>

#include "sheets/kinds.h"
#include "sheets/part_view_facts.h"
#include "sheets/stock_drawing.h"

namespace splay::sheets {

namespace {

using drafting::Story;
using fabrication::CutSheet;
using fabrication::StockLayout;

constexpr double stock_gap = 5;  // mm

// Of a table of cuts: 38 mm for the least letters.
double table_width_of(const drafting::Kit& kit) { return 38 * (kit.look.lettering / 2.5); }

std::string count_words(int count, bool sheet) {
  const char* what =
      sheet ? (count == 1 ? " sheet" : " sheets") : (count == 1 ? " board" : " boards");
  return std::to_string(count) + what;
}

// Which cuts are alike is seen at once when a row says along or across first.
std::string cut_words(const packing::SheetCut& cut) {
  const bool along = cut.axis == packing::Axis::y;
  if (cut.trim) return along ? "trim edge" : "trim end";
  return along ? "rip" : "crosscut";
}

// The cuts from `first` up to `last`, one below the other: lines without rules take less room.
drafting::Picture cut_table(const drafting::Kit& kit, const CutSheet& sheet, std::size_t first,
                            std::size_t last) {
  const double letter = kit.look.lettering, grown = letter / 2.5;
  const double pitch = 4.6 * grown, number_end = 6 * grown, words = number_end + 3;
  const double table_width = table_width_of(kit);
  drafting::Picture picture{{}, table_width, 0};
  ink::Group group{"table", {}};
  double base = -letter - 0.5;
  const auto row = [&](const std::string& number, const std::string& cut, const std::string& left,
                       ink::Face face) {
    group.items.emplace_back(
        ink::Text{{number_end, base}, number, letter, 0, ink::Align::right, face});
    group.items.emplace_back(ink::Text{{words, base}, cut, letter, 0, ink::Align::left, face});
    group.items.emplace_back(
        ink::Text{{table_width, base}, left, letter, 0, ink::Align::right, face});
    base -= pitch;
  };
  row("No", "Cut", "Leaves", ink::Face::bold);
  const double rule = base + pitch - 1.2 * grown;
  group.items.emplace_back(
      ink::Stroke{ink::Path{}.move({0, rule}).line({table_width, rule}), kit.thin()});
  base -= 0.8;
  for (std::size_t i = first; i < last; ++i)
    row(std::to_string(i + 1), cut_words(sheet.cuts[i]), kit.figures.text(sheet.settings[i]),
        ink::Face::regular);
  picture.height = -(base + pitch) + 1;
  picture.items.emplace_back(std::move(group));
  return picture;
}

// In as many tables beside each other as the width takes, about equally long.
drafting::Picture cut_tables(const drafting::Kit& kit, const CutSheet& sheet, double width) {
  constexpr std::size_t shortest = 3;  // lines of a table
  const std::size_t n = sheet.cuts.size();
  const auto fits =
      static_cast<std::size_t>(std::floor((width + stock_gap) / (table_width_of(kit) + stock_gap)));
  const std::size_t columns =
      std::clamp<std::size_t>(fits, 1, std::max<std::size_t>(1, (n + shortest - 1) / shortest));
  drafting::Picture picture;
  std::size_t from = 0;
  for (std::size_t c = 0; c < columns; ++c) {
    const std::size_t to = (n * (c + 1) + columns - 1) / columns;
    drafting::Picture one = cut_table(kit, sheet, from, to);
    picture = c == 0 ? std::move(one) : drafting::side_by_side(std::move(picture), one, stock_gap);
    from = to;
  }
  return picture;
}

std::string sheet_line(const Context& context, const StockLayout& layout, const CutSheet& sheet,
                       const StockScale& scale) {
  const FigureStyle& figures = context.kit.figures;
  const fabrication::Supplied& supply = layout.supplies[sheet.supply];
  std::string text = sheet.name;
  if (!supply.name.empty()) text += " (" + supply.name + ", on hand)";
  text += ": " + figures.text(supply.length) + " × " + figures.with_unit(supply.width);
  if (sheet.count > 1) text += ", " + std::to_string(sheet.count) + " cut alike";
  text += "; scale " + drafting::short_text(scale.along);
  if (scale.widened > 1)
    text += ", widths drawn " + std::to_string(scale.widened) + " times as large";
  return text;
}

std::string off_cuts_line(const Context& context, const CutSheet& sheet) {
  std::string text;
  for (const fabrication::Leftover& left : sheet.off_cuts)
    text += (text.empty() ? "Keep, with the name on it: " : "; ") + left.name + ", " +
            context.kit.figures.text(left.place.width) + " × " +
            context.kit.figures.text(left.place.height);
  return text.empty() ? text : text + ".";
}

// Each different one once, in the order of the cuts.
std::string unmarked_line(const std::vector<std::string>& unmarked) {
  std::vector<std::string> once;
  for (const std::string& each : unmarked)
    if (std::ranges::find(once, each) == once.end()) once.push_back(each);
  // Shorter numbers are smaller ones.
  std::ranges::stable_sort(once, {},
                           [](const std::string& each) { return std::pair(each.size(), each); });
  return once.empty() ? "" : "Too small to mark in the drawing: " + joined(once, "; ") + ".";
}

// The drawing and its cuts: boards have them below; sheets beside or below, whichever lets the
// sheet be drawn larger, or else takes less paper.
StockDrawing with_cuts(const Context& context, const StockLayout& layout, const CutSheet& sheet,
                       const StockScale& scale, bool below, double width) {
  StockDrawing drawing = stock_drawing(context, layout, sheet, scale);
  drafting::Picture& picture = drawing.picture;
  if (below) {
    Story story{drafting::of_picture(std::move(picture), 1),
                drafting::of_picture(cut_tables(context.kit, sheet, width), 0)};
    picture = drafting::as_picture(story, width);
  } else {
    const double beside = width - picture.width - stock_gap;
    picture = drafting::side_by_side(std::move(picture), cut_tables(context.kit, sheet, beside),
                                     stock_gap);
  }
  return drawing;
}

StockDrawing sheet_drawing(const Context& context, const StockLayout& layout, const CutSheet& sheet,
                           double width, double height, bool sparing, StockScale& scale) {
  const double tables = cut_tables(context.kit, sheet, width).height + 1;
  const StockScale above = sheet_scale(context, layout, sheet, {width, height - tables}, sparing);
  scale = sheet_scale(context, layout, sheet,
                      {width - table_width_of(context.kit) - stock_gap, height}, sparing);
  StockDrawing beside = with_cuts(context, layout, sheet, scale, false, width);
  if (above.along.ratio() < scale.along.ratio()) return beside;
  StockDrawing below = with_cuts(context, layout, sheet, above, true, width);
  if (above.along == scale.along && below.picture.height >= beside.picture.height) return beside;
  scale = above;
  return below;
}

drafting::Block sheet_block(const Context& context, const StockLayout& layout,
                            const CutSheet& sheet, double width, double height, bool sparing) {
  const drafting::Kit& kit = context.kit;
  constexpr double caption = 16;
  StockScale scale;
  StockDrawing drawing;
  if (layout.kind == model::StockKind::sheet) {
    drawing = sheet_drawing(context, layout, sheet, width, height - caption, sparing, scale);
  } else {
    scale = board_scale(context, layout, {width, height});
    drawing = with_cuts(context, layout, sheet, scale, true, width);
  }
  Story story{
      drafting::body_text(kit, sheet_line(context, layout, sheet, scale), width, ink::Face::bold),
      drafting::of_picture(std::move(drawing.picture), 2)};
  for (const std::string& line : {unmarked_line(drawing.unmarked), off_cuts_line(context, sheet)})
    if (!line.empty()) story.push_back(drafting::body_text(kit, line, width));
  return drafting::of_picture(drafting::as_picture(story, width), 6);
}

std::string percent(double part, double whole) {
  return plain_number(whole > 0 ? 100 * part / whole : 0, 0) + " %";
}

// What is bought and why not fewer.
std::string buy_words(const Context& context, const StockLayout& layout) {
  const bool sheet = layout.kind == model::StockKind::sheet;
  const FigureStyle& figures = context.kit.figures;
  std::string text = count_words(layout.bought, sheet) + " to buy";
  if (layout.on_hand > 0) text += ", " + std::to_string(layout.on_hand) + " from what is on hand";
  text +=
      ". No layout of these blanks buys fewer than " + std::to_string(layout.bound) + " (proven). ";
  text += "The blanks take " + percent(layout.used_area, layout.whole_area) + " of the area, " +
          percent(layout.off_cut_area, layout.whole_area) + " is kept as off-cuts, " +
          plain_number(layout.waste_percent(), 0) + " % is waste. Kerf " +
          figures.with_unit(layout.task.kerf) + ".";
  if (layout.bought_if_free < layout.bought)
    text += " With the grain free it would be " + count_words(layout.bought_if_free, sheet) + ".";
  if (!sheet && !layout.boards_named)
    text +=
        " No boards at hand are named: these are of a usual size; any board as "
        "wide and as long will do.";
  return text;
}

std::string special_words(const Context& context, const StockLayout& layout) {
  std::string text;
  for (const fabrication::Wanted& wanted : layout.wanted) {
    const std::string& mark = context.plan.rows[static_cast<std::size_t>(wanted.row)].mark;
    if (wanted.strips > 1)
      text += " " + mark + " is glued up from " + std::to_string(wanted.strips) + " strips.";
    if (wanted.layers > 1)
      text += " Pieces of " + mark + " are resawn into " + std::to_string(wanted.layers) +
              "; make " + std::to_string(wanted.parts) + ".";
  }
  return text;
}

void add_stock(const Context& context, const StockLayout& layout, double width, double height,
               bool sparing, Story& story) {
  const drafting::Kit& kit = context.kit;
  const model::Stock& stock = layout.of(*context.plan.project);
  story.push_back(drafting::heading(kit, stock_words(context, stock.name), width));
  drafting::Block words =
      drafting::body_text(kit,
                          thickness_words(context, stock.thickness->mm) + " thick as measured. " +
                              buy_words(context, layout) + special_words(context, layout),
                          width);
  words.keep_with_next = true;
  words.space_after = 3;
  story.push_back(std::move(words));
  for (const CutSheet& sheet : layout.sheets)
    story.push_back(sheet_block(context, layout, sheet, width, height, sparing));
}

// All pages; `sparing` of each layout.
std::vector<drafting::Items> poured(const Context& context, const std::vector<bool>& sparing) {
  const double width = story_width(context);
  const double height = context.area().height() - 36;  // the words of a stock stand above
  Story story{drafting::body_text(
      context.kit,
      "Make the cuts in the order of their numbers: the table says how wide each leaves the side "
      "nearer the datum corner (lower left; of an upright sheet, lower right). Sizes are of "
      "blanks. Mark the waste side of every line. Support both sides of the cut; guards on.",
      width)};
  story.back().keep_with_next = true;
  story.back().space_after = 2;
  for (std::size_t i = 0; i < sparing.size(); ++i)
    add_stock(context, context.plan.layouts[i], width, height, sparing[i], story);
  const std::vector<ink::Rect> columns = drafting::columns(context.area(), context.wide() ? 2 : 1);
  return drafting::flow(story, columns, columns);
}

}  // namespace

std::vector<ink::Page> make_stock(const Context& context) {
  const std::size_t count = context.plan.layouts.size();
  if (count == 0) return {};
  // Sheets of few parts are drawn smaller only where that saves a page.
  std::vector<bool> sparing(count, false);
  std::vector<drafting::Items> poured_pages = poured(context, sparing);
  std::vector<drafting::Items> least = poured(context, std::vector<bool>(count, true));
  if (least.size() < poured_pages.size()) {
    sparing.assign(count, true);
    poured_pages = std::move(least);
    for (std::size_t i = 0; i < count; ++i) {
      sparing[i] = false;
      std::vector<drafting::Items> other = poured(context, sparing);
      sparing[i] = other.size() > poured_pages.size();
      if (!sparing[i]) poured_pages = std::move(other);
    }
  }
  std::vector<ink::Page> pages;
  for (drafting::Items& items : poured_pages) {
    pages.push_back(start_page(context, "Sheets and boards", "as marked"));
    drafting::append(pages.back().items, std::move(items));
  }
  return pages;
}

}  // namespace splay::sheets
