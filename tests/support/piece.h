// A project text read, built and planned, for tests. Faults and findings end the test with their
// text.
#pragma once

#include <catch2/catch.hpp>
#include <cmath>
#include <memory>
#include <string>

#include "constructs/construct.h"
#include "fabrication/plan.h"
#include "parts/audit.h"
#include "reading/reading.h"

namespace splay::test {

struct Built {
  std::unique_ptr<model::Project> project;
  fabrication::Plan plan;

  const parts::Part& part(const std::string& name) const {
    for (const parts::Part& each : plan.assembly.parts)
      if (each.name == name) return each;
    FAIL("no part named " << name);
    return plan.assembly.parts.front();
  }
  const fabrication::PartRow& row(const std::string& name) const {
    for (std::size_t i = 0; i < plan.assembly.parts.size(); ++i)
      if (plan.assembly.parts[i].name == name)
        return plan.rows[static_cast<std::size_t>(plan.row_of_part[i])];
    FAIL("no part named " << name);
    return plan.rows.front();
  }
  const fabrication::CutReport& cut(const std::string& part_name, const std::string& name) const {
    for (const fabrication::CutReport& each : row(part_name).cuts)
      if (each.name == name) return each;
    FAIL(part_name << " has no cut named " << name);
    return plan.rows.front().cuts.front();
  }
  const parts::Operation& operation(const std::string& part_name, const std::string& name) const {
    for (const parts::Operation& each : part(part_name).operations)
      if (each.name == name) return each;
    FAIL(part_name << " has no operation named " << name);
    return plan.assembly.parts.front().operations.front();
  }
  // Degrees; stated by the model, and in truth between its two directions.
  double angle(const std::string& name) const {
    for (const parts::NamedAngle& each : plan.assembly.angles) {
      if (each.name != name) continue;
      CHECK(each.radians == Approx(angle_between(each.from, each.to)));
      return Angle{each.radians}.degrees();
    }
    FAIL("no angle named " << name);
    return 0;
  }
  bool found(const std::string& code) const {
    for (const Finding& each : plan.findings)
      if (each.code == code) return true;
    return false;
  }
  // All that stands in the way of building, as text: empty for a sound piece.
  std::string stops() const {
    std::string text;
    for (const Finding& each : plan.findings)
      if (each.level == Level::stop) text += each.code + ": " + each.text + "\n";
    return text;
  }
};

inline Built build(const std::string& text) {
  reading::ProjectReading result = reading::read_project(text, "test.toml", constructs::registry());
  std::string faults;
  for (const Diagnostic& fault : result.diagnostics) faults += describe(fault, "test.toml", text);
  INFO(faults);
  REQUIRE(result.project.has_value());
  Built built;
  built.project = std::make_unique<model::Project>(std::move(*result.project));
  built.plan = fabrication::make_plan(*built.project, constructs::build(*built.project));
  return built;
}

// mm, as the part says of itself.
inline double measure(const parts::Part& part, const std::string& name) {
  for (const parts::Measure& each : part.measures)
    if (each.name == name) return each.mm;
  FAIL(part.name << " has no measure named " << name);
  return 0;
}

inline bool remarks(const parts::Part& part, const std::string& words) {
  for (const std::string& remark : part.remarks)
    if (remark.find(words) != std::string::npos) return true;
  return false;
}

// Everything that a joint brings together meets.
inline void check_joints_closed(const Built& built) {
  for (const parts::Joint& joint : built.plan.assembly.joints) {
    INFO(joint.name);
    CHECK(parts::joint_gap(joint, built.plan.assembly) < 1e-6);
  }
}

// Nothing stands in the way of building it, and every joint closes, as the plan reports it too.
inline void check_sound(const Built& built) {
  REQUIRE(built.stops() == "");
  check_joints_closed(built);
  for (const fabrication::JointReport& joint : built.plan.joints) {
    INFO(joint.name);
    CHECK(joint.gap < 1e-6);
  }
}

// No two parts share space: the whole piece looked over at once, not joint by joint.
inline void check_no_clash(const Built& built) {
  std::vector<Solid> solids;
  for (const parts::Part& part : built.plan.assembly.parts) solids.push_back(part.world);
  CHECK(find_clashes(solids).empty());
}

// A job and the stocks that the cases of these tests are made of.
inline std::string job(const std::string& unit = "in") {
  return "[job]\ntitle = \"Test\"\ndate = 2026-01-01\nunits = \"" + unit + "\"\n";
}
inline std::string sheet(const std::string& name, const std::string& thickness) {
  return "[stock." + name + "]\nkind = \"sheet\"\nmaterial = \"plywood\"\nthickness = \"" +
         thickness + "\"\nsize = [\"2440 mm\", \"1220 mm\"]\n";
}
inline std::string board(const std::string& name, const std::string& thickness) {
  return "[stock." + name + "]\nkind = \"board\"\nmaterial = \"oak\"\nthickness = \"" + thickness +
         "\"\n";
}

inline double degrees(double radians) { return Angle{radians}.degrees(); }
inline double tan_deg(double angle) { return std::tan(Angle::degrees(angle).rad); }
inline double inches(double mm) { return Length{mm}.inches(); }

}  // namespace splay::test
