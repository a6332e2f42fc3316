#include "writers/report_stock.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "fabrication/buying.h"

namespace splay::writers {

namespace {

using Json = nlohmann::ordered_json;
using fabrication::CutSheet;
using fabrication::Plan;
using fabrication::StockLayout;

Json rect(const packing::OffCut& r) {
  return {{"x", r.x}, {"y", r.y}, {"length", r.width}, {"width", r.height}};
}

Json cut(const packing::SheetCut& c) {
  return {{"axis", c.axis == packing::Axis::x ? "across" : "along"},
          {"at", c.at},
          {"from", c.from},
          {"to", c.to},
          {"trim", c.trim}};
}

Json pieces(const Plan& plan, const StockLayout& layout, const CutSheet& sheet) {
  Json list = Json::array();
  for (const packing::PlacedPart& part : sheet.parts) {
    const fabrication::Wanted& wanted = layout.wanted[static_cast<std::size_t>(part.part)];
    list.push_back({{"part", plan.rows[static_cast<std::size_t>(wanted.row)].mark},
                    {"x", part.x},
                    {"y", part.y},
                    {"length", part.width},
                    {"width", part.height},
                    {"turned", part.turned},
                    {"glued_from", wanted.strips},
                    {"resawn_into", wanted.layers}});
  }
  return list;
}

Json layouts(const Plan& plan, const StockLayout& layout) {
  Json list = Json::array();
  for (const CutSheet& sheet : layout.sheets) {
    const fabrication::Supplied& supply = layout.supplies[sheet.supply];
    Json entry = {{"name", sheet.name},        {"count", sheet.count},
                  {"length", supply.length},   {"width", supply.width},
                  {"on_hand", supply.on_hand}, {"pieces", pieces(plan, layout, sheet)},
                  {"cuts", Json::array()},     {"off_cuts", Json::array()},
                  {"defects", Json::array()}};
    for (const packing::SheetCut& each : sheet.cuts) entry["cuts"].push_back(cut(each));
    for (const fabrication::Leftover& left : sheet.off_cuts) {
      Json kept = rect(left.place);
      kept["name"] = left.name;
      entry["off_cuts"].push_back(std::move(kept));
    }
    for (const packing::OffCut& defect : sheet.defects) entry["defects"].push_back(rect(defect));
    list.push_back(std::move(entry));
  }
  return list;
}

void add_layout(const Plan& plan, const StockLayout& layout, Json& entry) {
  const bool sheet = layout.kind == model::StockKind::sheet;
  entry[sheet ? "sheets" : "boards"] = layout.bought + layout.on_hand;
  entry["bought"] = layout.bought;
  entry["waste_percent"] = layout.waste_percent();
  entry["bound"] = layout.bound;
  if (sheet) entry["bought_if_grain_free"] = layout.bought_if_free;
  entry["layouts"] = layouts(plan, layout);
}

void add_bill(const fabrication::StockBill& bill, Json& entry) {
  if (bill.kind == model::StockKind::board) {
    const double measure = bill.by_volume ? 1e-9 : 1;
    entry[bill.by_volume ? "cubic_metres" : "board_feet"] = {{"finished", bill.finished * measure},
                                                             {"rough", bill.rough * measure},
                                                             {"planned", bill.planned * measure},
                                                             {"billed", bill.billed * measure}};
  }
  entry["waste_factor_percent"] = bill.waste;
}

double money(std::int64_t cents) { return static_cast<double>(cents) / 100; }

Json lines(const std::vector<fabrication::MoneyLine>& all) {
  Json list = Json::array();
  for (const fabrication::MoneyLine& line : all)
    list.push_back(
        {{"what", line.what}, {"reckoning", line.reckoning}, {"amount", money(line.cents)}});
  return list;
}

}  // namespace

Json report_stock(const Plan& plan) {
  Json list = Json::array();
  const fabrication::Bill bill = fabrication::make_bill(plan);
  for (const fabrication::StockUse& use : plan.stock) {
    Json entry = {{"name", use.name},           {"kind", use.kind},     {"material", use.material},
                  {"thickness", use.thickness}, {"pieces", use.pieces}, {"used_area_mm2", use.area},
                  {"length", use.length}};
    for (const StockLayout& layout : plan.layouts)
      if (layout.stock == use.name) add_layout(plan, layout, entry);
    for (const fabrication::StockBill& each : bill.stock)
      if (each.stock == use.name) add_bill(each, entry);
    list.push_back(std::move(entry));
  }
  return list;
}

Json report_money(const Plan& plan) {
  const fabrication::Bill bill = fabrication::make_bill(plan);
  if (!bill.any_money()) return nullptr;
  return {{"currency", *plan.project->buying.currency},
          {"maker", lines(bill.maker)},
          {"cost", money(bill.cost)},
          {"quote", lines(bill.quote)},
          {"net", money(bill.quote_net)},
          {"tax", money(bill.quote_tax)},
          {"total", money(bill.quote_total)},
          {"without_price", bill.unpriced}};
}

}  // namespace splay::writers
