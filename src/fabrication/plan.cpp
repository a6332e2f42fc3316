#include "fabrication/plan.h"

#include <algorithm>
#include <cmath>

#include "base/parallel.h"
#include "base/tolerance.h"
#include "fabrication/checks.h"
#include "fabrication/cuts.h"
#include "fabrication/edging.h"
#include "fabrication/hands.h"
#include "fabrication/settings.h"
#include "fabrication/split.h"
#include "parts/audit.h"

namespace splay::fabrication {

namespace {

// A, B, ... without I and O, which read as figures; then AA, AB, ...
std::string letters(std::size_t index) {
  static constexpr std::string_view alphabet = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  std::string mark;
  for (std::size_t i = index + 1; i > 0; i = (i - 1) / alphabet.size())
    mark.insert(mark.begin(), alphabet[(i - 1) % alphabet.size()]);
  return mark;
}

void find_edged(Plan& plan) {
  for (const parts::Joint& joint : plan.assembly.joints) {
    const int panel = joint.between.back();
    if (joint.made != parts::Made::before_cuts || edging_of(plan.assembly, panel).empty()) continue;
    plan.edged.try_emplace(panel, as_cut(plan.assembly, panel));
  }
}

void gather_rows(Plan& plan) {
  const auto& parts = plan.assembly.parts;
  plan.row_of_part.assign(parts.size(), -1);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    int row = -1, pair = -1;
    for (std::size_t r = 0; r < plan.rows.size() && row < 0; ++r) {
      const parts::Part& sample = plan.sample(static_cast<int>(r));
      const parts::Part& part = plan.as_cut(static_cast<int>(i));
      if (alike(sample, part))
        row = static_cast<int>(r);
      else if (pair < 0 && plan.rows[r].pair < 0 && mirrored(sample, part))
        pair = static_cast<int>(r);
    }
    if (row < 0) {
      row = static_cast<int>(plan.rows.size());
      plan.rows.emplace_back();
      plan.rows.back().pair = pair;
      plan.rows.back().name = parts[i].name;
      if (pair >= 0) plan.rows[static_cast<std::size_t>(pair)].pair = row;
    }
    plan.rows[static_cast<std::size_t>(row)].members.push_back(static_cast<int>(i));
    plan.row_of_part[i] = row;
  }
}

// Every solid's boundary, so that from here on the plan is only read, by two threads at once.
void find_boundaries(const Plan& plan) {
  std::vector<const Solid*> solids;
  for (const parts::Part& part : plan.assembly.parts)
    solids.insert(solids.end(), {&part.body, &part.world});
  for (const auto& [panel, whole] : plan.edged)
    solids.insert(solids.end(), {&whole.body, &whole.world});
  in_parallel(solids.size(), [&](std::size_t i) {
    if (!solids[i]->empty()) (void)solids[i]->boundary();
  });
}

double place_from_left(const Plan& plan, const PartRow& row) {
  return plan.assembly.parts[static_cast<std::size_t>(row.members.front())].world.centroid().x;
}

void give_marks(Plan& plan) {
  std::size_t next = 0;
  for (PartRow& row : plan.rows) {
    if (!row.mark.empty()) continue;
    row.mark = letters(next++);
    if (row.pair < 0) continue;
    PartRow& other = plan.rows[static_cast<std::size_t>(row.pair)];
    const bool first_left = place_from_left(plan, row) <= place_from_left(plan, other);
    row.hand = first_left ? Hand::left : Hand::right;
    other.hand = first_left ? Hand::right : Hand::left;
    other.mark = row.mark + (first_left ? "-R" : "-L");
    row.mark += first_left ? "-L" : "-R";
  }
}

void measure_row(const model::Project& project, const parts::Part& part, PartRow& row) {
  row.stock = part.stock;
  row.finished = part.size;
  const double allowance = project.shop.blank_allowance->mm;
  const model::Stock* stock = project.stocks.find(part.stock);
  const double thick =
      stock != nullptr && stock->thickness.given ? stock->thickness->mm : part.size.z;
  row.blank = {part.size.x + allowance, part.size.y + allowance, std::max(thick, part.size.z)};
  const Points points = point_lengths(part);
  row.long_point = points.long_point;
  row.short_point = points.short_point;
  row.volume = part.body.volume();
  if (stock != nullptr) row.mass = row.volume * 1e-9 * stock->weight();
  for (const parts::Operation& operation : part.operations)
    if (operation.kind == parts::OperationKind::end_cut ||
        operation.kind == parts::OperationKind::edge_cut)
      row.cuts.push_back(read_cut(operation, part));
}

void report_joints(Plan& plan) {
  for (const parts::Joint& joint : plan.assembly.joints) {
    JointReport report{joint.name, joint.kind, {}, joint.dihedral, joint_gap(joint, plan.assembly)};
    for (const int part : joint.between) report.between.push_back(plan.mark_of(part));
    plan.joints.push_back(std::move(report));
  }
}

// Height of the farthest corner square to the loop's first side.
double height_over_first_side(const std::vector<Vec3>& corners) {
  const Vec3 side = unit(corners[1] - corners[0]);
  double height = 0;
  for (const Vec3& p : corners) {
    const Vec3 to = p - corners[0];
    height = std::max(height, norm(to - side * dot(to, side)));
  }
  return height;
}

void report_loops(Plan& plan) {
  for (const parts::CheckLoop& loop : plan.assembly.loops) {
    LoopReport report;
    report.name = loop.name;
    const std::size_t n = loop.corners.size();
    for (std::size_t i = 0; i < n; ++i)
      report.sides.push_back(norm(loop.corners[(i + 1) % n] - loop.corners[i]));
    if (n == 4) {
      report.diagonal_1 = norm(loop.corners[2] - loop.corners[0]);
      report.diagonal_2 = norm(loop.corners[3] - loop.corners[1]);
    }
    report.check = height_over_first_side(loop.corners);
    plan.loops.push_back(std::move(report));
  }
}

void sum_stock(Plan& plan) {
  static constexpr std::string_view kinds[] = {"sheet", "board", "edge band"};
  const model::Project& project = *plan.project;
  for (std::size_t s = 0; s < project.stocks.size(); ++s) {
    const model::Stock& stock = project.stocks[s];
    StockUse use;
    use.name = stock.name;
    use.kind = kinds[static_cast<std::size_t>(stock.kind.value)];
    use.material = *stock.material;
    use.thickness = stock.thickness->mm;
    for (const PartRow& row : plan.rows) {
      if (row.stock != stock.name) continue;
      const auto count = static_cast<double>(row.quantity());
      use.pieces += static_cast<int>(row.quantity());
      use.area += count * row.finished.x * row.finished.y;
      use.length += count * row.finished.x;
    }
    if (use.pieces > 0) plan.stock.push_back(std::move(use));
  }
}

}  // namespace

