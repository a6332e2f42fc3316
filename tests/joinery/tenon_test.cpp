#include "joinery/tenon.h"

#include <cmath>

#include "joinery/bench.h"

using namespace splay;
using joinery::TenonKind;
using test::Bench;
using test::deg;
using test::Tee;

namespace {

// Guest: its length to the shoulder and the tenon. Host: the tenon's section over length and gap.
void check_blind(const Tee& tee, const TenonKind& kind) {
  const double host = tee.host_width * tee.host_thickness * tee.host_length;
  const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
  const double thick = kind.thickness.given ? kind.thickness->mm : tee.guest_thickness / 3;
  const double shoulder = std::min(6.35, tee.guest_width / 6);
  const double section = thick * (tee.guest_width - 2 * shoulder);
  const double length = kind.length.given ? kind.length->mm : tee.room() * 2 / 3;
  const double stock = tee.guest_width * tee.guest_thickness;
  CHECK(made.part("guest").body.volume() ==
        Approx(stock * tee.guest_length + section * length).epsilon(1e-9));
  if (tee.taper == 0)
    CHECK(made.part("host").body.volume() ==
          Approx(host - section * (length + kind.bottom_gap.value.mm)).epsilon(1e-9));
  CHECK(made.joint().mates.size() == 5);
}

TenonKind tenon_of(double length) {
  TenonKind kind;
  kind.length.value = {length};
  kind.length.given = true;
  return kind;
}

}  // namespace

TEST_CASE("tenon: square, leaning, and 200 skew and rolled ones") {
  check_blind({}, TenonKind{});
  Tee leaning;
  leaning.lean = 15 * deg;
  check_blind(leaning, TenonKind{});
  test::Chance chance(12);
  for (int i = 0; i < 200; ++i) {
    INFO("case " << i);
    Tee tee = test::random_tee(chance, 25 * deg, 10 * deg, 180 * deg);
    if (i % 3 == 0) tee.taper = chance.between(-4, 4) * deg;
    check_blind(tee, tenon_of(chance.between(8, 20)));
  }
}

TEST_CASE("tenon: the shoulder of a leaning rail lies on the host's face") {
  Tee tee;
  tee.lean = 15 * deg;
  const test::Made made = test::make_sound(test::lay(tee), TenonKind{}, 0, 1);
  const parts::Operation& shoulder = made.operation("guest", "shoulder against host");
  CHECK(shoulder.kind == parts::OperationKind::shoulder);
  CHECK(std::asin(std::abs(shoulder.cut.n.y)) / deg == Approx(15));
  const Plane world = made.part("guest").place.plane(shoulder.cut);
  CHECK(std::abs(world.n.y) == Approx(1));
  CHECK(std::abs(world.d) == Approx(tee.host_width / 2));
}

TEST_CASE("tenon: through, flush and proud") {
  TenonKind kind;
  kind.through.value = true;
  test::Chance chance(13);
  for (int i = 0; i < 50; ++i) {
    INFO("case " << i);
    kind.proud.value = {i % 2 == 0 ? 0.0 : 6.0};
    Tee tee = test::random_tee(chance, 20 * deg, 5 * deg, 10 * deg);
    const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
    const double shoulder = std::min(6.35, tee.guest_width / 6);
    const double section = tee.guest_thickness / 3 * (tee.guest_width - 2 * shoulder);
    const double length = tee.room() + kind.proud.value.mm / tee.cosine();
    CHECK(made.part("guest").body.volume() ==
          Approx(tee.guest_width * tee.guest_thickness * tee.guest_length + section * length)
              .epsilon(1e-9));
    CHECK(made.part("host").body.volume() ==
          Approx(tee.host_width * tee.host_thickness * tee.host_length - section * tee.room())
              .epsilon(1e-9));
  }
}

TEST_CASE("tenon: a haunch fills its own groove") {
  Tee tee;
  for (const auto at : {joinery::HaunchAt::high_edge, joinery::HaunchAt::low_edge}) {
    for (const double lean : {0.0, 15 * deg}) {
      TenonKind kind = tenon_of(25);
      kind.haunch.value = {8};
      kind.haunch.given = true;
      kind.haunch_at.value = at;
      tee.lean = lean;
      const test::Made made = test::make_sound(test::lay(tee), kind, 0, 1);
      const double strip = tee.guest_width / 3, thick = tee.guest_thickness / 3;
      const double width = tee.guest_width - strip - 6.35;
      CHECK(made.part("guest").body.volume() ==
            Approx(tee.guest_width * tee.guest_thickness * tee.guest_length +
                   thick * (width * 25 + strip * 8))
                .epsilon(1e-9));
    }
  }
}

