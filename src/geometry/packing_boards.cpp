#include "geometry/packing_boards.h"

#include <algorithm>
#include <stdexcept>

#include "geometry/packing_lengths.h"
#include "geometry/packing_ticks.h"

namespace splay::packing {

namespace {

void check(const BoardTask& task) {
  const auto refuse_unless = [](bool right, const char* what) {
    if (!right) throw std::invalid_argument(what);
  };
  refuse_unless(task.kerf >= 0, "negative kerf");
  for (const BoardStock& b : task.boards) {
    refuse_unless(b.length > 0, "a board without length");
    refuse_unless(b.cost >= 0, "a board of negative cost");
    refuse_unless(b.trim_left >= 0 && b.trim_right >= 0, "negative end trim");
    for (const Interval& i : b.blocked) refuse_unless(i.from <= i.to, "a defect that ends first");
  }
  for (const BoardPart& p : task.parts) {
    refuse_unless(p.length > 0, "a part without length");
    refuse_unless(p.count >= 0, "a negative number of parts");
  }
}

// The cuts of a board that free its parts, and what is left between them.
void add_cuts(const BoardStock& board, const std::vector<Interval>& clear, const BoardTask& task,
              BoardLayout& layout) {
  double free_from = 0;  // right side of the last kerf
  for (const BoardLayout::Placed& part : layout.parts) {
    if (part.at - free_from > thinnest_cut) layout.cuts.push_back(part.at - task.kerf);
    const double end = part.at + part.length;
    if (board.length - end > thinnest_cut) layout.cuts.push_back(end);
    free_from = end + task.kerf;
  }
  for (const Interval& stretch : clear) {
    double from = stretch.from;
    for (const BoardLayout::Placed& part : layout.parts)
      if (part.at >= stretch.from - thinnest_cut && part.at <= stretch.to)
        from = std::max(from, part.at + part.length + task.kerf);
    if (stretch.to - from >= task.least_off_cut) layout.off_cuts.push_back({from, stretch.to});
  }
}

// The parts of each stretch from its left end on.
BoardLayout layout_of(const BoardTask& task, const std::vector<Interval>& clear,
                      const FilledBar& bar, const std::vector<int>& part_of, Units kerf) {
  BoardLayout layout{bar.bar, {}, {}, {}};
  for (std::size_t s = 0; s < bar.pieces.size(); ++s) {
    Units run = 0;
    for (const int piece : bar.pieces[s]) {
      const int part = part_of[static_cast<std::size_t>(piece)];
      const double length = task.parts[static_cast<std::size_t>(part)].length;
      layout.parts.push_back({part, clear[s].from + mm_of(run), length});
      run += ticks_of(length) + kerf;
    }
  }
  add_cuts(task.boards[static_cast<std::size_t>(bar.bar)], clear, task, layout);
  return layout;
}

}  // namespace

std::vector<Interval> clear_stretches(const BoardStock& board, double kerf) {
  std::vector<Interval> blocked = board.blocked;
  std::sort(blocked.begin(), blocked.end(),
            [](const Interval& a, const Interval& b) { return a.from < b.from; });
  const double end = board.length - board.trim_right;
  double from = board.trim_left;
  std::vector<Interval> clear;
  for (const Interval& defect : blocked) {
    const double to = std::min(defect.from, end);
    if (to > from) clear.push_back({from, to});
    const double past = to > from ? std::max(defect.to, to + kerf) : defect.to;
    from = std::max(from, past);
  }
  if (end > from) clear.push_back({from, end});
  return clear;
}

BoardPlan plan_boards(const BoardTask& task, const Effort& effort) {
  check(task);
  const Units kerf = ticks_of(task.kerf);
  std::vector<std::vector<Interval>> clear;
  std::vector<Bar> bars;
  for (const BoardStock& board : task.boards) {
    clear.push_back(clear_stretches(board, task.kerf));
    Bar bar{{}, board.count, board.cost};
    for (const Interval& stretch : clear.back())
      bar.stretches.push_back(ticks_of(stretch.to - stretch.from) + kerf);
    bars.push_back(std::move(bar));
  }
  std::vector<Units> lengths;
  std::vector<int> part_of;
  for (std::size_t p = 0; p < task.parts.size(); ++p) {
    const auto count = static_cast<std::size_t>(task.parts[p].count);
    lengths.insert(lengths.end(), count, ticks_of(task.parts[p].length) + kerf);
    part_of.insert(part_of.end(), count, static_cast<int>(p));
  }
  const LengthPlan found = cut_lengths(bars, lengths, effort);
  BoardPlan plan;
  for (const FilledBar& bar : found.bars) {
    const auto stock = static_cast<std::size_t>(bar.bar);
    plan.layouts.push_back(layout_of(task, clear[stock], bar, part_of, kerf));
  }
  std::stable_sort(plan.layouts.begin(), plan.layouts.end(),
                   [](const BoardLayout& a, const BoardLayout& b) { return a.stock < b.stock; });
  for (const int piece : found.unplaced)
    plan.unplaced.push_back(part_of[static_cast<std::size_t>(piece)]);
  std::sort(plan.unplaced.begin(), plan.unplaced.end());
  plan.cost = found.cost;
  plan.bound = plan.unplaced.empty() ? found.bound : 0;
  plan.steps = found.steps;
  return plan;
}

}  // namespace splay::packing
