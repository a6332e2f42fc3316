// What of a project file a client signs: everything but records of what came after.
#pragma once

#include <string>

#include "model/project.h"

namespace splay::reading {

// The project's source without its records, the tables [approval] and [as_built] (each from its
// header to the line before the next header), and without blank space at the end. Adding, changing
// or removing a record leaves it as it was; any other change of the file, a comment included, does
// not. A record written without a header of its own counts as part of what is signed.
std::string signed_text(const model::Project& project);

}  // namespace splay::reading
