// The parts of the report on hardware and on how the piece holds, moves, stands and passes.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "fabrication/plan.h"

namespace splay::writers {

nlohmann::ordered_json report_hardware(const fabrication::Plan& plan);
nlohmann::ordered_json report_finish(const fabrication::Plan& plan);
nlohmann::ordered_json report_soundness(const fabrication::Plan& plan);

}  // namespace splay::writers
