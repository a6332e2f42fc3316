#include "drafting/table.h"

#include <algorithm>
#include <utility>

namespace splay::drafting {

namespace {

constexpr double pad_x = 1.5, pad_y = 1.6;  // mm between a cell's edge and its text

struct Layout {
  const Kit& kit;
  const Table& table;
  double height;               // of a capital letter
  std::vector<double> widths;  // of the columns, padding included
  double total = 0;
  std::vector<bool> under;  // columns set under their rows; their width is 0
};

double longest_word(const Kit& kit, std::string_view text, double height, ink::Face face) {
  double width = 0;
  while (!text.empty()) {
    const std::size_t end = text.find_first_of(" \n");
    width = std::max(width, kit.width(text.substr(0, end), height, face));
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return width;
}

struct Need {
  double least = 0, whole = 0;  // padding included
};

// With `words_break`, only texts set from the right, which are figures, are kept whole.
Need need_of(const Layout& layout, std::size_t c, bool words_break) {
  if (layout.under[c]) return {};
  const Column& column = layout.table.columns[c];
  const bool kept = !column.wrap && (!words_break || column.align == ink::Align::right);
  Need need;
  const auto include = [&](std::string_view text, ink::Face face, bool whole) {
    const double all = widest_line(layout.kit, text, layout.height, face);
    need.least =
        std::max(need.least, whole ? all : longest_word(layout.kit, text, layout.height, face));
    need.whole = std::max(need.whole, all);
  };
  include(column.head, ink::Face::bold, false);
  for (const TableRow& row : layout.table.rows) {
    if (c >= row.cells.size()) continue;
    const Cell& cell = row.cells[c];
    include(cell.text, cell.face, kept);
    if (cell.picture) need.least = std::max(need.least, cell.picture->width);
  }
  need.least = std::max(need.least, column.least) + 2 * pad_x;
  need.whole = std::max(need.whole + 2 * pad_x, need.least);
  return need;
}

void shrink(std::vector<double>& widths, double by) {
  double sum = 0;
  for (const double width : widths) sum += width;
  for (double& width : widths) width -= by * width / sum;
}

std::vector<Need> needs_of(const Layout& layout, double width) {
  std::vector<Need> needs;
  for (const bool words_break : {false, true}) {
    needs.clear();
    double used = 0;
    for (std::size_t c = 0; c < layout.table.columns.size(); ++c) {
      needs.push_back(need_of(layout, c, words_break));
      used += needs.back().least;
    }
    if (used <= width) break;
  }
  return needs;
}

double share(const Layout& layout, std::size_t c) {
  return layout.under[c] ? 0 : layout.table.columns[c].share;
}

// First what every column needs, then what its texts would like, then shares of the rest.
void measure(Layout& layout, double width) {
  const std::vector<Need> needs = needs_of(layout, width);
  double used = 0, wanted = 0, shares = 0;
  layout.widths.clear();
  for (std::size_t c = 0; c < needs.size(); ++c) {
    layout.widths.push_back(needs[c].least);
    used += needs[c].least;
    wanted += needs[c].whole - needs[c].least;
    shares += share(layout, c);
  }
  layout.total = width;
  if (used > width) {
    shrink(layout.widths, used - width);
    return;
  }
  const double given = std::min(1.0, wanted > 0 ? (width - used) / wanted : 0.0);
  const double rest = width - used - given * wanted;
  for (std::size_t c = 0; c < needs.size(); ++c)
    layout.widths[c] += given * (needs[c].whole - needs[c].least) +
                        (shares > 0 ? rest * share(layout, c) / shares : 0.0);
}

// Which column of words runs down its rows word under word, though across the table it would take
// few lines; the worst of them.
std::optional<std::size_t> runs_down(const Layout& layout) {
  constexpr std::size_t bearable = 6, times = 2;
  std::optional<std::size_t> worst;
  std::size_t most = bearable;
  for (std::size_t c = 1; c < layout.widths.size(); ++c) {
    const Column& column = layout.table.columns[c];
    if (layout.under[c] || !column.wrap || column.align != ink::Align::left) continue;
    const bool plain = std::ranges::all_of(layout.table.rows, [&](const TableRow& row) {
      return c >= row.cells.size() || (!row.cells[c].picture && row.cells[c].link.empty());
    });
    if (!plain) continue;
    for (const TableRow& row : layout.table.rows) {
      if (c >= row.cells.size()) continue;
      const Cell& cell = row.cells[c];
      const auto lines = [&](double wide) {
        return wrap(layout.kit, cell.text, wide, layout.height, cell.face).size();
      };
      const std::size_t now = lines(layout.widths[c] - 2 * pad_x);
      if (now <= most || now < times * lines(layout.total - layout.widths[0] - 2 * pad_x)) continue;
      most = now;
      worst = c;
    }
  }
  return worst;
}

void arrange(Layout& layout, double width) {
  for (const Column& column : layout.table.columns) layout.under.push_back(column.under);
  measure(layout, width);
  while (const auto worst = runs_down(layout)) {
    layout.under[*worst] = true;
    measure(layout, width);
  }
}

Picture cell_picture(const Layout& layout, std::size_t c, const Cell& cell) {
  const double inside = layout.widths[c] - 2 * pad_x;
  Picture picture{{}, inside, 0};
  if (cell.picture) {
    picture = *cell.picture;
    if (!cell.text.empty()) picture.height += pad_y;
  }
  if (!cell.text.empty()) {
    Picture text = paragraph(
        layout.kit, cell.text, inside,
        {.height = layout.height, .face = cell.face, .align = layout.table.columns[c].align});
    append(picture.items, moved(std::move(text.items), {0, -picture.height}));
    picture.height += text.height;
  }
  return picture;
}

ink::Stroke rule(double y, double width, double pen) {
  return {ink::Path{}.move({0, y}).line({width, y}), {pen}};
}

// Texts and pictures of a row at the top of the cells; rules come with the caller.
Picture row_picture(const Layout& layout, const std::vector<Cell>& cells) {
  Picture row{{}, layout.total, 0};
  std::vector<Picture> pictures;
  for (std::size_t c = 0; c < cells.size() && c < layout.widths.size(); ++c) {
    pictures.push_back(layout.under[c] ? Picture{} : cell_picture(layout, c, cells[c]));
    row.height = std::max(row.height, pictures.back().height + 2 * pad_y);
  }
  // Beside a picture texts stand at half height, else at the top.
  const bool drawn =
      std::ranges::any_of(cells, [](const Cell& c) { return c.picture.has_value(); });
  double x = 0;
  for (std::size_t c = 0; c < pictures.size(); ++c) {
    const double down = drawn ? (row.height - pictures[c].height) / 2 : pad_y;
    append(row.items, moved(std::move(pictures[c].items), {x + pad_x, -down}));
    if (!cells[c].link.empty() && !layout.under[c])
      row.items.emplace_back(
          ink::Link{{{x, -row.height}, {x + layout.widths[c], 0}}, cells[c].link});
    x += layout.widths[c];
  }
  return row;
}

// The texts that have their place under a row, each after its column's head.
void add_under(const Layout& layout, const std::vector<Cell>& cells, Picture& row) {
  for (std::size_t c = 0; c < cells.size() && c < layout.widths.size(); ++c) {
    if (!layout.under[c] || cells[c].text.empty()) continue;
    std::string words = layout.table.columns[c].head + ": " + cells[c].text;
    for (std::size_t at = 0; (at = words.find('\n', at)) != std::string::npos;)
      words.replace(at, 1, "; ");
    const double left = layout.widths[0] + pad_x;
    Picture text = paragraph(layout.kit, words, layout.total - pad_x - left,
                             {.height = layout.height, .face = cells[c].face});
    append(row.items, moved(std::move(text.items), {left, -row.height}));
    row.height += text.height + pad_y;
  }
}

Picture as_group(Picture picture) {
  ink::Group group{"table", std::move(picture.items)};
  picture.items.clear();
  picture.items.emplace_back(std::move(group));
  return picture;
}

// `more` stands under the head of the first column of words.
Picture head_picture(const Layout& layout, const std::string& more) {
  std::vector<Cell> cells;
  bool said = more.empty();
  for (std::size_t c = 0; c < layout.table.columns.size(); ++c) {
    const Column& column = layout.table.columns[c];
    const bool here = !said && column.wrap && !layout.under[c];
    said = said || here;
    cells.push_back(Cell::bold(here ? column.head + "\n" + more : column.head));
  }
  Picture head = row_picture(layout, cells);
  head.items.emplace_back(rule(0, head.width, layout.kit.look.wide));
  head.items.emplace_back(rule(-head.height, head.width, layout.kit.look.wide));
  return as_group(std::move(head));
}

Picture body_row(const Layout& layout, const TableRow& row, bool last) {
  Picture picture = row_picture(layout, row.cells);
  picture.height = std::max(picture.height, layout.table.least_height);
  add_under(layout, row.cells, picture);
  const ink::Stroke foot =
      rule(-picture.height, picture.width, last ? layout.kit.look.wide : layout.kit.look.narrow);
  picture.items.emplace_back(foot);
  if (row.strong) picture.items.emplace_back(rule(0, picture.width, layout.kit.look.wide));
  append(picture.items, row.claims);
  return as_group(std::move(picture));
}

}  // namespace

Cell Cell::linked(std::string text, std::string target) {
  Cell cell(std::move(text));
  cell.link = std::move(target);
  return cell;
}

Cell Cell::bold(std::string text) {
  Cell cell(std::move(text));
  cell.face = ink::Face::bold;
  return cell;
}

Cell Cell::drawn(Picture picture) {
  Cell cell;
  cell.picture = std::move(picture);
  return cell;
}

Story table(const Kit& kit, const Table& table, double width) {
  Layout layout{kit, table, table.lettering > 0 ? table.lettering : kit.look.lettering, {}, 0, {}};
  arrange(layout, width);
  Picture own = head_picture(layout, {});
  const auto head = std::make_shared<const Picture>(head_picture(layout, table.going_on));
  Story story;
  Block first = of_picture(std::move(own), 0);
  first.keep_with_next = true;
  first.head = head;
  story.push_back(std::move(first));
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const bool last = i + 1 == table.rows.size();
    Block block = of_picture(body_row(layout, table.rows[i], last), 0);
    block.head = head;
    block.keep_with_previous = last && i > 0;
    block.keep_with_next = i == 0 && !last;
    story.push_back(std::move(block));
  }
  story.back().space_after = 5;
  return story;
}

}  // namespace splay::drafting
