// The record of what was measured on the finished piece. It is read apart from the project: nothing
// is planned, cut or signed by it.
#pragma once

#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/figure.h"
#include "model/as_built.h"

namespace splay::reading {

struct AsBuiltReading {
  model::AsBuilt as_built;  // `given` when the file has the table
  std::vector<Diagnostic> diagnostics;
};

// [as_built] of a project file; bare numbers are in `unit`, the job's. What else is wrong with the
// file is read_project's to say.
AsBuiltReading read_as_built(std::string_view source, Unit unit);

}  // namespace splay::reading
