// Joint details: every joint once, angles as plane geometry has them, printed figures as measured.
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <numbers>
#include <set>

#include "part_pages.h"
#include "sheets/joint_angles.h"
#include "sheets/joint_words.h"
#include "support/demos.h"

using namespace splay;

namespace {

constexpr double degree = std::numbers::pi / 180;

drafting::Kit kit() {
  drafting::Kit kit;
  kit.fonts = &test::fonts();
  return kit;
}

const parts::Joint& joint_of_kind(const test::Built& piece, const std::string& kind,
                                  const std::string& name) {
  for (const parts::Joint& joint : piece.plan.assembly.joints)
    if (joint.kind == kind && joint.name.find(name) != std::string::npos) return joint;
  FAIL("no " << kind << " named " << name);
  return piece.plan.assembly.joints.front();
}

std::vector<sheets::JointAngle> angles_of(const test::Built& piece, const parts::Joint& joint) {
  const sheets::Context context{piece.plan, kit(), drafting::paper_named("A4"), {}};
  const std::vector<sheets::JointCut> cuts = sheets::joint_cuts(piece.plan.assembly, joint);
  REQUIRE(!cuts.empty());
  return sheets::joint_angles(context, cuts.front());
}

double named(const std::vector<sheets::JointAngle>& angles, const std::string& start) {
  for (const sheets::JointAngle& angle : angles)
    if (angle.name.starts_with(start)) return angle.radians;
  return -1;
}

std::vector<const ink::Page*> details(const ink::Packet& packet) {
  std::vector<const ink::Page*> pages;
  for (const ink::Page& page : packet.pages)
    if (page.title == "Joint details") pages.push_back(&page);
  return pages;
}

}  // namespace

TEST_CASE("Every joint for which something is cut stands for itself or in one group") {
  for (const std::filesystem::path& file : test::demos()) {
    INFO(file);
    const test::Built piece = test::build(test::text_of(file));
    std::multiset<std::string> grouped, wanted;
    for (const sheets::JointGroup& group : sheets::joint_groups(piece.plan).drawn)
      for (const parts::Joint* joint : group.joints) {
        grouped.insert(joint->name);
        CHECK(joint->kind == group.joints.front()->kind);
      }
    for (const parts::Joint& joint : piece.plan.assembly.joints)
      if (sheets::worked(piece.plan.assembly, joint)) wanted.insert(joint.name);
    CHECK(grouped == wanted);
    CHECK(!wanted.empty());
  }
}

// The inside angles of a polygon of n sides add up to 2n - 4 right angles (Euclid, Elements I.32):
// 120 degrees each in a regular hexagon, whose mitres halve them.
TEST_CASE("The mitres of a regular hexagon show its corner and half of what it is past square") {
  const test::Built tray = test::piece_from("projects/six-sided-tea-tray.toml");
  const auto angles = angles_of(tray, joint_of_kind(tray, "mitre", "tile side 1"));
  CHECK(named(angles, "corner") == Approx(120 * degree).margin(1e-9));
  CHECK(named(angles, "face angle") == Approx(30 * degree).margin(1e-9));
}

// The same six sides leaning by 15 degrees. Outward normals of neighbours, (cos 15, 0, -sin 15)
// turned by 60 degrees, give the corner by their scalar product (plain vectors).
TEST_CASE("A leaning ring's section is at right angles to the line of its mitre") {
  const test::Built tray = test::piece_from("projects/six-sided-tea-tray.toml");
  const auto angles = angles_of(tray, joint_of_kind(tray, "mitre", "tray side 1"));
  const double c = std::cos(15 * degree), s = std::sin(15 * degree);
  const double corner = std::numbers::pi - std::acos(c * c * std::cos(60 * degree) + s * s);
  CHECK(named(angles, "corner") == Approx(corner).margin(1e-9));
  CHECK(named(angles, "bevel") == Approx((std::numbers::pi - corner) / 2).margin(1e-9));
}

