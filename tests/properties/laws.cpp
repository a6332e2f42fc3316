#include "properties/laws.h"

#include <algorithm>
#include <map>
#include <set>

#include "packing/verify.h"
#include "sheets/packet.h"

namespace splay::test {

namespace {

constexpr double exact = 1e-6;  // mm
// Steps take a surface that is turned by less than a millionth of a radian for square.
constexpr double closed = 1e-4;  // mm

const ink::FontSet& fonts() {
  static const ink::FontSet set;
  return set;
}

const fabrication::PartRow& row_of(const fabrication::Plan& plan, const fabrication::Step& step) {
  return plan.rows[static_cast<std::size_t>(step.row)];
}

bool is_said(const fabrication::Plan& plan, const std::string& mark) {
  return std::ranges::any_of(plan.findings, [&](const Finding& finding) {
    return finding.level == Level::stop &&
           std::ranges::find(finding.about, mark) != finding.about.end();
  });
}

std::string made_twice(const fabrication::Plan& plan) {
  std::set<std::pair<int, int>> made;
  std::string text;
  for (const fabrication::Step& step : plan.steps)
    for (const int operation : step.operations)
      if (!made.insert({step.row, operation}).second)
        text += row_of(plan, step).name + ", " + step.name + ": made twice\n";
  return text;
}

using Counts = std::map<int, int>;  // by part of the layout

Counts drawn(const fabrication::StockLayout& layout) {
  Counts counts;
  for (const fabrication::CutSheet& sheet : layout.sheets)
    for (const packing::PlacedPart& part : sheet.parts) counts[part.part] += sheet.count;
  return counts;
}
Counts planned(const fabrication::StockLayout& layout) {
  Counts counts;
  for (const packing::SheetLayout& sheet : layout.plan.layouts)
    for (const packing::PlacedPart& part : sheet.parts) ++counts[part.part];
  return counts;
}

std::string page_faults(const fabrication::Plan& plan, sheets::ForWhom whom) {
  const model::Style style;
  const ink::Packet packet = sheets::make_packet(plan, style, fonts(), {whom, {}});
  std::string text;
  for (const ink::LintFault& fault :
       ink::lint(packet, fonts(), sheets::parts_wanted(plan, style, whom)))
    text += "page " + fault.page + ": " + fault.rule + ": " + fault.text + "\n";
  return text;
}

}  // namespace

bool refused(const Built& piece) {
  return std::ranges::any_of(piece.plan.findings, [](const Finding& finding) {
    return finding.level == Level::stop && finding.code != "unproven-step";
  });
}

std::string unclear_findings(const Built& piece) {
  const std::set<std::string> audits = {"overlap", "floating", "open-joint", "nothing-left"};
  std::string text;
  for (const Finding& finding : piece.plan.findings) {
    const bool sentence = finding.text.ends_with('.') && !finding.remedy.empty();
    if (!sentence || (finding.level == Level::stop && audits.contains(finding.code)))
      text += finding.code + ": " + finding.text + " " + finding.remedy + "\n";
  }
  return text;
}

std::string open_or_clashing(const Built& piece) {
  const parts::Assembly& assembly = piece.plan.assembly;
  std::string text;
  for (const parts::Joint& joint : assembly.joints)
    if (parts::joint_gap(joint, assembly) >= exact) text += "open: " + joint.name + "\n";
  std::vector<Solid> solids;
  for (const parts::Part& part : assembly.parts) solids.push_back(part.world);
  for (const Clash& clash : find_clashes(solids))
    text += assembly.parts[static_cast<std::size_t>(clash.a)].name + " and " +
            assembly.parts[static_cast<std::size_t>(clash.b)].name + " share space\n";
  return text;
}

std::string unproven_steps(const Built& piece) {
  std::string text = made_twice(piece.plan);
  for (const fabrication::Step& step : piece.plan.steps) {
    if (step.proven && step.deviation_exact < exact) continue;
    const fabrication::PartRow& row = row_of(piece.plan, step);
    text += row.name + ", " + step.id + " " + step.name + ": " +
            (step.proven ? "deviates " + std::to_string(step.deviation_exact) : step.unproven_why) +
            (is_said(piece.plan, row.mark) ? "" : " AND NO FINDING SAYS SO") + "\n";
  }
  for (const fabrication::JointReport& joint : piece.plan.joints) {
    const std::string named = "joint " + joint.name + " (" + joint.kind + "): ";
    if (joint.gap_cut < 0 || joint.gap_cut >= closed)
      text += named +
              (joint.gap_cut < 0 ? "not measured" : "open " + std::to_string(joint.gap_cut)) + "\n";
    if (joint.gap_printed < 0) text += named + "not measured as printed\n";
  }
  return text;
}

std::string bad_layouts(const Built& piece) {
  std::string text;
  std::vector<std::size_t> laid_out(piece.plan.rows.size(), 0);
  for (const fabrication::StockLayout& layout : piece.plan.layouts) {
    if (const std::string wrong = packing::verify::plan(layout.task, layout.plan); !wrong.empty())
      text += "layout of " + layout.stock + ": " + wrong + "\n";
    if (drawn(layout) != planned(layout))
      text += "layout of " + layout.stock + ": drawn are other pieces than planned\n";
    for (const fabrication::Wanted& wanted : layout.wanted)
      laid_out[static_cast<std::size_t>(wanted.row)] += static_cast<std::size_t>(wanted.parts);
  }
  const auto by_length = [&](const fabrication::PartRow& row) {
    const model::Stock* stock = piece.project->stocks.find(row.stock);
    return stock != nullptr && *stock->kind == model::StockKind::edge_band;
  };
  for (std::size_t row = 0; row < laid_out.size(); ++row)
    if (laid_out[row] != piece.plan.rows[row].quantity() && !by_length(piece.plan.rows[row]))
      text +=
          piece.plan.rows[row].name + " is laid out " + std::to_string(laid_out[row]) + " times\n";
  return text;
}

std::string bad_pages(const Built& piece) {
  if (piece.plan.stopped()) return "";
  return page_faults(piece.plan, sheets::ForWhom::shop) +
         page_faults(piece.plan, sheets::ForWhom::client);
}

std::string not_the_same(const Built& piece, const Built& converted) {
  const auto& one = piece.plan.assembly;
  const auto& other = converted.plan.assembly;
  if (piece.plan.stopped() != converted.plan.stopped())
    return "in the other unit: " +
           (converted.plan.stopped() ? converted.stops() : "can be built\n");
  if (one.parts.size() != other.parts.size() || one.joints.size() != other.joints.size())
    return "in the other unit: other parts or joints\n";
  std::string text;
  for (std::size_t i = 0; i < one.parts.size(); ++i)
    if (one.parts[i].name != other.parts[i].name ||
        norm(one.parts[i].size - other.parts[i].size) >= exact ||
        one.parts[i].body.volume() != Approx(other.parts[i].body.volume()).epsilon(1e-9))
      text += "in the other unit: " + one.parts[i].name + " differs\n";
  return text;
}

}  // namespace splay::test
