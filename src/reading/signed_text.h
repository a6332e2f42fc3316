// What of a project file a client signs: everything but the record of the signing.
#pragma once

#include <string>

#include "model/project.h"

namespace splay::reading {

// The project's source without its [approval] table (from its header to the line before the next
// header) and without blank space at the end. Adding, changing or removing the table leaves it as
// it was; any other change of the file, a comment included, does not.
std::string signed_text(const model::Project& project);

}  // namespace splay::reading
