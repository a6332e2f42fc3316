// The tables of a project file, one after the other.
#pragma once

#include "model/project.h"
#include "reading/faults.h"
#include "reading/source_text.h"

namespace splay::reading {

// A project with everything that could be read; only good when `faults` has none.
model::Project read_tables(const toml::table& root, const SourceText& source,
                           const model::Registry& registry, Faults& faults);

}  // namespace splay::reading
