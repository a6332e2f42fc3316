#include "reading/as_built.h"

#include "reading/guards.h"
#include "reading/in_order.h"
#include "reading/sizes.h"
#include "reading/syntax.h"
#include "reading/table_reader.h"

namespace splay::reading {

AsBuiltReading read_as_built(std::string_view source, Unit unit) {
  const SourceText text(source);
  AsBuiltReading reading;
  Faults syntax, faults;
  if (refuse_unreadable(text)) return reading;
  const auto root = parse(text, syntax);
  if (!root) return reading;
  Evaluator evaluator(unit);
  const Sizes no_sizes;
  const ValueReader values(text, evaluator, no_sizes, faults);
  for (const Entry& entry : in_order(*root)) {
    if (entry.key->str() != "as_built") continue;
    if (const auto* table = entry.node->as_table())
      read_table(place_of(entry, *table, "as_built", text), reading.as_built, values, {});
    else
      values.wrong_type(*entry.node, "as_built", "a table: [as_built]");
  }
  reading.diagnostics = std::move(faults).finish();
  return reading;
}

}  // namespace splay::reading
