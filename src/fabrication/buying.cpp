#include "fabrication/buying.h"

#include <algorithm>
#include <cmath>

#include "fabrication/buying_stock.h"
#include "fabrication/hardware.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

constexpr std::array<std::string_view, 7> per_words{
    "", "square metres", "square feet", "cubic metres", "board feet", "metres", "feet"};

std::string counted(double quantity, int decimals, std::string_view what, double price) {
  return plain_number(quantity, decimals) + " " + std::string(what) + " at " +
         money_text(cents_of(price));
}

std::string piece_word(model::StockKind kind, double quantity) {
  const bool one = std::abs(quantity - 1) < 1e-9;
  switch (kind) {
    case model::StockKind::sheet:
      return one ? "sheet" : "sheets";
    case model::StockKind::board:
      return one ? "board" : "boards";
    default:
      return one ? "roll" : "rolls";
  }
}

std::vector<HardwareBill> bill_hardware(const Plan& plan) {
  std::vector<HardwareBill> bills;
  for (const HardwareLine& line : list_hardware(plan).lines) {
    if (line.count + line.spare == 0) continue;
    HardwareBill bill{line.what, line.size, line.count + line.spare, line.priced, 0, 1, 0, 0};
    if (line.priced) {
      bill.pack = line.pack;
      bill.packs = line.packs();
      bill.price = line.price;
      bill.cents = cents_of(bill.packs * bill.price);
    }
    bills.push_back(std::move(bill));
  }
  return bills;
}

// The lines of the maker's summary, and what each group comes to.
class Reckoning {
 public:
  Reckoning(const Plan& plan, Bill& bill) : buying_(plan.project->buying), bill_(bill) {}

  void run() {
    stocks();
    hardware();
    glue_and_sundries();
    work();
    for (const MoneyLine& line : bill_.maker) bill_.cost += line.cents;
    if (bill_.any_money()) quote();
  }

 private:
  void line(std::string what, std::string reckoning, std::int64_t cents, std::int64_t& group) {
    bill_.maker.push_back({std::move(what), std::move(reckoning), cents});
    group += cents;
  }

  void stocks() {
    for (const StockBill& s : bill_.stock) {
      if (!s.priced) {
        bill_.unpriced.push_back(s.material + " (" + s.stock + ")");
        continue;
      }
      const bool piece = s.per == model::PricePer::piece;
      const std::string unit = piece ? piece_word(s.kind, s.quantity)
                                     : std::string(per_words[static_cast<std::size_t>(s.per)]);
      const int decimals = piece ? 0 : s.per == model::PricePer::cubic_metre ? 4 : 2;
      line(s.material, counted(s.quantity, decimals, unit, s.price), s.cents, materials_);
      if (s.owned_cents > 0)
        line(s.material + " on hand", "at the same price", s.owned_cents, materials_);
    }
  }

  void hardware() {
    for (const HardwareBill& h : bill_.hardware) {
      const std::string name = h.size.empty() ? h.kind : h.kind + ", " + h.size;
      if (!h.priced)
        bill_.unpriced.push_back(name);
      else if (h.pack == 1)
        line(name, std::to_string(h.count) + " at " + money_text(cents_of(h.price)), h.cents,
             hardware_);
      else
        line(name,
             std::to_string(h.count) + " in " + std::to_string(h.packs) + " packs of " +
                 std::to_string(h.pack) + " at " + money_text(cents_of(h.price)),
             h.cents, hardware_);
    }
  }

  void glue_and_sundries() {
    if (buying_.glue.given)
      line(*buying_.glue.what, counted(bill_.glue_kg, 2, "kg", *buying_.glue.price),
           cents_of(bill_.glue_kg * *buying_.glue.price), hardware_);
    for (std::size_t i = 0; i < buying_.sundries.size(); ++i) {
      const model::Sundry& s = buying_.sundries[i];
      line(s.what.given ? *s.what : s.name,
           plain_number(*s.quantity, 2) + " at " + money_text(cents_of(*s.price)),
           cents_of(*s.quantity * *s.price), hardware_);
    }
  }

  void work() {
    for (std::size_t i = 0; i < buying_.work.size(); ++i) {
      const model::Work& w = buying_.work[i];
      const double rate = w.rate.given ? *w.rate : *buying_.labour_rate;
      line("Work: " + w.name, counted(*w.hours, 2, *w.hours == 1 ? "hour" : "hours", rate),
           cents_of(*w.hours * rate), work_);
    }
  }

  // The client sees three sums with the markup in them, and the tax.
  void quote() {
    const double factor = 1 + *buying_.markup / 100;
    const auto add = [&](const char* what, std::int64_t cents) {
      if (cents == 0) return;
      const std::int64_t asked = std::llround(static_cast<double>(cents) * factor);
      bill_.quote.push_back({what, "", asked});
      bill_.quote_net += asked;
    };
    add("Wood and panels", materials_);
    add("Hardware and sundries", hardware_);
    add("Work", work_);
    bill_.quote_tax = std::llround(static_cast<double>(bill_.quote_net) * *buying_.tax / 100);
    bill_.quote_total = bill_.quote_net + bill_.quote_tax;
  }

  const model::Buying& buying_;
  Bill& bill_;
  std::int64_t materials_ = 0, hardware_ = 0, work_ = 0;
};

}  // namespace

Bill make_bill(const Plan& plan) {
  Bill bill;
  bill.stock = bill_stocks(plan);
  bill.hardware = bill_hardware(plan);
  if (plan.project->buying.glue.given) {
    bill.joint_area = glued_area(plan);
    bill.glue_kg = bill.joint_area * 1e-6 * *plan.project->buying.glue.spread / 1000;
  }
  Reckoning(plan, bill).run();
  return bill;
}

std::string money_text(std::int64_t cents) {
  const bool minus = cents < 0;
  const std::uint64_t all = static_cast<std::uint64_t>(minus ? -cents : cents);
  std::string text = std::to_string(all / 100);
  for (std::size_t at = text.size(); at > 3; at -= 3) text.insert(at - 3, ",");
  const std::string rest = std::to_string(all % 100);
  text += rest.size() < 2 ? ".0" + rest : "." + rest;
  return minus ? "-" + text : text;
}

}  // namespace splay::fabrication
