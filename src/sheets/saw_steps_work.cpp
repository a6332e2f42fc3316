#include "sheets/saw_steps_work.h"

#include <algorithm>
#include <map>
#include <utility>

#include "fabrication/proof.h"
#include "fabrication/simulate.h"

namespace splay::sheets {

namespace {

using fabrication::Plan;
using fabrication::Step;

// What the tool itself takes, without the off-cut that falls away.
Box bite_of(const StepWork& work) {
  Region region = work.region;
  const Step& step = *work.step;
  const bool saw = step.tool == fabrication::Tool::blade || step.tool == fabrication::Tool::stack;
  if (saw) region.push_back({-region.front().n, step.exact.width - region.front().d});
  for (Plane& plane : region) plane = work.machine.plane(plane);
  Solid met = work.before;
  if (step.tool != fabrication::Tool::follow) met.keep(region);
  if (met.empty()) met = work.before;
  Box box;
  for (const Vec3& p : met.vertices()) box.add(work.machine.local_point(p));
  return box;
}

StepWork worked(const Step& step, const Solid& before) {
  StepWork work;
  work.step = &step;
  work.before = work.after = before;
  work.why = fabrication::lay(step, step.exact, before, work.machine);
  if (work.why.empty()) work.why = fabrication::carry_out(step, step.exact, work.after);
  if (!work.why.empty()) return work;
  work.region = fabrication::swept(step, step.exact, work.machine, before);
  work.bite = bite_of(work);
  return work;
}

// The steps of each row that are still to be cut.
struct WorkRow {
  std::size_t next = 0, end = 0;
};

class Order {
 public:
  explicit Order(const std::vector<StepWork>& works) : works_(works) {
    for (std::size_t i = 0; i < works.size(); ++i) {
      if (i == 0 || works[i].step->row != works[i - 1].step->row) rows_.push_back({i, i});
      rows_.back().end = i + 1;
      ++left_[works[i].step->group];
    }
    for (std::size_t r = 0; r < rows_.size(); ++r) place_[step(rows_[r].next).row] = r;
  }

  std::vector<Bench> run() {
    std::vector<Bench> benches;
    while (std::ranges::any_of(rows_, [](const WorkRow& row) { return row.next < row.end; }))
      benches.push_back(cut(next_group()));
    return benches;
  }

 private:
  const Step& step(std::size_t i) const { return *works_[i].step; }
  // Where its fence or stop was set.
  std::size_t set_at(std::size_t i) const {
    return step(i).same_as >= 0 ? static_cast<std::size_t>(step(i).same_as) : i;
  }

  // A strip is made before it is glued on.
  bool may_begin(std::size_t i) const {
    const auto strip = place_.find(step(i).glued);
    return strip == place_.end() || rows_[strip->second].next == rows_[strip->second].end;
  }

  // How many steps can be cut one after the other in a group as things are.
  int ready(int group) const {
    int count = 0;
    for (const WorkRow& row : rows_)
      for (std::size_t i = row.next; i < row.end && step(i).group == group && may_begin(i); ++i)
        ++count;
    return count;
  }

  // The one that leaves least of itself for later, the first of those.
  int next_group() const {
    int best = -1, least = 0;
    for (const WorkRow& row : rows_) {
      if (row.next == row.end || !may_begin(row.next)) continue;
      const int group = step(row.next).group, later = left_.at(group) - ready(group);
      if (best >= 0 && (later > least || (later == least && group >= best))) continue;
      best = group;
      least = later;
    }
    return best;
  }

  Bench cut(int group) {
    Bench bench;
    std::size_t setting = works_.size();
    for (;;) {
      WorkRow* chosen = nullptr;
      for (WorkRow& row : rows_) {
        if (row.next == row.end || step(row.next).group != group || !may_begin(row.next)) continue;
        if (chosen == nullptr) chosen = &row;
        if (set_at(row.next) != setting) continue;
        chosen = &row;
        break;
      }
      if (chosen == nullptr) return bench;
      setting = set_at(chosen->next);
      bench.steps.push_back(&works_[chosen->next++]);
      --left_[group];
    }
  }

  const std::vector<StepWork>& works_;
  std::vector<WorkRow> rows_;
  std::map<int, int> left_;
  std::map<int, std::size_t> place_;  // in rows_, by the plan's row
};

}  // namespace

std::vector<StepWork> step_works(const Plan& plan) {
  std::vector<StepWork> works;
  works.reserve(plan.steps.size());
  for (const Step& step : plan.steps) {
    const bool first = works.empty() || works.back().step->row != step.row;
    const fabrication::PartRow& row = plan.rows[static_cast<std::size_t>(step.row)];
    if (first) {
      const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
      works.push_back(worked(step, fabrication::blank_of(*plan.project, part)));
    } else {
      works.push_back(worked(step, works.back().after));
      works.back().before_it = works[works.size() - 2].step;
    }
  }
  return works;
}

std::vector<Bench> bench_order(const std::vector<StepWork>& works) { return Order(works).run(); }

}  // namespace splay::sheets
