#include <set>

#include "joinery/bench.h"

using namespace splay;

TEST_CASE("every joint of the list can be found and made by its word") {
  std::set<std::string_view> words;
  for (const joinery::JointEntry& entry : joinery::registry()) {
    CHECK(words.insert(entry.word).second);
    CHECK(!entry.help.empty());
    REQUIRE(joinery::find_joint(entry.word) == &entry);
    CHECK(entry.make() != nullptr);
  }
  CHECK(joinery::find_joint("nothing of the kind") == nullptr);
}