// https://staging.canadianwoodworking.com/from_robs_bench/one-divider-preferably-with-joinery/ : a
// divider with 1/4 in tenons on both ends is 1/2 in longer than from shoulder to shoulder.
TEST_CASE("tenon: a rail from shoulder to shoulder is longer by both its tenons") {
  const double inch = 25.4;
  for (const double lean : {0.0, 15 * deg}) {
    Bench bench;
    const double shoulders = 24 * inch;
    // Two posts that lean alike, a level rail between them.
    const Vec3 up{std::sin(lean), 0, std::cos(lean)};
    const double reach = shoulders / 2 + inch / std::cos(lean);
    const int left =
        bench.bar("left", frame({-reach, 0, 0}, up, {0, 1, 0}), -300, 300, 2 * inch, 1.5 * inch);
    const int right =
        bench.bar("right", frame({reach, 0, 0}, up, {0, 1, 0}), -300, 300, 2 * inch, 1.5 * inch);
    const int rail = bench.bar("rail", {}, -500, 500, 0.75 * inch, 2.5 * inch);
    TenonKind kind = tenon_of(inch / 4);
    kind.cheeks.value = joinery::Cheeks::edges;
    REQUIRE(kind.make(bench.builder, left, rail) == "");
    REQUIRE(kind.make(bench.builder, right, rail) == "");
    const parts::Assembly assembly = std::move(bench.builder).finish();
    CHECK(assembly.findings.empty());
    const parts::Part& made = assembly.parts[static_cast<std::size_t>(rail)];
    // Along the middle of the rail, between the planes of its ends and of its shoulders.
    const auto along = [&](parts::OperationKind wanted) {
      double low = 0, high = 0;
      for (const parts::Operation& each : made.operations) {
        if (each.kind != wanted) continue;
        const Vec3 middle = made.size * 0.5;
        const double x =
            (each.cut.d - each.cut.n.y * middle.y - each.cut.n.z * middle.z) / each.cut.n.x;
        (each.cut.n.x > 0 ? high : low) = x;
      }
      return high - low;
    };
    CHECK(along(parts::OperationKind::shoulder) == Approx(shoulders).epsilon(1e-12));
    CHECK(along(parts::OperationKind::end_cut) == Approx(shoulders + inch / 2).epsilon(1e-12));
    if (lean == 0) CHECK(made.size.x == Approx(shoulders + inch / 2).epsilon(1e-12));
  }
}

TEST_CASE("tenon: two in one leg, mitred where they meet") {
  for (const double lean : {0.0, 5 * deg}) {
    Bench bench;
    const Vec3 up = unit(Vec3{-std::tan(lean), -std::tan(lean), 1});
    const int leg = bench.bar("leg", frame({}, up, {0, 1, 0}), -300, 300, 45, 45);
    const int one = bench.bar("one", frame({}, {1, 0, 0}, {0, 1, 0}), -60, 400, 80, 20);
    const int other = bench.bar("other", frame({}, {0, 1, 0}, {1, 0, 0}), -60, 400, 80, 20);
    TenonKind kind = tenon_of(35);
    kind.limit = Plane::through({}, {-1, 1, 0});
    REQUIRE(kind.make(bench.builder, leg, one) == "");
    kind.limit = Plane::through({}, {1, -1, 0});
    REQUIRE(kind.make(bench.builder, leg, other) == "");
    const parts::Assembly assembly = std::move(bench.builder).finish();
    for (const Finding& finding : assembly.findings) FAIL_CHECK(finding.text);
    for (const parts::Joint& joint : assembly.joints)
      CHECK(parts::joint_gap(joint, assembly) < 1e-6);
    const parts::Part& made = assembly.parts[static_cast<std::size_t>(one)];
    CHECK(made.operations[1].name == "mitred end of the tenon into leg");
    // Half of the leg, less the gap along the tenon, at the middle of the thickness.
    const double thick = 20.0 / 3, width = 80 - 2 * 6.35, gap = 25.4 / 16;
    if (lean == 0)
      CHECK(made.body.volume() ==
            Approx(80 * 20 * (400 - 22.5) + thick * width * (22.5 - gap)).epsilon(1e-9));
  }
}

TEST_CASE("tenon: why it can't be made") {
  TenonKind kind;
  Tee tee;
  const auto refused = [&](const char* part_of_it) {
    Bench bench = test::lay(tee);
    const std::string why = test::refusal(bench, kind, 0, 1);
    INFO(why);
    CHECK(why.find(part_of_it) != std::string::npos);
  };
  const auto give = [](model::Given<Length>& field, double mm) {
    field.value = {mm};
    field.given = true;
  };
  SECTION("too thick") {
    give(kind.thickness, 21);
    refused("its stock only 20 mm");
  }
  SECTION("too wide") {
    give(kind.width, 41);
    refused("wide, its stock only 40 mm");
  }
  SECTION("no shoulder") {
    give(kind.thickness, 20);
    give(kind.width, 40);
    refused("no shoulder");
  }
  SECTION("no width") {
    give(kind.shoulder, 20);
    refused("No width is left");
  }
  SECTION("stands out") {
    kind.offset.value = {7};
    refused("stands out of its stock");
  }
  SECTION("too long") {
    give(kind.length, 59);
    refused("would come out of the far side of host: 60.6 mm of 60 mm");
  }
  SECTION("too thin a host") {
    tee.host_width = 4;
    refused("out of the far side of host: 4.3 mm of 4 mm");
  }
  SECTION("haunch too long") {
    give(kind.length, 20);
    give(kind.haunch, 20);
    refused("haunch of guest is as long as its tenon");
  }
  SECTION("guest too short") {
    tee.past = 10;
    refused("not enough wood for its tenon");
  }
  SECTION("out of a side of the host") {
    tee.host_thickness = 12;
    tee.guest_thickness = 60;
    refused("break out of a side of host");
  }
  SECTION("not met") {
    tee.past = -5;
    refused("stops short");
  }
  SECTION("another cut is in the way") {
    Bench bench = test::lay(tee);
    const int other =
        bench.bar("other", frame({0, 0, 22.5}, {0, 0, -1}, {0, 1, 0}), -300, 60, 40, 20);
    REQUIRE(kind.make(bench.builder, 0, other) == "");
    CHECK(kind.make(bench.builder, 0, 1).find("run into another cut in host") != std::string::npos);
  }
}
