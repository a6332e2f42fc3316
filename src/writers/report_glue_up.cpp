#include "writers/report_glue_up.h"

#include <nlohmann/json.hpp>

#include "writers/json_words.h"

namespace splay::writers {

namespace {

using Json = nlohmann::ordered_json;
using fabrication::ClampWay;
using fabrication::GlueStage;
using fabrication::Plan;

Json parts_of(const Plan& plan, const std::vector<int>& parts) {
  Json list = Json::array();
  for (const int part : parts)
    list.push_back(plan.assembly.parts[static_cast<std::size_t>(part)].name);
  return list;
}

Json joints_of(const Plan& plan, const std::vector<int>& joints) {
  Json list = Json::array();
  for (const int joint : joints)
    list.push_back(plan.assembly.joints[static_cast<std::size_t>(joint)].name);
  return list;
}

std::string_view how(ClampWay way) {
  static constexpr std::string_view words[] = {"clamps", "band", "tape hinge", "screws", "hands"};
  return words[static_cast<std::size_t>(way)];
}

Json steps(const Plan& plan, const GlueStage& stage) {
  Json list = Json::array();
  for (const int index : stage.joinings) {
    const fabrication::Joining& joining =
        plan.glue_up.order.joinings[static_cast<std::size_t>(index)];
    list.push_back({{"bring", parts_of(plan, joining.moving)},
                    {"to", parts_of(plan, joining.fixed)},
                    {"way", point(joining.way)},
                    {"joints", joints_of(plan, joining.joints)}});
  }
  return list;
}

Json clamps(const Plan& plan, const GlueStage& stage) {
  Json list = Json::array();
  for (const fabrication::Clamping& row : stage.clampings) {
    Json entry = {{"how", how(row.how)}, {"joints", joints_of(plan, row.joints)}};
    if (row.how == ClampWay::screws) {
      list.push_back(std::move(entry));
      continue;
    }
    entry["count"] = row.count;
    if (row.how != ClampWay::tape) {
      entry["kind"] = model::word(row.kind);
      entry["force_each_n"] = row.each;
      entry["force_n"] = row.force;
      entry["enough"] = row.enough;
    }
    if (!row.clamp.empty()) entry["from"] = row.clamp;
    entry["reach"] = row.reach;
    entry["axis"] = point(row.axis);
    Json cauls = Json::array();
    for (const fabrication::Caul& caul : row.cauls)
      cauls.push_back({{"on", parts_of(plan, {caul.part})[0]},
                       {"angle_deg", Angle{caul.angle}.degrees()},
                       {"length", caul.length},
                       {"width", caul.width},
                       {"thick_edge", caul.thick}});
    entry["cauls"] = std::move(cauls);
    entry["head_slides_n"] = row.head_slide;
    entry["joint_slides_n"] = row.joint_slide;
    list.push_back(std::move(entry));
  }
  return list;
}

Json checks(const GlueStage& stage) {
  Json list = Json::array();
  for (const fabrication::WetCheck& check : stage.checks) {
    const bool angle = check.kind == fabrication::MeasureKind::angle;
    list.push_back({{"measure", check.name},
                    {angle ? "degrees" : "mm", angle ? Angle{check.value}.degrees() : check.value},
                    {"within", angle ? Angle{check.tolerance}.degrees() : check.tolerance}});
  }
  return list;
}

}  // namespace

Json report_glue_up(const Plan& plan) {
  Json list = Json::array();
  int number = 0;
  for (const GlueStage& stage : plan.glue_up.stages) {
    Json first = Json::array(), after = Json::array();
    for (const int need : stage.needs) after.push_back(need + 1);
    for (const fabrication::OutOfReach& surface : stage.finish_first)
      first.push_back({{"part", parts_of(plan, {surface.part})[0]},
                       {"side", surface.side},
                       {"gap", surface.gap},
                       {"behind", parts_of(plan, {surface.before})[0]}});
    list.push_back({{"stage", ++number},
                    {"after", after},
                    {"parts", parts_of(plan, stage.parts)},
                    {"joints", joints_of(plan, stage.joints)},
                    {"glued", stage.glued},
                    {"comes_apart", stage.undone},
                    {"steps", steps(plan, stage)},
                    {"spreading_minutes", stage.spreading},
                    {"minutes", stage.minutes},
                    {"open_minutes", plan.glue_up.times.open},
                    {"closed_minutes", plan.glue_up.times.closed},
                    {"cure_minutes", stage.cure},
                    {"starts_at_minute", stage.starts},
                    {"clamps_off_at_minute", stage.frees},
                    {"clamps", clamps(plan, stage)},
                    {"checks", checks(stage)},
                    {"held_at_one_end", parts_of(plan, stage.one_end)},
                    {"finish_first", first}});
  }
  return list;
}

}  // namespace splay::writers