TEST_CASE("A tenon is shown along both parts and across, and the tenon's third is measured") {
  const test::Built stool = test::piece_from("projects/splayed-stool.toml");
  const parts::Joint& joint = joint_of_kind(stool, "mortise and tenon", "cross to right");
  const std::vector<sheets::JointCut> cuts = sheets::joint_cuts(stool.plan.assembly, joint);
  REQUIRE(cuts.size() == 2);
  CHECK(std::abs(dot(cuts[0].view.toward, cuts[1].view.toward)) < 1e-9);
  for (const sheets::JointCut& cut : cuts) {
    CHECK(cut.parts.size() == 2);
    CHECK(!cut.contacts.empty());
  }
  const ink::Packet packet = test::binder(stool);
  const auto pages = details(packet);
  REQUIRE(!pages.empty());
  // A tenon is about a third of its rail's thickness (common practice, no source): of 16 mm 5.3.
  bool third = false;
  for (const ink::Page* page : pages)
    for (const ink::DimensionClaim& claim : test::all_of<ink::DimensionClaim>(*page))
      third = third || std::abs(claim.exact_mm - 16.0 / 3) < 1e-6;
  CHECK(third);
}

// A loose tenon a third of 20 mm thick and at most six times as broad (common practice, no source);
// what is drawn of it is its breadth in the plane of the frame, its thickness across.
TEST_CASE("A loose tenon is drawn as broad as its mortise and as thick as it is") {
  const test::Built bookcase = test::piece_from("projects/plain-bookcase.toml");
  const parts::Joint& joint = joint_of_kind(bookcase, "loose tenon", "door bottom");
  const std::vector<sheets::JointCut> cuts = sheets::joint_cuts(bookcase.plan.assembly, joint);
  REQUIRE(cuts.size() == 2);
  for (const sheets::JointCut& cut : cuts) REQUIRE(cut.fittings.size() == 1);
  // Round ends are facets within 0.01 mm of their circle.
  CHECK(2 * cuts[0].fittings[0].half == Approx(40).margin(0.02));
  CHECK(2 * cuts[1].fittings[0].half == Approx(20 / 3.0));
}

// Tails slope 1 in 7 where nothing else is asked for, between the 1 in 6 of softwood and the 1 in 8
// of hardwood (common practice, no source).
TEST_CASE("Dovetails are cut open in the plane in which their tails slope") {
  const test::Built bookcase = test::piece_from("projects/plain-bookcase.toml");
  const parts::Joint& joint = joint_of_kind(bookcase, "dovetail", "drawer");
  const std::vector<sheets::JointCut> cuts = sheets::joint_cuts(bookcase.plan.assembly, joint);
  REQUIRE(cuts.size() == 2);
  int sloping = 0;
  for (const sheets::Line2& line : cuts[1].contacts) {
    const Vec2 run = line.b - line.a;
    const double slope = std::min(std::abs(run.x / run.y), std::abs(run.y / run.x));
    if (slope < 1e-9) continue;
    CHECK(slope == Approx(1 / 7.0));
    ++sloping;
  }
  CHECK(sloping >= 2);
  // As much of the row as tells the rest: a pin and a tail at the least, not all of 300 mm.
  CHECK(std::max(cuts[1].window.width(), cuts[1].window.height()) < 100);
}

TEST_CASE("Joint details come before the saw steps and name each part with a link") {
  const test::Built cabinet = test::piece_from("projects/canted-tea-cabinet.toml");
  const ink::Packet packet = test::binder(cabinet);
  const auto pages = details(packet);
  REQUIRE(!pages.empty());
  std::size_t first_detail = 0, first_step = 0;
  for (std::size_t i = packet.pages.size(); i-- > 0;) {
    if (packet.pages[i].title == "Joint details") first_detail = i;
    if (packet.pages[i].title == "Saw steps") first_step = i;
  }
  CHECK(first_detail < first_step);
  for (const ink::Page* page : pages) {
    CHECK(!test::all_of<ink::Link>(*page).empty());
    CHECK(!test::all_of<ink::DimensionClaim>(*page).empty());
  }
}
