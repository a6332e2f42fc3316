// Where clamps stand and what they bear on, and that nothing is fitted before what carries it is
// glued: by plain vectors, and over all demos.
#include <algorithm>
#include <cmath>

#include "fabrication/glue_clamping.h"
#include "glue_pieces.h"
#include "support/demos.h"
#include "support/piece.h"

using namespace splay;
using fabrication::Bond;
using fabrication::Clamping;
using fabrication::ClampWay;
using fabrication::GlueStage;

namespace {

constexpr double degree = 3.14159265358979323846 / 180;

std::string splayed(const std::string& more) {
  return test::job("mm") + test::board("leg", "60 mm") + test::board("oak", "22 mm") +
         "[table.t]\nheight = 740\nwidth = 1000\ndepth = 800\nsplay = [\"8 deg\", \"6 deg\"]\n"
         "[table.t.leg]\nstock = \"leg\"\nwidth = 50\n[table.t.apron]\nstock = "
         "\"oak\"\nwidth = 90\n" +
         more;
}

const parts::Part& part(const test::Built& built, int index) {
  return built.plan.assembly.parts[static_cast<std::size_t>(index)];
}

parts::Assembly of_boxes(const std::vector<std::array<Vec3, 2>>& boxes) {
  parts::Assembly all;
  for (const auto& [low, high] : boxes) {
    parts::Part part;
    part.body = part.world = Solid::box(low, high);
    part.size = high - low;
    all.parts.push_back(std::move(part));
  }
  return all;
}

}  // namespace

TEST_CASE("A leaning side gets a wedge of its lean, and the force that slides is named") {
  // A shelf housed in a side that leans 12 degrees and one that stands plumb: clamps draw along the
  // shelf, so that the head on the leaning side meets its face 12 degrees out of square.
  const test::Built built = test::build(test::leaning_case(""));
  INFO(built.stops());
  bool found = false;
  for (const GlueStage& stage : built.plan.glue_up.stages) {
    for (const Clamping& row : stage.clampings) {
      if (row.how != ClampWay::clamps || std::abs(row.axis.x) < 0.99) continue;
      found = true;
      REQUIRE(row.cauls.size() == 1);
      CHECK(test::degrees(row.cauls[0].angle) == Approx(12).margin(1e-9));
      CHECK(built.plan.assembly.parts[static_cast<std::size_t>(row.cauls[0].part)].name ==
            "left panel");
      CHECK(row.head_slide == Approx(row.each * std::sin(12 * 3.14159265358979 / 180)));
      // A wedge 50 wide that starts at 18: 18 + 50 tan 12.
      CHECK(row.cauls[0].thick == Approx(18 + 50 * std::tan(12 * 3.14159265358979 / 180)));
      // Over both outer faces at the shelf's height, level, and half the wedge.
      for (const auto& heads : row.heads) {
        const double run = norm(heads[1] - heads[0]);
        CHECK(run == Approx(800 - heads[0].z * std::tan(12 * 3.14159265358979 / 180)).margin(1e-6));
        CHECK(row.reach >= run - 1e-9);
      }
    }
  }
  CHECK(found);
}

TEST_CASE("Clamps draw along a rail between leaning legs, a wedge of the lean on each leg") {
  const test::Built built = test::build(splayed("[glue_up]\nglue = \"epoxy\"\n"));
  INFO(built.stops());
  int rows = 0;
  for (const GlueStage& stage : built.plan.glue_up.stages)
    for (const Clamping& row : stage.clampings) {
      if (row.how != ClampWay::clamps) continue;
      ++rows;
      bool along = false;
      for (const int joint : row.joints)
        for (const int p : built.plan.assembly.joints[static_cast<std::size_t>(joint)].between)
          along = along || norm(cross(row.axis, part(built, p).place.ex)) < 1e-9;
      CHECK(along);
      // A level line meets a face that looks sideways at the lean the leg has in that direction.
      for (const fabrication::Caul& caul : row.cauls) {
        const bool sideways = std::abs(row.axis.x) > 0.9;
        CHECK(test::degrees(caul.angle) == Approx(sideways ? 8 : 6).margin(0.2));
      }
    }
  CHECK(rows >= 2);
}

