// The form of a project file as a JSON Schema for text editors that know TOML: from the fields
// themselves, so that it says what reading takes.
#pragma once

#include <string>

#include "model/project.h"

namespace splay::writers {

// Draft 7, which editors take most widely. Lengths, angles and numbers may be numbers or texts (a
// fraction, a unit, arithmetic); ranges are left to reading, which knows the units.
std::string project_schema(const model::Registry& registry);

}  // namespace splay::writers
