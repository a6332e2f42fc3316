// The cut list: one row for each kind of part, grouped by stock.
#include <algorithm>
#include <map>

#include "drafting/table.h"
#include "sheets/kinds.h"
#include "sheets/part_view_curves.h"
#include "sheets/part_view_facts.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using fabrication::CutReport;
using fabrication::PartRow;

// What isn't square about one cut, or "square".
std::string cut_words(const CutReport& cut) {
  constexpr double square = 5e-5;  // radians: prints as 0.00 degrees
  std::string text;
  if (cut.face_angle > square) text = "face angle " + degrees_text(Angle{cut.face_angle}.degrees());
  if (cut.bevel > square)
    text += (text.empty() ? "bevel " : ", bevel ") + degrees_text(Angle{cut.bevel}.degrees());
  return text.empty() ? "square" : text;
}

// Both ends, and the edges that are not square: each different cut once, named by its side.
std::string ends_of(const parts::Part& part, const PartRow& row) {
  std::vector<std::pair<std::string, std::string>> cuts;  // words, sides
  for (const CutReport& cut : row.cuts) {
    const bool end = cut.side == parts::Side::x_low || cut.side == parts::Side::x_high;
    const std::string words = cut_words(cut);
    if (!end && words == "square") continue;
    const std::string& side = parts::side_name(part, cut.side);
    const auto same =
        std::find_if(cuts.begin(), cuts.end(), [&](const auto& c) { return c.first == words; });
    if (same == cuts.end())
      cuts.emplace_back(words, side);
    else if (same->second.find(side) == std::string::npos)
      same->second += ", " + side;
  }
  std::string text;
  for (const auto& [words, sides] : cuts) text += (text.empty() ? "" : "\n") + sides + ": " + words;
  return text.empty() ? "as the blank" : text;
}

bool turns_freely(const model::Stock* stock, const parts::Part& part) {
  return (stock != nullptr && !*stock->grain) || part.grain == parts::Grain::none;
}

drafting::TableRow row_of(const Context& context, const PartRow& row) {
  const parts::Part& part =
      context.plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
  std::string name = row_name(context, row);
  if (row.hand != fabrication::Hand::none) name += ", " + hand_words(row);
  const auto circle = circle_on(PartSheet(context, row), parts::Side::z_high);
  std::string ends =
      circle ? "round, Ø" + context.kit.figures.text(2 * circle->radius) : ends_of(part, row);
  if (turns_freely(context.plan.project->stocks.find(row.stock), part))
    ends += "\ngrain either way";
  const auto figure = [&](double mm) { return context.kit.figures.text(mm); };
  drafting::TableRow line;
  line.cells = {Cell::linked(row.mark, part_anchor(row.mark)),
                name,
                std::to_string(row.quantity()),
                figure(row.finished.x),
                figure(row.finished.y),
                figure(row.finished.z),
                figure(row.long_point),
                figure(row.short_point),
                figure(row.blank.x),
                figure(row.blank.y),
                std::move(ends)};
  line.cells[0].face = ink::Face::bold;
  line.claims.emplace_back(ink::PartClaim{row.mark, "row"});
  return line;
}

constexpr double cell_pad = 3.2;  // mm beside the texts of a cell, both sides together

