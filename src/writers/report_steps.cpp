#include "writers/report_steps.h"

#include <nlohmann/json.hpp>

#include "writers/json_words.h"

namespace splay::writers {

namespace {

using Json = nlohmann::ordered_json;
using fabrication::Plan;
using fabrication::Setting;
using fabrication::Step;

std::string side_word(parts::Side side) {
  static constexpr std::array<const char*, 6> words = {"x low",  "x high", "y low",
                                                       "y high", "z low",  "z high"};
  return words[static_cast<std::size_t>(side)];
}

Json mark(const fabrication::Mark& at) { return {at.along, at.across}; }

// The settings that the step's tool and guide have; the others say nothing.
Json setting(const Step& step, const Setting& set) {
  Json entry = {{"tilt_deg", degrees(set.tilt)},
                {"gauge_deg", degrees(set.gauge)},
                {"stop_mm", set.distance},
                {"height_mm", set.height},
                {"width_mm", set.width}};
  if (set.jig_offset > 0) entry["jig_offset_mm"] = set.jig_offset;
  for (const fabrication::Mark& each : set.marks) entry["marks_mm"].push_back(mark(each));
  for (const fabrication::Line& line : set.lines)
    entry["lines"].push_back(
        {{"from_mm", mark(line.a)}, {"to_mm", mark(line.b)}, {"lean_deg", degrees(line.lean)}});
  for (const fabrication::DepthMark& depth : set.depths)
    entry["depths"].push_back({{"at_mm", mark(depth.at)}, {"depth_mm", depth.depth}});
  if (step.tool == fabrication::Tool::bore) entry["diameter_mm"] = set.width;
  return entry;
}

Json step_entry(const Plan& plan, const Step& step) {
  const fabrication::PartRow& row = plan.rows[static_cast<std::size_t>(step.row)];
  Json flags = Json::array();
  for (const fabrication::Flag flag : step.flags) flags.push_back(fabrication::word(flag));
  Json entry = {{"id", step.id},
                {"part", row.mark},
                {"operation", step.name},
                {"machine", fabrication::word(step.machine)},
                {"tool", fabrication::word(step.tool)},
                {"guide", fabrication::word(step.guide)},
                {"position", fabrication::word(step.position())},
                {"face_on_table", side_word(step.face)},
                {"against", side_word(step.against)},
                {"leads", side_word(step.leads)},
                {"reference", step.reference_right ? "right" : "left"},
                {"waste", step.waste_right ? "right" : "left"},
                {"leans", step.tilts_right ? "right" : "left"},
                {"turned", fabrication::word(step.turned)}};
  entry.update(setting(step, step.exact));
  entry["printed"] = setting(step, step.printed);
  entry["group"] = step.group;
  if (step.same_as >= 0) entry["same_as"] = plan.steps[static_cast<std::size_t>(step.same_as)].id;
  entry["proven"] = step.proven;
  if (!step.proven) entry["unproven_why"] = step.unproven_why;
  entry["deviation_mm"] = step.deviation_exact;
  entry["deviation_printed_mm"] = step.deviation_printed;
  entry["volume_difference_mm3"] = step.volume_difference;
  entry["flags"] = std::move(flags);
  if (!step.remark.empty()) entry["remark"] = step.remark;
  return entry;
}

}  // namespace

Json report_steps(const Plan& plan) {
  Json list = Json::array();
  for (const Step& step : plan.steps) list.push_back(step_entry(plan, step));
  return list;
}

Json report_chains(const Plan& plan) {
  Json list = Json::array();
  for (const fabrication::ChainReport& chain : plan.chains) {
    Json marks = Json::array();
    for (const int part : chain.parts) marks.push_back(plan.mark_of(part));
    list.push_back({{"name", chain.name},
                    {"parts", std::move(marks)},
                    {"cuts", chain.cuts},
                    {"turn_per_tenth_deg", degrees(chain.turn)},
                    {"gap_per_tenth_mm", chain.gap_per_tenth},
                    {"division_deg", degrees(chain.division)},
                    {"gap_per_division_mm", chain.gap_per_division},
                    {"gap_printed_mm", chain.gap_printed},
                    {"allowed_mm", chain.allowed},
                    {"tolerance_deg", degrees(chain.tolerance)}});
  }
  return list;
}

}  // namespace splay::writers
