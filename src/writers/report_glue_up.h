// The stages of the glue-up in the report (part of report.h).
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "fabrication/plan.h"

namespace splay::writers {

nlohmann::ordered_json report_glue_up(const fabrication::Plan& plan);

}  // namespace splay::writers
