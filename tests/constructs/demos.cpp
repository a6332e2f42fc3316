#include <filesystem>

#include "parts/audit.h"
#include "support/piece.h"
#include "writers/files.h"

using namespace splay;

TEST_CASE("every demo project builds without a finding that stops it") {
  int demos = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(SPLAYBOOK_SOURCE_DIR) + "/projects")) {
    if (entry.path().extension() != ".toml") continue;
    ++demos;
    INFO(entry.path().filename().string());
    const test::Built built = test::build(writers::read_file(entry.path(), 1 << 20));
    CHECK(built.stops() == "");
    CHECK(built.plan.assembly.parts.size() > 5);
    for (const fabrication::JointReport& joint : built.plan.joints) {
      INFO(joint.name);
      CHECK(joint.gap < 1e-6);
    }
  }
  CHECK(demos >= 6);
}
