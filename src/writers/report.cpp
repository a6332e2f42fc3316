#include "writers/report.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "fabrication/row_order.h"
#include "writers/json_words.h"
#include "writers/report_glue_up.h"
#include "writers/report_hold.h"
#include "writers/report_steps.h"
#include "writers/report_stock.h"

namespace splay::writers {

namespace {

using Json = nlohmann::ordered_json;
using fabrication::Plan;

Json box(Vec3 size) { return {{"length", size.x}, {"width", size.y}, {"thickness", size.z}}; }

Json job(const Plan& plan) {
  const model::Job& job = plan.project->job;
  return {{"title", *job.title},
          {"number", *job.number},
          {"client", *job.client},
          {"revision", *job.revision},
          {"date", model::iso_date(*job.date)},
          {"units", *job.units == Unit::inch ? "in" : "mm"}};
}

Json cuts(const fabrication::PartRow& row, const parts::Part& part) {
  Json list = Json::array();
  for (const fabrication::CutReport& cut : row.cuts) {
    Json entry = {{"name", cut.name},
                  {"side", parts::side_name(part, cut.side)},
                  {"face_angle_deg", degrees(cut.face_angle)},
                  {"bevel_deg", degrees(cut.bevel)}};
    if (cut.on_face) entry["long_point_face"] = parts::side_name(part, cut.long_face);
    if (cut.on_edge) entry["long_point_edge"] = parts::side_name(part, cut.long_edge);
    list.push_back(std::move(entry));
  }
  return list;
}

Json part_rows(const Plan& plan) {
  Json list = Json::array();
  for (const fabrication::PartRow* each : fabrication::rows_in_order(plan)) {
    const fabrication::PartRow& row = *each;
    const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
    list.push_back({{"mark", row.mark},
                    {"name", row.name},
                    {"quantity", row.quantity()},
                    {"hand", fabrication::word(row.hand)},
                    {"stock", row.stock},
                    {"length", row.finished.x},
                    {"width", row.finished.y},
                    {"thickness", row.finished.z},
                    {"blank", box(row.blank)},
                    {"long_point", row.long_point},
                    {"short_point", row.short_point},
                    {"volume_mm3", row.volume},
                    {"mass_kg", row.mass},
                    {"deviation_printed_mm", row.deviation_printed},
                    {"cuts", cuts(row, part)}});
  }
  return list;
}

Json joints(const Plan& plan) {
  Json list = Json::array();
  for (std::size_t j = 0; j < plan.joints.size(); ++j) {
    const fabrication::JointReport& joint = plan.joints[j];
    Json entry = {
        {"name", joint.name},
        {"kind", joint.kind},
        {"between", joint.between},
        {"dihedral_deg", degrees(joint.dihedral)},
        {"made", parts::made_words[static_cast<std::size_t>(plan.assembly.joints[j].made)]}};
    // An open joint without a common surface has no finite gap, and JSON no infinity.
    // Measured from the parts as the proven steps leave them, else as designed.
    const double gap = joint.gap_cut >= 0 ? joint.gap_cut : joint.gap;
    entry["gap_mm"] = std::isfinite(gap) ? Json(gap) : Json(nullptr);
    entry["gap_printed_mm"] = std::isfinite(joint.gap_printed) && joint.gap_printed >= 0
                                  ? Json(joint.gap_printed)
                                  : Json(nullptr);
    list.push_back(std::move(entry));
  }
  return list;
}

Json loops(const Plan& plan) {
  Json list = Json::array();
  for (const fabrication::LoopReport& loop : plan.loops) {
    Json entry = {{"name", loop.name}, {"sides", loop.sides}, {"height", loop.check}};
    if (loop.sides.size() == 4) entry["diagonals"] = {loop.diagonal_1, loop.diagonal_2};
    list.push_back(std::move(entry));
  }
  return list;
}

Json findings(const Plan& plan) {
  Json list = Json::array();
  for (const Finding& finding : plan.findings) {
    Json entry = {{"level", word(finding.level)},
                  {"code", finding.code},
                  {"about", finding.about},
                  {"text", finding.text},
                  {"remedy", finding.remedy}};
    if (finding.span.line > 0) entry["line"] = finding.span.line;
    list.push_back(std::move(entry));
  }
  return list;
}

Json pages(const ink::Packet* packet) {
  Json list = Json::array();
  if (packet == nullptr) return list;
  for (const ink::Page& page : packet->pages)
    list.push_back({{"label", page.label}, {"title", page.title}, {"paper", page.paper.name}});
  return list;
}

}  // namespace

std::string report(const Plan& plan, const ink::Packet* packet) {
  const Json all = {{"job", job(plan)},
                    {"parts", part_rows(plan)},
                    {"joints", joints(plan)},
                    {"steps", report_steps(plan)},
                    {"chains", report_chains(plan)},
                    {"checks", loops(plan)},
                    {"stock", report_stock(plan)},
                    {"money", report_money(plan)},
                    {"hardware", report_hardware(plan)},
                    {"finish", report_finish(plan)},
                    {"soundness", report_soundness(plan)},
                    {"glue_up", report_glue_up(plan)},
                    {"findings", findings(plan)},
                    {"pages", pages(packet)}};
  return all.dump(2) + "\n";
}

}  // namespace splay::writers
