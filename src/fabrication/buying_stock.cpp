#include "fabrication/buying_stock.h"

#include <algorithm>
#include <cmath>

#include "fabrication/plan.h"
#include "geometry/packing_boards.h"

namespace splay::fabrication {

namespace {

using model::PricePer;
using model::StockKind;

constexpr double almost = 1e-9;

double up(double value) { return std::ceil(value - 1e-6); }

double nominal_thickness(const model::Stock& stock) {
  if (stock.supply.sold_as.given) return stock.supply.sold_as->mm;
  return stock.supply.rough.given ? stock.supply.rough->mm : stock.thickness->mm;
}

double billed_thickness(const model::Stock& stock) {
  return stock.supply.billed_as.given ? stock.supply.billed_as->mm : nominal_thickness(stock);
}

double rough_thickness(const model::Stock& stock) {
  return stock.supply.rough.given ? stock.supply.rough->mm : stock.thickness->mm;
}

PricePer per_of(const model::Stock& stock, bool by_volume) {
  if (stock.supply.per.given) return *stock.supply.per;
  switch (*stock.kind) {
    case StockKind::board:
      return by_volume ? PricePer::cubic_metre : PricePer::board_foot;
    case StockKind::edge_band:
      return PricePer::metre;
    default:
      return PricePer::piece;
  }
}

// What the sheets or boards of one drawing come to, in every way a price can count. What is sold,
// and how it is billed, is in board feet or mm3.
struct Amount {
  double pieces = 0, area = 0, volume = 0, length = 0, sold = 0, billed = 0;
  void add(const Amount& a) {
    pieces += a.pieces;
    area += a.area;
    volume += a.volume;
    length += a.length;
    sold += a.sold;
    billed += a.billed;
  }
};

Amount amount_of(const model::Stock& stock, double length, double width, double count,
                 bool by_volume) {
  Amount a;
  a.pieces = count;
  a.length = count * length;
  a.area = count * length * width;
  a.volume = a.area * rough_thickness(stock);
  if (by_volume) {
    a.sold = a.area * nominal_thickness(stock);
    a.billed = a.area * billed_thickness(stock);
    return a;
  }
  a.sold = count * board_feet(length, width, nominal_thickness(stock), model::Tally::volume);
  a.billed = count * board_feet(length, width, billed_thickness(stock), *stock.supply.tally);
  return a;
}

double quantity_of(const Amount& a, PricePer per, bool by_volume) {
  switch (per) {
    case PricePer::piece:
      return a.pieces;
    case PricePer::square_metre:
      return a.area / 1e6;
    case PricePer::square_foot:
      return a.area / (304.8 * 304.8);
    case PricePer::cubic_metre:
      return (by_volume ? a.billed : a.volume) / 1e9;
    case PricePer::board_foot:
      return a.billed;
    case PricePer::metre:
      return a.length / 1e3;
    default:
      return a.length / 304.8;
  }
}

// Wood of an area as it is sold.
double sold_of(const model::Stock& stock, double area, bool by_volume) {
  const double thick = nominal_thickness(stock);
  return by_volume ? area * thick : area * std::max(thick, 25.4) / board_foot_mm3;
}

void describe_sheets(const Plan& plan, const StockLayout& layout, StockBill& bill) {
  const FigureStyle figures = plan.project->job.figures();
  for (std::size_t s = 0; s < layout.supplies.size(); ++s) {
    const Supplied& supply = layout.supplies[s];
    int count = 0;
    for (const CutSheet& sheet : layout.sheets) count += sheet.supply == s ? sheet.count : 0;
    if (count == 0) continue;
    std::string text = std::to_string(count) + " of " + figures.text(supply.length) + " by " +
                       figures.with_unit(supply.width);
    if (!supply.name.empty()) text.insert(0, supply.name + ", ");
    (supply.on_hand ? bill.owned : bill.sizes).push_back(std::move(text));
  }
}

// A finished part in the measure of its stock.
double finished_of(const model::Stock& stock, const PartRow& row, bool by_volume) {
  const auto count = static_cast<double>(row.quantity());
  if (*stock.kind == StockKind::board)
    return count * row.finished.x * row.finished.y * row.finished.z /
           (by_volume ? 1 : board_foot_mm3);
  return count * row.finished.x * row.finished.y;
}

// Sheets beyond the layouts, or wood beyond the boards, that the waste factor asks for.
void raise_by_waste(const model::Stock& stock, const Amount& owned, StockBill& bill,
                    Amount& bought) {
  const double factor = 1 + *stock.supply.waste / 100;
  if (bill.kind == StockKind::sheet && stock.size->size() == 2) {
    const double sheet = (*stock.size)[0].mm * (*stock.size)[1].mm;
    const double lacking = bill.finished * factor - bought.area - owned.area;
    bill.extra_sheets = std::max(0, static_cast<int>(up(lacking / sheet)));
    bought.add(
        amount_of(stock, (*stock.size)[0].mm, (*stock.size)[1].mm, bill.extra_sheets, false));
  }
  if (bill.kind == StockKind::board && bought.sold > 0) {
    const double share = (bill.finished * factor - owned.sold) / bought.sold;
    if (share > 1 + almost) {
      bought.area *= share;
      bought.volume *= share;
      bought.length *= share;
      bought.billed *= share;
    }
  }
}

void price(const model::Stock& stock, const Amount& bought, const Amount& owned, double piece_area,
           StockBill& bill) {
  bill.per = per_of(stock, bill.by_volume);
  bill.quantity = quantity_of(bought, bill.per, bill.by_volume);
  bill.priced = stock.supply.price.given;
  bill.price = *stock.supply.price;
  bill.cents = cents_of(bill.quantity * bill.price);
  double worth = quantity_of(owned, bill.per, bill.by_volume);
  if (bill.per == PricePer::piece) worth = piece_area > 0 ? owned.area / piece_area : 0;
  bill.owned_cents = cents_of(worth * bill.price);
}

StockBill bill_layout(const Plan& plan, const StockLayout& layout) {
  const model::Stock& stock = layout.of(*plan.project);
  StockBill bill;
  bill.kind = layout.kind;
  bill.bought = layout.bought;
  bill.on_hand = layout.on_hand;
  bill.by_volume = sold_by_volume(stock, *plan.project->job.units);
  describe_sheets(plan, layout, bill);
  for (const PartRow& row : plan.rows)
    if (row.stock == stock.name) bill.finished += finished_of(stock, row, bill.by_volume);
  Amount bought, owned;
  double piece_area = 0;
  for (const CutSheet& sheet : layout.sheets) {
    const Supplied& supply = layout.supplies[sheet.supply];
    (supply.on_hand ? owned : bought)
        .add(amount_of(stock, supply.length, supply.width, sheet.count, bill.by_volume));
  }
  for (const Supplied& supply : layout.supplies)
    if (!supply.on_hand) piece_area = supply.length * supply.width;
  const bool board = layout.kind == StockKind::board;
  bill.rough = board ? sold_of(stock, layout.used_area, bill.by_volume) : layout.used_area;
  bill.planned = board ? bought.sold : bought.area;
  raise_by_waste(stock, owned, bill, bought);
  bill.billed = board ? bought.billed : bought.area;
  bill.cubic_mm = bought.volume;
  price(stock, bought, owned, piece_area, bill);
  return bill;
}

// Edge band comes by the length; with a size given, in rolls of that length.
StockBill bill_band(const Plan& plan, const model::Stock& stock) {
  StockBill bill;
  bill.kind = StockKind::edge_band;
  packing::BoardTask task;
  double width = 0;
  for (const PartRow& row : plan.rows) {
    if (row.stock != stock.name) continue;
    const auto count = static_cast<double>(row.quantity());
    bill.finished += count * row.finished.x;
    bill.rough += count * row.blank.x;
    width = std::max(width, row.blank.y);
    task.parts.push_back({row.blank.x, static_cast<int>(row.quantity())});
  }
  if (task.parts.empty()) return bill;
  Amount bought;
  bought.length = std::max(bill.rough, bill.finished * (1 + *stock.supply.waste / 100));
  if (stock.size->size() == 2) {
    const double roll = stock.size->front().mm;
    task.boards.push_back({roll, -1, 1, 0, 0, {}});
    bill.bought = static_cast<int>(packing::plan_boards(task, {}).layouts.size());
    bill.bought = std::max(bill.bought, static_cast<int>(up(bought.length / roll)));
    bought.length = bill.bought * roll;
    bought.pieces = bill.bought;
    width = (*stock.size)[1].mm;
    bill.sizes.push_back(std::to_string(bill.bought) + " of " +
                         plan.project->job.figures().with_unit(roll));
  }
  bought.area = bought.length * width;
  bill.planned = bill.billed = bought.length;
  price(stock, bought, {}, 0, bill);
  return bill;
}

}  // namespace

bool sold_by_volume(const model::Stock& stock, Unit unit) {
  const model::Supply& supply = stock.supply;
  if (*stock.kind != StockKind::board) return false;
  if (supply.per.given && *supply.per == PricePer::board_foot) return false;
  return unit == Unit::millimetre && *supply.tally == model::Tally::volume;
}

double board_feet(double length, double width, double thickness, model::Tally tally) {
  const double t = std::max(Length{thickness}.inches(), 1.0);
  const double w = Length{width}.inches(), l = Length{length}.inches() / 12;
  switch (tally) {
    case model::Tally::next_inch_and_foot:
      return t * up(w) * up(l) / 12;
    case model::Tally::surface_measure:
      return t * std::round(w * std::floor(l + 1e-6) / 12);
    default:
      return t * w * l / 12;
  }
}

std::int64_t cents_of(double amount) { return std::llround(amount * 100); }

std::vector<StockBill> bill_stocks(const Plan& plan) {
  std::vector<StockBill> bills;
  const model::Project& project = *plan.project;
  for (std::size_t s = 0; s < project.stocks.size(); ++s) {
    const model::Stock& stock = project.stocks[s];
    StockBill bill;
    const auto layout =
        std::find_if(plan.layouts.begin(), plan.layouts.end(),
                     [&](const StockLayout& each) { return each.stock == stock.name; });
    if (layout != plan.layouts.end())
      bill = bill_layout(plan, *layout);
    else if (*stock.kind == StockKind::edge_band)
      bill = bill_band(plan, stock);
    if (bill.finished <= 0) continue;
    bill.stock = stock.name;
    bill.material = stock.material.given ? *stock.material : stock.name;
    bill.waste = *stock.supply.waste;
    bills.push_back(std::move(bill));
  }
  return bills;
}

}  // namespace splay::fabrication