std::string_view word(Hand hand) {
  static constexpr std::string_view words[] = {"none", "left", "right"};
  return words[static_cast<std::size_t>(hand)];
}

bool Plan::stopped() const {
  return std::any_of(findings.begin(), findings.end(),
                     [](const Finding& finding) { return finding.level == Level::stop; });
}

const std::string& Plan::mark_of(int part) const {
  const int row = row_of_part[static_cast<std::size_t>(part)];
  return rows[static_cast<std::size_t>(row)].mark;
}

const parts::Part& Plan::as_cut(int part) const {
  const auto found = edged.find(part);
  return found == edged.end() ? assembly.parts[static_cast<std::size_t>(part)] : found->second;
}

const parts::Part& Plan::sample(int row) const {
  return as_cut(rows[static_cast<std::size_t>(row)].members.front());
}

Plan make_plan(const model::Project& project, parts::Assembly assembly,
               const packing::Effort& effort) {
  Plan plan;
  plan.project = &project;
  plan.assembly = std::move(assembly);
  plan.findings = plan.assembly.findings;
  // A part cut away has no shape to plan; the audit has said so.
  const bool whole = std::none_of(plan.assembly.parts.begin(), plan.assembly.parts.end(),
                                  [](const parts::Part& part) { return part.body.empty(); });
  if (whole) {
    if (!plan.stopped()) split_long_parts(plan);
    find_edged(plan);
    find_boundaries(plan);
    gather_rows(plan);
    give_marks(plan);
    for (PartRow& row : plan.rows)
      measure_row(project, plan.assembly.parts[static_cast<std::size_t>(row.members.front())], row);
    report_joints(plan);
    report_loops(plan);
    sum_stock(plan);
    if (!plan.stopped()) plan_steps(plan);
    check_plan(plan);
    if (!plan.stopped()) plan_glue_up(plan);
    lay_out(plan, effort);
  }
  std::stable_sort(plan.findings.begin(), plan.findings.end(),
                   [](const Finding& a, const Finding& b) { return a.level < b.level; });
  return plan;
}

}  // namespace splay::fabrication
