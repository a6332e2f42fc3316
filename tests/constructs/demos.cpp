#include <filesystem>

#include "parts/audit.h"
#include "support/demos.h"
#include "support/piece.h"
#include "writers/files.h"

using namespace splay;

TEST_CASE("every demo project builds without a finding that stops it") {
  int demos = 0;
  for (const std::filesystem::path& file : test::demos()) {
    ++demos;
    INFO(file.filename().string());
    const test::Built built = test::build(test::text_of(file));
    CHECK(built.stops() == "");
    CHECK(built.plan.assembly.parts.size() > 5);
    for (const fabrication::JointReport& joint : built.plan.joints) {
      INFO(joint.name);
      CHECK(joint.gap < 1e-6);
    }
  }
  CHECK(demos >= 6);
}
