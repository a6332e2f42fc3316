// What to buy, and what it costs. Money is in hundredths of the currency, rounded once for each
// line; totals add the rounded lines, so that a page adds up.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "model/project.h"

namespace splay::fabrication {

struct Plan;

// A board foot is a foot square and an inch thick: 144 cubic inches.
inline constexpr double board_foot_mm3 = 144 * 25.4 * 25.4 * 25.4;

// Board feet of one board as a yard counts it (all mm); under an inch counts as an inch.
double board_feet(double length, double width, double thickness, model::Tally tally);

// Whether a yard sells these boards by the cubic metre, not by the board foot: in a metric job,
// where neither the price nor the tally says otherwise.
bool sold_by_volume(const model::Stock& stock, Unit unit);

// One stock: how much is needed, bought, billed.
struct StockBill {
  std::string stock, material;
  model::StockKind kind = model::StockKind::sheet;
  std::vector<std::string> sizes;  // "2 of 96 by 48 in": what to buy
  std::vector<std::string> owned;  // "left-over, 1 of 40 by 20 in"
  int bought = 0, on_hand = 0;     // sheets or boards; rolls of edge band
  int extra_sheets = 0;            // beyond the layouts, by the waste factor
  bool by_volume = false;          // boards in mm3, by the thickness they are sold by
  // mm2 for sheets, board feet or mm3 for boards, mm for edge band:
  double finished = 0;  // of the finished parts
  double rough = 0;     // of the blanks
  double planned = 0;   // of the whole sheets or boards bought, by volume
  double billed = 0;    // the same as the yard counts it, raised to the waste factor
  double waste = 0;     // percent: the waste factor
  double cubic_mm = 0;  // volume bought, at the rough thickness
  bool priced = false;
  model::PricePer per = model::PricePer::piece;
  double quantity = 0, price = 0;  // of what the price is for
  std::int64_t cents = 0;
  std::int64_t owned_cents = 0;  // what the used stock on hand would cost
};

struct HardwareBill {
  std::string kind, size;
  int count = 0;
  bool priced = false;
  int packs = 0, pack = 1;
  double price = 0;  // of a pack
  std::int64_t cents = 0;
};

struct MoneyLine {
  std::string what;
  std::string reckoning;  // "3 sheets at 84.00"
  std::int64_t cents = 0;
};

struct Bill {
  std::vector<StockBill> stock;
  std::vector<HardwareBill> hardware;
  double joint_area = 0;  // mm2: of the surfaces that meet in joints
  double glue_kg = 0;
  std::vector<MoneyLine> maker;  // everything, line by line
  std::int64_t cost = 0;         // the sum of it
  std::vector<MoneyLine> quote;  // materials, hardware and sundries, work: with the markup
  std::int64_t quote_net = 0, quote_tax = 0, quote_total = 0;
  std::vector<std::string> unpriced;  // what has no price: the sums are without it

  bool any_money() const { return !maker.empty(); }
};

// From a plan whose layouts are made.
Bill make_bill(const Plan& plan);

std::string money_text(std::int64_t cents);  // "1,234.50"

}  // namespace splay::fabrication
