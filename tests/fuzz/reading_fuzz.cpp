// Text to findings: whatever the bytes are, faults with places or a project, never both.
#include <cstdlib>
#include <string_view>

#include "constructs/construct.h"
#include "fuzz/target.h"
#include "reading/reading.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace splay;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const reading::ProjectReading result =
      reading::read_project(text, "fuzz.toml", constructs::registry());
  if (result.project.has_value() != result.diagnostics.empty()) std::abort();
  for (const Diagnostic& fault : result.diagnostics)
    if (describe(fault, "fuzz.toml", text).empty()) std::abort();
  (void)reading::read_style(text, "fuzz");
  return 0;
}
