// The stocks of a bill (part of buying.h).
#pragma once

#include "fabrication/buying.h"

namespace splay::fabrication {

std::vector<StockBill> bill_stocks(const Plan& plan);

std::int64_t cents_of(double amount);

}  // namespace splay::fabrication
