#include "fabrication/layouts.h"

#include <algorithm>
#include <cmath>

#include "fabrication/layouts_checks.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

using packing::OffCut;
using packing::SheetCut;
using packing::SheetLayout;

constexpr double same = 1e-3;  // mm, as the layouts are rounded

// Makes a cut in the region that it runs through from edge to edge; how wide the near side is left.
double saw(std::vector<OffCut>& regions, const SheetCut& cut, double kerf) {
  for (OffCut& r : regions) {
    const bool across = cut.axis == packing::Axis::x;
    const double from = across ? r.y : r.x, to = from + (across ? r.height : r.width);
    const double begin = across ? r.x : r.y, end = begin + (across ? r.width : r.height);
    if (std::abs(from - cut.from) > same || std::abs(to - cut.to) > same) continue;
    if (cut.at + kerf <= begin || cut.at >= end) continue;
    OffCut far = r;
    (across ? r.width : r.height) = cut.at - begin;
    (across ? far.x : far.y) = cut.at + kerf;
    (across ? far.width : far.height) = end - cut.at - kerf;
    regions.push_back(far);
    return cut.at - begin;
  }
  return 0;
}

bool at_place(const OffCut& r, double x, double y) {
  return std::abs(r.x - x) < same && std::abs(r.y - y) < same;
}

// Along the board by `by`: from a stretch to the whole.
CutSheet shifted(const SheetLayout& layout, const std::vector<OffCut>& waste, double by,
                 double shortest_kept) {
  CutSheet sheet;
  for (packing::PlacedPart part : layout.parts) {
    part.x += by;
    sheet.parts.push_back(part);
  }
  for (SheetCut cut : layout.cuts) {
    (cut.axis == packing::Axis::x ? cut.at : cut.from) += by;
    if (cut.axis == packing::Axis::y) cut.to += by;
    sheet.cuts.push_back(cut);
  }
  for (OffCut o : layout.off_cuts) {
    o.x += by;
    if (o.width >= shortest_kept)
      sheet.off_cuts.push_back({"", o});
    else
      sheet.waste.push_back(o);
  }
  for (OffCut o : waste) {
    o.x += by;
    sheet.waste.push_back(o);
  }
  return sheet;
}

template <class T>
void add_all(std::vector<T>& to, const std::vector<T>& from) {
  to.insert(to.end(), from.begin(), from.end());
}

// The crosscuts that free the used stretches of a board, from its left end on; between the
// stretches lie its defects.
void cut_stretches(const StockLayout& layout, const std::vector<std::size_t>& used,
                   CutSheet& sheet) {
  const Supplied& board = layout.supplies[sheet.supply];
  const double kerf = layout.task.kerf;
  std::vector<SheetCut> first;
  double freed = 0;  // right side of the last kerf
  double clear = 0;  // the longest stretch passed over since
  const auto leave = [&](double to) {
    if (to - freed <= same) return;
    const OffCut piece{freed, 0, to - freed, board.width};
    if (clear >= layout.shortest_kept)
      sheet.off_cuts.push_back({"", piece});  // goes back to the rack, defects and all
    else
      sheet.defects.push_back(piece);
  };
  for (std::size_t s = 0; s < layout.supplies.size(); ++s) {
    if (layout.supplies[s].board != board.board) continue;
    const double from = layout.supplies[s].from, to = from + layout.task.sheets[s].width;
    if (std::find(used.begin(), used.end(), s) == used.end()) {
      clear = std::max(clear, to - from);
      continue;
    }
    if (from - freed > same) first.push_back({packing::Axis::x, from - kerf, 0, board.width, true});
    leave(from - kerf);
    if (board.length - to > same) first.push_back({packing::Axis::x, to, 0, board.width, true});
    freed = to + kerf;
    clear = 0;
  }
  leave(board.length);
  sheet.cuts.insert(sheet.cuts.begin(), first.begin(), first.end());
}

// The stretches of one board in one drawing.
CutSheet whole_board(const StockLayout& layout, int board) {
  CutSheet sheet;
  std::vector<std::size_t> used;
  for (const SheetLayout& piece : layout.plan.layouts) {
    const auto supply = static_cast<std::size_t>(piece.stock);
    if (layout.supplies[supply].board != board) continue;
    CutSheet one = shifted(piece, waste_of(layout.task, piece), layout.supplies[supply].from,
                           layout.shortest_kept);
    if (used.empty()) sheet.supply = supply;
    used.push_back(supply);
    add_all(sheet.parts, one.parts);
    add_all(sheet.cuts, one.cuts);
    add_all(sheet.off_cuts, one.off_cuts);
    add_all(sheet.waste, one.waste);
  }
  cut_stretches(layout, used, sheet);
  return sheet;
}

bool same_pieces(const SheetLayout& a, const SheetLayout& b) {
  if (a.stock != b.stock || a.parts.size() != b.parts.size() || a.cuts.size() != b.cuts.size())
    return false;
  for (std::size_t i = 0; i < a.parts.size(); ++i) {
    const packing::PlacedPart &p = a.parts[i], &q = b.parts[i];
    if (p.part != q.part || p.turned != q.turned || p.sequence != q.sequence ||
        std::abs(p.x - q.x) > same || std::abs(p.y - q.y) > same)
      return false;
  }
  return true;
}

