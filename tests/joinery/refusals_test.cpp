// What no joint may do, whichever it is.
#include "joinery/bench.h"

#include <cmath>

#include "joinery/butt.h"
#include "joinery/dowel.h"
#include "joinery/half_lap.h"
#include "parts/audit.h"

using namespace splay;
using test::Bench;
using test::Tee;

namespace {

auto says(const char* part_of_it) { return Catch::Matchers::Contains(part_of_it); }

}  // namespace

TEST_CASE("every joint refuses a part of which nothing is left") {
  for (const joinery::JointEntry& entry : joinery::registry()) {
    INFO(entry.word);
    Bench bench = test::lay({});
    bench.add("nothing", {}, Solid{});
    const auto kind = entry.make();
    const std::string host = kind->make(bench.builder, 2, 1);
    const std::string guest = kind->make(bench.builder, 0, 2);
    const char* expected =
        entry.word == "glued" ? "no surface in common" : "Nothing is left of nothing";
    CHECK_THAT(host, says(expected));
    CHECK_THAT(guest, says(expected));
    CHECK(bench.builder.part(0).operations.empty());
    CHECK(bench.builder.part(1).operations.empty());
  }
}

TEST_CASE("a joint is tried first: overlaps, gaps and ends that don't reach") {
  const joinery::ButtKind butt;
  SECTION("a leaning end that reaches the face with one corner only") {
    Tee tee;
    tee.lean = 40 * test::deg;
    tee.past = 2;
    Bench bench = test::lay(tee);
    CHECK_THAT(test::refusal(bench, butt, 0, 1), says("with its whole section"));
  }
  SECTION("a host with a foot that stands in the guest's way") {
    Bench bench;
    Solid body = Solid::box({-300, -20, -20}, {300, 20, 20});
    body.add_disjoint(Solid::box({5, 20, -20}, {300, 60, 20}));
    bench.add("host", {}, std::move(body));
    bench.bar("guest", frame({0, 20, 0}, {0, -1, 0}, {0, 0, 1}), -200, 30, 30, 20);
    CHECK_THAT(test::refusal(bench, butt, 0, 1), says("still be in the same place"));
  }
  SECTION("a shallow recess under the guest") {
    Bench bench;
    Solid body = Solid::box({-300, -20, -20}, {300, 20, 20});
    body.subtract(Solid::box({5, 19.5, -30}, {300, 30, 30}));
    bench.add("host", {}, std::move(body));
    bench.bar("guest", frame({0, 20, 0}, {0, -1, 0}, {0, 0, 1}), -200, 30, 30, 20);
    CHECK_THAT(test::refusal(bench, butt, 0, 1), says("would stay 0.5 mm apart"));
  }
}

TEST_CASE("fasteners refuse a surface that isn't there") {
  joinery::DowelKind dowel;
  SECTION("a mitre of parts at different heights") {
    dowel.on.value = joinery::BedOn::mitre;
    Bench bench;
    bench.bar("host", {}, -150, 400, 40, 20);
    bench.bar("guest", frame({0, 0, 50}, {0, 1, 0}, {0, 0, 1}), -150, 400, 40, 20);
    CHECK_THAT(test::refusal(bench, dowel, 0, 1), says("no surface in common"));
  }
  SECTION("a gap in the middle of the joint") {
    dowel.on.value = joinery::BedOn::touching;
    dowel.count.value = 1;
    Bench bench;
    Solid body = Solid::box({-200, -40, -20}, {200, 40, 0});
    body.subtract(Solid::box({-200, -10, -10}, {200, 10, 10}));
    bench.add("host", {}, std::move(body));
    bench.bar("guest", frame({0, 0, 10}, {0, 1, 0}, {0, 0, 1}), -200, 200, 60, 20);
    CHECK_THAT(test::refusal(bench, dowel, 0, 1), says("has no middle"));
  }
}

// One fault, one finding: that the parts overlap follows from it.
TEST_CASE("what overlaps or floats for want of a joint that was refused isn't said again") {
  Tee tee;
  tee.lean = 40 * test::deg;
  tee.past = 2;
  Bench bench = test::lay(tee);
  const auto codes = [](Bench& of) {
    std::string text;
    for (const Finding& finding : std::move(of.builder).finish().findings)
      text += finding.code + " ";
    return text;
  };
  Bench unasked = test::lay(tee);
  CHECK_THAT(codes(unasked), says("overlap"));
  REQUIRE(joinery::ButtKind().make(bench.builder, 0, 1) != "");
  CHECK(bench.builder.left_apart(0));
  CHECK(bench.builder.left_apart(1));
  CHECK(codes(bench) == "");
}

TEST_CASE("the audit finds mated surfaces that don't meet") {
  Bench bench;
  const Solid block = Solid::box({0, 0, 0}, {100, 50, 20});
  const int a = bench.add("one", {}, block);
  Rigid apart;
  apart.origin = {0, 0, 20.5};
  const int b = bench.add("other", apart, block);
  bench.builder.add_joint({"one to other", "glued", {a, b}, 0, {{a, b, {{0, 0, 1}, 20}}}});
  const parts::Assembly assembly = std::move(bench.builder).finish();
  REQUIRE(assembly.findings.size() == 1);
  CHECK(assembly.findings.front().code == "open-joint");
  CHECK_THAT(assembly.findings.front().text, says("stay 0.5 mm apart"));
}

// Surfaces as printed figures leave them: turned and further off than a designed joint's may be.
TEST_CASE("a joint of parts cut a little off is measured where a designed one has no surface") {
  parts::Assembly assembly;
  assembly.parts.resize(2);
  assembly.parts[0].world = Solid::box({0, 0, 0}, {100, 50, 20});
  constexpr double off = 1.2, turn = 5 * test::deg;
  const Vec3 up{-std::sin(turn), 0, std::cos(turn)};
  assembly.parts[1].world = Solid::box({0, 0, 20}, {20, 50, 40});
  assembly.parts[1].world.keep(Plane::through({0, 0, 20 + off}, -up));
  parts::Joint joint{"it", "housing", {0, 1}, 0, {{0, 1, {{0, 0, 1}, 20}}}};
  CHECK(std::isinf(parts::joint_gap(joint, assembly)));
  CHECK(parts::joint_gap(joint, assembly, parts::loose_search) ==
        Approx(off + 20 * std::tan(turn)));
}