// One layout for the tables of all stocks, so that their columns stand under each other: figures
// take what they need, the words of part and ends share the rest.
std::vector<drafting::Column> columns_for(const drafting::Kit& kit,
                                          const std::vector<drafting::TableRow>& rows,
                                          double width) {
  const auto figures = [](const char* head) {
    return drafting::Column{.head = head, .align = ink::Align::right, .share = 0, .wrap = false};
  };
  std::vector<drafting::Column> columns = {{.head = "Mark", .share = 0, .wrap = false},
                                           {.head = "Part", .share = 0},
                                           figures("Off"),
                                           figures("Length"),
                                           figures("Width"),
                                           figures("Thick"),
                                           figures("Long\npoint"),
                                           figures("Short\npoint"),
                                           figures("Blank\nlength"),
                                           figures("Blank\nwidth"),
                                           {.head = "Ends and edges", .share = 0}};
  const double letter = kit.look.lettering;
  double left = width;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    drafting::Column& column = columns[c];
    if (column.wrap) continue;
    for (const std::string& line : drafting::wrap(kit, column.head, 1e9, letter, ink::Face::bold))
      column.least = std::max(column.least, kit.width(line, letter, ink::Face::bold));
    for (const drafting::TableRow& row : rows)
      column.least =
          std::max(column.least, kit.width(row.cells[c].text, letter, row.cells[c].face));
    column.least += 0.2;
    left -= column.least + cell_pad;
  }
  constexpr double part_share = 0.42, least_ends = 9;  // of what is left; capitals wide
  if ((1 - part_share) * left < least_ends * letter) {
    columns.back().under = true;
    columns[1].least = left - cell_pad;
    return columns;
  }
  columns[1].least = part_share * left - cell_pad;
  columns.back().least = (1 - part_share) * left - cell_pad;
  return columns;
}

// "sheet, 0.713 in thick as measured (18.1 mm); 6 pieces, 19.8 square feet net". Square metres or
// feet of finished rectangles; running length for edgings and boards.
std::string stock_line(const Context& context, const fabrication::StockUse& use) {
  const FigureStyle& figures = context.kit.figures;
  const bool inch = figures.unit == Unit::inch;
  std::string text = use.kind + ", " + thickness_words(context, use.thickness) +
                     " thick as measured (" + other_unit_text(use.thickness, figures.unit) + "); " +
                     std::to_string(use.pieces) + (use.pieces == 1 ? " piece" : " pieces");
  if (use.kind == "sheet")
    text += inch ? ", " + plain_number(use.area / (304.8 * 304.8), 1) + " square feet net"
                 : ", " + plain_number(use.area / 1e6, 2) + " square metres net";
  else
    text += inch ? ", " + plain_number(use.length / 304.8, 1) + " feet net"
                 : ", " + plain_number(use.length / 1000, 2) + " metres net";
  return text;
}

std::vector<ink::Page> pages_of(const Context& context) {
  const drafting::Kit& kit = context.kit;
  const double width = context.area().width();
  std::map<std::string, std::vector<drafting::TableRow>> rows;
  std::vector<drafting::TableRow> all;
  for (const PartRow* row : rows_in_order(context.plan)) {
    all.push_back(row_of(context, *row));
    rows[row->stock].push_back(all.back());
  }
  const std::vector<drafting::Column> columns = columns_for(kit, all, width);
  drafting::Story story{drafting::body_text(
      kit,
      "Length, width and thickness are finished; long and short point are lengths between the two "
      "ends. A blank leaves " +
          kit.figures.with_unit(context.plan.project->shop.blank_allowance->mm) +
          " over in length and in width. The grain runs lengthwise unless a row says otherwise.",
      width)};
  story.back().space_after = 4;
  for (const fabrication::StockUse& use : context.plan.stock) {
    story.push_back(drafting::heading(kit, use.name + ": " + use.material, width));
    drafting::Block sum = drafting::body_text(kit, stock_line(context, use), width);
    sum.keep_with_next = true;
    story.push_back(std::move(sum));
    drafting::add(story, drafting::table(kit,
                                         {.columns = columns,
                                          .rows = std::move(rows[use.name]),
                                          .going_on = "of " + use.name},
                                         width));
    story.back().space_after = 6;
  }
  std::vector<ink::Page> pages;
  for (drafting::Items& items : drafting::flow(story, {context.area()}, {context.area()})) {
    pages.push_back(start_page(context, "Cut list"));
    drafting::append(pages.back().items, std::move(items));
  }
  return pages;
}

}  // namespace

std::vector<ink::Page> make_cut_list(const Context& context) {
  std::vector<ink::Page> large = pages_of(for_reading(context)), plain = pages_of(context);
  return plain.size() < large.size() ? plain : large;
}

}  // namespace splay::sheets
