// The stock and the money of the report (part of report.h).
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "fabrication/plan.h"

namespace splay::writers {

nlohmann::ordered_json report_stock(const fabrication::Plan& plan);
nlohmann::ordered_json report_money(const fabrication::Plan& plan);  // null without a price

}  // namespace splay::writers