TEST_CASE("A rail held at one end is set by the angle between its length and the leg's") {
  // Hardly any open time: joint by joint.
  const test::Built built = test::build(splayed("[glue_up]\nopen = 1.2\nclosed = 4\n"));
  INFO(built.stops());
  const double tx = std::tan(8 * degree), ty = std::tan(6 * degree);
  const double leg = std::sqrt(1 + tx * tx + ty * ty);
  int angles = 0;
  for (const GlueStage& stage : built.plan.glue_up.stages)
    for (const fabrication::WetCheck& check : stage.checks) {
      if (check.kind != fabrication::MeasureKind::angle) continue;
      ++angles;
      INFO(check.name);
      const bool across = check.name.find("front apron") != std::string::npos ||
                          check.name.find("back apron") != std::string::npos;
      CHECK(std::cos(check.value) == Approx((across ? tx : ty) / leg).margin(1e-6));
    }
  CHECK(angles >= 2);
}

TEST_CASE("A clamp reaches into an opening from the front, and not through a wall or too far in") {
  // A case 800 wide, 300 deep and 1500 high, closed at the back; a plinth board under its floor.
  const auto with_plinth = [](double y) {
    return of_boxes({{{{0, 0, 0}, {800, 300, 18}}},
                     {{{0, 0, 1482}, {800, 300, 1500}}},
                     {{{0, 0, 18}, {18, 300, 1482}}},
                     {{{782, 0, 18}, {800, 300, 1482}}},
                     {{{18, 294, 18}, {782, 300, 1482}}},
                     {{{0, y, -100}, {800, y + 20, 0}}}});
  };
  const std::vector<int> all{0, 1, 2, 3, 4, 5};
  const auto front = fabrication::heads_on(with_plinth(30), all, {400, 40, 0}, {0, 0, 1});
  REQUIRE(front);
  CHECK(front->low.at == Approx(100));
  CHECK(front->high.at == Approx(18));
  const auto back = fabrication::heads_on(with_plinth(260), all, {400, 270, 0}, {0, 0, 1});
  REQUIRE(back);
  CHECK(back->low.at == Approx(100));
  CHECK(back->high.at == Approx(1500));
  CHECK_FALSE(fabrication::heads_on(with_plinth(30), all, {2000, 40, 0}, {0, 0, 1}));
}

TEST_CASE("A bridle is pressed across its cheeks, where heads bear flat") {
  const test::Built built = test::build(
      test::text_of(std::string(SPLAYBOOK_SOURCE_DIR) + "/projects/six-sided-tea-tray.toml"));
  int bridles = 0;
  for (const GlueStage& stage : built.plan.glue_up.stages)
    for (const Clamping& row : stage.clampings)
      for (const int joint : row.joints) {
        const parts::Joint& made = built.plan.assembly.joints[static_cast<std::size_t>(joint)];
        if (made.kind != "bridle") continue;
        ++bridles;
        CHECK(row.cauls.empty());
        // The leg's head is 1 1/2 in thick.
        CHECK(row.reach == Approx(1.5 * 25.4).margin(0.5));
        for (const parts::Mate& mate : made.mates)
          CHECK((std::abs(dot(mate.plane.n, row.axis)) > 0.99 ||
                 std::abs(dot(mate.plane.n, row.axis)) < 0.2));
      }
  CHECK(bridles == 2);
}

TEST_CASE("No wedge is steeper than a head can bear on, and what none bears on is named") {
  for (const auto& file : test::demos()) {
    INFO(file.filename().string());
    const test::Built built = test::build(test::text_of(file));
    for (const GlueStage& stage : built.plan.glue_up.stages)
      for (const Clamping& row : stage.clampings) {
        for (const fabrication::Caul& caul : row.cauls) CHECK(test::degrees(caul.angle) < 66);
        if (row.how == ClampWay::hands) CHECK(row.heads.empty());
      }
  }
}

TEST_CASE("In every demo what is glued is made up before anything is fitted to it") {
  for (const auto& file : test::demos()) {
    INFO(file.filename().string());
    const test::Built built = test::build(test::text_of(file));
    const auto& joints = built.plan.assembly.joints;
    int fitted = 0;
    for (const GlueStage& stage : built.plan.glue_up.stages) {
      for (std::size_t j = 0; j < joints.size(); ++j) {
        if (fabrication::bond_of(built.plan, static_cast<int>(j)) != Bond::fitted) continue;
        const bool in_it = std::ranges::all_of(
            joints[j].between, [&](int p) { return std::ranges::binary_search(stage.parts, p); });
        INFO(joints[j].name);
        CHECK_FALSE((in_it && stage.glued));
        fitted += in_it;
      }
    }
    if (std::ranges::any_of(joints, [](const auto& joint) { return joint.kind == "hinges"; }))
      CHECK(fitted > 0);
  }
}
