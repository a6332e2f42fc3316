// The form of the report (report.h) as a JSON Schema, draft 2020-12.
#pragma once

#include <string>

namespace splay::writers {

std::string report_schema();

}  // namespace splay::writers
