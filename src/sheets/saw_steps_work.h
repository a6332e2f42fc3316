// The wood a step finds and leaves, and the order of the bench. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "fabrication/plan.h"

namespace splay::sheets {

// One step with the wood as it lies for it. The wood stands in its part's axes.
struct StepWork {
  const fabrication::Step* step = nullptr;
  const fabrication::Step* before_it = nullptr;  // the same part's step before; null: none
  Solid before, after;
  Rigid machine;  // the machine frame (fabrication/steps.h) in the part's axes
  Region region;  // what the tool sweeps, machine frame; a through cut's: all on the waste side
  Box bite;       // of the wood the tool itself meets, machine frame; all of it where it meets none
  std::string why;  // it can't be carried out: nothing else but `before` is filled

  // What is drawn: the wood it finds, or with what it glues on.
  const Solid& drawn() const { return step->tool == fabrication::Tool::edging ? after : before; }
};

inline bool sawn(const fabrication::Step& step) {
  return step.tool == fabrication::Tool::blade || step.tool == fabrication::Tool::stack;
}

// Where each such step is, its marks and lines say.
inline bool told_by_marks(const fabrication::Step& step) {
  return step.guide == fabrication::Guide::marks && step.tool != fabrication::Tool::follow;
}

// Every step with its wood, in the plan's order.
std::vector<StepWork> step_works(const fabrication::Plan& plan);

// Steps that are cut one after the other with machine, tool, tilt and gauge left as they are.
struct Bench {
  std::vector<const StepWork*> steps;
};

// All steps in an order that keeps each part's own and changes the setting seldom: what can be cut
// as the machine stands is cut before it is changed, and next comes the setting for which most is
// ready. Steps with the same fence or stop follow each other.
std::vector<Bench> bench_order(const std::vector<StepWork>& works);

// One setting and one way to lay the work for all: the first is drawn.
using JoinedSteps = std::vector<const StepWork*>;

// The bench's steps in their order, those that are the same cut taken together as far as each
// part's own order allows.
std::vector<JoinedSteps> joined_steps(const Bench& bench);

}  // namespace splay::sheets
