// What is wanted of a stock, and what it may be cut from.
#include <algorithm>
#include <cmath>

#include "fabrication/layouts.h"
#include "fabrication/plan.h"
#include "geometry/packing_boards.h"

namespace splay::fabrication {

namespace {

using packing::SheetPart;
using packing::SheetStock;

// Owned material is used first, and among boards the smaller waste of it decides.
constexpr double rack_cost = 0.5;  // of the cost of as large a board bought

constexpr double least_strip = 50;  // mm: a narrower strip of a board is not worth keeping

double kerf_of(const Plan& plan, const model::Stock& stock) {
  return stock.supply.kerf.given ? stock.supply.kerf->mm : plan.project->shop.saw.kerf->mm;
}

bool listed(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

// Copies of a row whose grain is locked, and copies whose grain is free, are two parts of the task.
void want_row(const Plan& plan, const model::Stock& stock, int row, StockLayout& layout) {
  const PartRow& r = plan.rows[static_cast<std::size_t>(row)];
  int count[2] = {0, 0};
  for (const int member : r.members) {
    const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(member)];
    const bool free = !*stock.grain || part.grain == parts::Grain::none ||
                      listed(*stock.supply.may_turn, part.name);
    ++count[free ? 1 : 0];
  }
  for (const bool free : {false, true}) {
    if (count[free] == 0) continue;
    layout.task.parts.push_back({r.blank.x, r.blank.y, count[free], free});
    layout.wanted.push_back({row, count[free], 1, 1, free});
  }
}

void start(const Plan& plan, const model::Stock& stock, StockLayout& layout) {
  layout.stock = stock.name;
  layout.kind = *stock.kind;
  layout.task.kerf = kerf_of(plan, stock);
  const bool sheet = *stock.kind == model::StockKind::sheet;
  const double kept = stock.supply.keep.given ? stock.supply.keep->mm : (sheet ? 150.0 : 300.0);
  layout.task.least_off_cut = sheet ? kept : std::min(kept, least_strip);
  layout.shortest_kept = kept;
}

// Matches whose parts are all there and cut whole; the others are reported by the checks.
void want_matches(const Plan& plan, const model::Stock& stock, StockLayout& layout) {
  std::vector<int> left;
  for (const SheetPart& part : layout.task.parts) left.push_back(part.count);
  for (std::size_t m = 0; m < stock.supply.matches.size(); ++m) {
    const model::Match& match = stock.supply.matches[m];
    packing::Sequence sequence;
    sequence.axis = *match.run == model::MatchRun::end_to_end ? packing::Axis::x : packing::Axis::y;
    std::vector<int> after = left;
    for (const std::string& name : *match.parts) {
      for (std::size_t p = 0; p < layout.wanted.size(); ++p) {
        const Wanted& wanted = layout.wanted[p];
        const auto& members = plan.rows[static_cast<std::size_t>(wanted.row)].members;
        const bool here = std::any_of(members.begin(), members.end(), [&](int member) {
          return plan.assembly.parts[static_cast<std::size_t>(member)].name == name;
        });
        if (!here || wanted.turns != listed(*stock.supply.may_turn, name) || after[p] == 0 ||
            wanted.strips > 1 || wanted.layers > 1)
          continue;
        --after[p];
        sequence.parts.push_back(static_cast<int>(p));
        break;
      }
    }
    if (sequence.parts.size() != match.parts->size()) continue;
    left = after;
    layout.task.sequences.push_back(std::move(sequence));
  }
}

void supply(StockLayout& layout, SheetStock sheet, Supplied what) {
  layout.task.sheets.push_back(sheet);
  layout.supplies.push_back(std::move(what));
}

// A board as one sheet, or as its clear stretches.
void supply_rack(const model::Stock& stock, const model::BoardOnRack& board, int number,
                 StockLayout& layout) {
  const double edge = stock.supply.edge_trim->mm, end = stock.supply.end_trim->mm;
  const double long_mm = board.length->mm, wide = board.width->mm;
  if (board.defects->empty()) {
    supply(layout,
           {long_mm, wide, *board.count, rack_cost * long_mm * wide, {end, end, edge, edge}},
           {board.name, true, long_mm, wide, 0, -1});
    return;
  }
  packing::BoardStock whole{long_mm, 1, 1, end, end, {}};
  for (std::size_t i = 0; i + 1 < board.defects->size(); i += 2)
    whole.blocked.push_back({(*board.defects)[i].mm, (*board.defects)[i + 1].mm});
  for (const packing::Interval& clear : packing::clear_stretches(whole, layout.task.kerf)) {
    const double length = clear.to - clear.from;
    supply(layout, {length, wide, 1, rack_cost * length * wide, {0, 0, edge, edge}},
           {board.name, true, long_mm, wide, clear.from, number});
  }
}

struct BoardSize {
  double length, width;
};

// What the yard sells, or what suits when the author has not said.
std::vector<BoardSize> yard(const Plan& plan, const model::Stock& stock, StockLayout& layout) {
  const model::Supply& s = stock.supply;
  if (stock.size->size() == 2) return {{(*stock.size)[0].mm, (*stock.size)[1].mm}};
  const bool inch = *plan.project->job.units == Unit::inch;
  const double width = s.widths.given ? s.widths->front().mm : (inch ? 6 * 25.4 : 150.0);
  std::vector<BoardSize> sizes;
  for (const Length length : *s.lengths) sizes.push_back({length.mm, width});
  if (!sizes.empty()) return sizes;
  layout.boards_named = s.widths.given || !s.rack.empty();
  const double step = inch ? 304.8 : 100;
  double needed = inch ? 8 * 304.8 : 2400;
  for (const PartRow& row : plan.rows)
    if (row.stock == stock.name) needed = std::max(needed, row.blank.x + 2 * s.end_trim->mm);
  return {{std::ceil(needed / step - 1e-9) * step, width}};
}

void supply_boards(const Plan& plan, const model::Stock& stock, StockLayout& layout) {
  const model::Supply& s = stock.supply;
  for (std::size_t i = 0; i < s.rack.size(); ++i)
    supply_rack(stock, s.rack[i], static_cast<int>(i), layout);
  const double edge = s.edge_trim->mm, end = s.end_trim->mm;
  for (const BoardSize& size : yard(plan, stock, layout))
    supply(layout, {size.length, size.width, -1, size.length * size.width, {end, end, edge, edge}},
           {"", false, size.length, size.width, 0, -1});
}

double widest_clear(const StockLayout& layout, bool wide_rack) {
  double widest = 0;
  for (const SheetStock& sheet : layout.task.sheets)
    if (wide_rack || sheet.count < 0)
      widest = std::max(widest, sheet.height - sheet.trim.bottom - sheet.trim.top);
  return widest;
}

// As few strips of one width as the boards allow.
void glue_up(SheetPart& part, Wanted& wanted, double widest, double jointing) {
  constexpr int most_strips = 60;
  const double whole = part.height;
  for (int n = 1; n <= most_strips; ++n) {
    const double strip = n == 1 ? whole : whole / n + jointing;
    if (strip > widest + 1e-9) continue;
    part.height = strip;
    wanted.strips = n;
    return;
  }
}

// How many pieces one thickness of the stock yields on the band saw; 1 when it is only planed.
int layers_of(const model::Stock& stock, double kerf, double thickness) {
  const double rough = stock.supply.rough.given ? stock.supply.rough->mm : stock.thickness->mm;
  const double each = thickness + stock.supply.planing->mm;
  return std::max(1, static_cast<int>(std::floor((rough + kerf) / (each + kerf) + 1e-9)));
}

}  // namespace

StockLayout sheet_task(const Plan& plan, const model::Stock& stock) {
  StockLayout layout;
  start(plan, stock, layout);
  for (std::size_t r = 0; r < plan.rows.size(); ++r)
    if (plan.rows[r].stock == stock.name) want_row(plan, stock, static_cast<int>(r), layout);
  want_matches(plan, stock, layout);
  const double trim = stock.supply.edge_trim->mm;
  const packing::EdgeTrim edges{trim, trim, trim, trim};
  for (std::size_t i = 0; i < stock.supply.off_cuts.size(); ++i) {
    const model::OffCutOnHand& o = stock.supply.off_cuts[i];
    const double length = (*o.size)[0].mm, width = (*o.size)[1].mm;
    supply(layout, {length, width, *o.count, 0, edges}, {o.name, true, length, width, 0, -1});
  }
  if (stock.size->size() == 2) {
    const double length = (*stock.size)[0].mm, width = (*stock.size)[1].mm;
    supply(layout, {length, width, -1, 1, edges}, {"", false, length, width, 0, -1});
  }
  return layout;
}

StockLayout board_task(const Plan& plan, const model::Stock& stock, bool wide_rack) {
  StockLayout layout;
  start(plan, stock, layout);
  supply_boards(plan, stock, layout);
  const double widest = widest_clear(layout, wide_rack);
  for (std::size_t r = 0; r < plan.rows.size(); ++r) {
    const PartRow& row = plan.rows[r];
    if (row.stock != stock.name) continue;
    const auto quantity = static_cast<int>(row.quantity());
    Wanted wanted{static_cast<int>(r), quantity, 1, 1, false};
    SheetPart part{row.blank.x, row.blank.y, 0, false};
    wanted.layers = std::min(quantity, layers_of(stock, layout.task.kerf, row.finished.z));
    glue_up(part, wanted, widest, stock.supply.jointing->mm);
    part.count = (quantity + wanted.layers - 1) / wanted.layers * wanted.strips;
    layout.task.parts.push_back(part);
    layout.wanted.push_back(wanted);
  }
  want_matches(plan, stock, layout);
  return layout;
}

}  // namespace splay::fabrication
