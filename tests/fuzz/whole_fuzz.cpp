// Text to a printed binder.
#include <cstdlib>
#include <string_view>

#include "constructs/construct.h"
#include "fabrication/plan.h"
#include "fuzz/target.h"
#include "reading/reading.h"
#include "sheets/packet.h"
#include "writers/report.h"
#include "writers/writers.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace splay;
  static const ink::FontSet fonts;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const reading::ProjectReading result =
      reading::read_project(text, "fuzz.toml", constructs::registry());
  if (!result.project) return 0;
  const fabrication::Plan plan =
      fabrication::make_plan(*result.project, constructs::build(*result.project), {});
  if (plan.stopped()) {
    if (writers::report(plan, nullptr).empty()) std::abort();
    return 0;
  }
  const ink::Packet packet = sheets::make_packet(plan, model::Style{}, fonts);
  if (writers::pdf(packet, fonts).empty()) std::abort();
  return 0;
}
