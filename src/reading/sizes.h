// [sizes]: the author's own names for sizes, which may refer to each other in any order.
#pragma once

#include "reading/expression.h"
#include "reading/faults.h"
#include "reading/source_text.h"

namespace splay::reading {

// A number without a unit is a length in the job's unit; "12 deg" an angle, "3 times" a number.
Sizes read_sizes(const toml::table& table, const SourceText& source, Evaluator& evaluator,
                 Faults& faults);

}  // namespace splay::reading
