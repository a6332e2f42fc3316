#include "geometry/packing_sheets.h"

#include <algorithm>

#include "geometry/packing_bound.h"
#include "geometry/packing_search.h"
#include "geometry/packing_sheet_pieces.h"

namespace splay::packing {

namespace {

// Steps are shared out: the search for fewer sheets gets most, what is left gathers off-cuts. A
// round of column generation costs about as much as `steps_per_round` steps.
constexpr std::int64_t steps_per_round = 50;
constexpr std::int64_t most_rounds = 60;

Packing search(const SheetPieces& task, const Effort& effort, double& bound) {
  const Effort quick{effort.steps / 8, effort.progress};
  bound =
      std::max(area_bound(task.stocks, task.pieces), dual_feasible_bound(task.stocks, task.pieces));
  Packing packing = pack_sheets(task.stocks, task.pieces, quick, bound);
  if (packing.unplaced.empty() && packing.cost > bound && effort.steps > 0) {
    const Effort rounds{std::min(most_rounds, effort.steps / steps_per_round), {}};
    bound = std::max(bound, column_bound(task.stocks, task.pieces, rounds));
  }
  const Effort rest{effort.steps / 8 * 5, effort.progress};
  improve_sheets(packing, task.stocks, task.pieces, rest, bound);
  if (!packing.unplaced.empty()) bound = 0;
  const Effort left{effort.steps / 4, effort.progress};
  gather_off_cut(packing, task.pieces, left);
  return packing;
}

}  // namespace

SheetPlan plan_sheets(const SheetTask& task, const Effort& effort) {
  const SheetPieces pieces = pieces_of(task);
  SheetPlan plan;
  const Packing packing = search(pieces, effort, plan.bound);
  for (const PackedSheet& sheet : packing.sheets)
    plan.layouts.push_back(layout_of(task, pieces, sheet.stock, sheet.tree.cuts()));
  std::stable_sort(plan.layouts.begin(), plan.layouts.end(),
                   [](const SheetLayout& a, const SheetLayout& b) {
                     if (a.stock != b.stock) return a.stock < b.stock;
                     return a.parts_area > b.parts_area;
                   });
  for (const int index : packing.unplaced) {
    const SheetPieces::Origin& from = pieces.origins[static_cast<std::size_t>(index)];
    if (from.sequence < 0) {
      plan.unplaced.push_back(from.part);
    } else {
      const auto& parts = task.sequences[static_cast<std::size_t>(from.sequence)].parts;
      plan.unplaced.insert(plan.unplaced.end(), parts.begin(), parts.end());
    }
  }
  std::sort(plan.unplaced.begin(), plan.unplaced.end());
  plan.cost = packing.cost;
  plan.steps = packing.steps;
  return plan;
}

}  // namespace splay::packing
