#include <catch2/catch.hpp>

#include "drafting/scale.h"

using namespace splay;
using namespace splay::drafting;

TEST_CASE("the largest standard scale that fits") {
  // 1219.2 x 673.1 mm (48 x 26 1/2 in) into 170 x 200 mm of paper: 1:8 would take 152.4 mm.
  CHECK(largest_scale(Unit::inch, {1219.2, 673.1}, {170, 200}) == Scale{1, 8});
  CHECK(largest_scale(Unit::inch, {1219.2, 673.1}, {150, 200}) == Scale{1, 12});
  CHECK(largest_scale(Unit::millimetre, {1219.2, 673.1}, {170, 200}) == Scale{1, 10});
  CHECK(largest_scale(Unit::millimetre, {100, 50}, {100, 50}) == Scale{1, 1});
  CHECK(largest_scale(Unit::millimetre, {10, 5}, {100, 50}) == Scale{1, 1});
  CHECK(largest_scale(Unit::millimetre, {10, 5}, {100, 50}, true) == Scale{10, 1});
  CHECK(largest_scale(Unit::millimetre, {1e6, 1e6}, {10, 10}) == Scale{1, 1000});
}

TEST_CASE("every step down is the next of the series, and the last stays") {
  for (const Unit unit : {Unit::inch, Unit::millimetre}) {
    Scale scale = largest_scale(unit, {1, 1}, {1000, 1000}, true);
    int steps = 0;
    for (Scale next = next_smaller(scale, unit); !(next == scale);
         next = next_smaller(scale, unit), ++steps) {
      CHECK(next.ratio() < scale.ratio());
      scale = next;
    }
    CHECK(steps == (unit == Unit::inch ? 12 : 13));
  }
}

TEST_CASE("scales in words") {
  CHECK(text({1, 1}, Unit::inch) == "1:1 (full size)");
  CHECK(text({1, 2}, Unit::inch) == "1:2 (half size)");
  CHECK(text({1, 8}, Unit::inch) == "1:8 (1 1/2 in = 1 ft)");
  CHECK(text({1, 16}, Unit::inch) == "1:16 (3/4 in = 1 ft)");
  CHECK(text({1, 96}, Unit::inch) == "1:96 (1/8 in = 1 ft)");
  CHECK(text({1, 10}, Unit::millimetre) == "1:10");
  CHECK(short_text({2, 1}) == "2:1");
}
