// Arithmetic over sizes: a value or a trouble.
#include <cmath>
#include <cstdlib>
#include <string_view>

#include "fuzz/target.h"
#include "reading/expression.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace splay::reading;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  Evaluator evaluator(splay::Unit::inch);
  for (const Kind wanted : {length_kind, angle_kind, plain_kind}) {
    try {
      if (!std::isfinite(evaluator.evaluate_as(wanted, text, {}))) std::abort();
    } catch (const Trouble&) {
      // Said with its place by the reader.
    }
  }
  return 0;
}