void gather_sheets(StockLayout& layout) {
  std::vector<int> boards_done;
  const SheetLayout* last = nullptr;
  for (const SheetLayout& piece : layout.plan.layouts) {
    const auto supply = static_cast<std::size_t>(piece.stock);
    const int board = layout.supplies[supply].board;
    if (board >= 0) {
      last = nullptr;
      if (std::find(boards_done.begin(), boards_done.end(), board) != boards_done.end()) continue;
      boards_done.push_back(board);
      layout.sheets.push_back(whole_board(layout, board));
      continue;
    }
    if (last != nullptr && same_pieces(*last, piece)) {
      ++layout.sheets.back().count;
      continue;
    }
    layout.sheets.push_back(shifted(piece, waste_of(layout.task, piece), 0, layout.shortest_kept));
    layout.sheets.back().supply = supply;
    last = &piece;
  }
}

void name_sheets(StockLayout& layout) {
  int number = 0, off_cut = 0;
  for (CutSheet& sheet : layout.sheets) {
    const int first = number + 1;
    number += sheet.count;
    sheet.name = layout.stock + " " + std::to_string(first);
    if (sheet.count > 1)
      sheet.name += (sheet.count > 2 ? " to " : " and ") + std::to_string(number);
    for (Leftover& left : sheet.off_cuts)
      left.name = layout.stock + " off-cut " + std::to_string(++off_cut);
  }
}

void count_sheets(StockLayout& layout) {
  for (const CutSheet& sheet : layout.sheets) {
    const Supplied& supply = layout.supplies[sheet.supply];
    (supply.on_hand ? layout.on_hand : layout.bought) += sheet.count;
    layout.whole_area += sheet.count * supply.length * supply.width;
    for (const packing::PlacedPart& part : sheet.parts)
      layout.used_area += sheet.count * part.width * part.height;
    for (const Leftover& left : sheet.off_cuts)
      layout.off_cut_area += sheet.count * left.place.width * left.place.height;
  }
  // Each sheet costs at most the dearest that is bought, so a cost takes at least so many of them,
  // after all on hand that costs something is used up.
  double dearest = 0, owned = 0;
  for (std::size_t s = 0; s < layout.supplies.size(); ++s) {
    const packing::SheetStock& sheet = layout.task.sheets[s];
    if (layout.supplies[s].on_hand)
      owned += sheet.cost * static_cast<double>(sheet.count);
    else
      dearest = std::max(dearest, sheet.cost);
  }
  if (dearest > 0)
    layout.bound =
        std::max(0, static_cast<int>(std::ceil((layout.plan.bound - owned) / dearest - 1e-6)));
}

bool grain_is_locked(const StockLayout& layout) {
  return std::any_of(layout.task.parts.begin(), layout.task.parts.end(),
                     [](const packing::SheetPart& part) { return !part.may_turn; });
}

// Sheets bought if every part could turn.
int bought_if_free(const StockLayout& layout, const packing::Effort& effort) {
  if (layout.kind != model::StockKind::sheet || layout.bought < 2 || !grain_is_locked(layout))
    return layout.bought;
  packing::SheetTask free = layout.task;
  for (packing::SheetPart& part : free.parts) part.may_turn = true;
  const packing::SheetPlan plan = packing::plan_sheets(free, effort);
  if (!plan.unplaced.empty()) return layout.bought;
  return std::min(layout.bought, static_cast<int>(std::lround(plan.cost)));
}

}  // namespace

std::vector<OffCut> waste_of(const packing::SheetTask& task, const SheetLayout& layout) {
  const packing::SheetStock& sheet = task.sheets[static_cast<std::size_t>(layout.stock)];
  std::vector<OffCut> regions = {{0, 0, sheet.width, sheet.height}};
  for (const SheetCut& cut : layout.cuts) saw(regions, cut, task.kerf);
  std::erase_if(regions, [&](const OffCut& r) {
    const bool part = std::any_of(layout.parts.begin(), layout.parts.end(),
                                  [&](const auto& p) { return at_place(r, p.x, p.y); });
    const bool kept = std::any_of(layout.off_cuts.begin(), layout.off_cuts.end(),
                                  [&](const auto& o) { return at_place(r, o.x, o.y); });
    return part || kept || r.width < same || r.height < same;
  });
  return regions;
}

void draw_up(StockLayout& layout) {
  gather_sheets(layout);
  for (CutSheet& sheet : layout.sheets) {
    const Supplied& whole = layout.supplies[sheet.supply];
    std::vector<OffCut> regions = {{0, 0, whole.length, whole.width}};
    for (const SheetCut& cut : sheet.cuts)
      sheet.settings.push_back(saw(regions, cut, layout.task.kerf));
  }
  name_sheets(layout);
  count_sheets(layout);
}

void lay_out(Plan& plan, const packing::Effort& effort) {
  const model::Project& project = *plan.project;
  for (std::size_t s = 0; s < project.stocks.size(); ++s) {
    const model::Stock& stock = project.stocks[s];
    if (*stock.kind == model::StockKind::edge_band) continue;
    const bool sheet = *stock.kind == model::StockKind::sheet;
    StockLayout layout = sheet ? sheet_task(plan, stock) : board_task(plan, stock, true);
    if (layout.task.parts.empty()) continue;
    layout.plan = packing::plan_sheets(layout.task, effort);
    if (!layout.plan.unplaced.empty() && !stock.supply.rack.empty()) {
      // The rack's wide boards do not suffice: strips that any board gives.
      StockLayout narrow = board_task(plan, stock, false);
      narrow.plan = packing::plan_sheets(narrow.task, effort);
      if (narrow.plan.unplaced.empty()) layout = std::move(narrow);
    }
    draw_up(layout);
    layout.bought_if_free = bought_if_free(layout, effort);
    plan.layouts.push_back(std::move(layout));
  }
  check_layouts(plan);
}

}  // namespace splay::fabrication
