// The steps of the report (part of report.h).
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "fabrication/plan.h"

namespace splay::writers {

nlohmann::ordered_json report_steps(const fabrication::Plan& plan);
nlohmann::ordered_json report_chains(const fabrication::Plan& plan);

}  // namespace splay::writers
