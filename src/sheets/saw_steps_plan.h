// What the drawing from above hands to the writing of its names. Internal to src/sheets.
#pragma once

#include <vector>

#include "sheets/saw_steps_draw.h"

namespace splay::sheets {

struct SeenFromAbove {
  const drafting::Kit& kit;
  const parts::Part& part;
  const StepWork& work;
  Stance stance;
  Vec2 along;      // on paper: along the gauge or square to the fence
  Vec2 low, high;  // of the wood, along and across, mm
  double scale = 1;
  const BrokenView& view;
  const std::vector<Vec2>& marked;  // places marked on the work, on paper
  double stop_side = 0;             // of a gauge's stop: -1 left, 1 right; 0 without a gauge

  Vec2 edge(double first, double second) const { return along * first + left_of(along) * second; }
  Vec2 paper(Vec2 seen) const { return view.paper(seen * scale); }
};

// The gauge's angle, what lies up, the ends and what leads, the marks' numbers: each at the first
// place that is free.
void add_plan_names(const SeenFromAbove& plan, drafting::Items& items);

}  // namespace splay::sheets
