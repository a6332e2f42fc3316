// A dado stack, or passes side by side: trenches and rabbets with a floor square to their walls.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "fabrication/derive.h"
#include "fabrication/sides.h"

namespace splay::fabrication {

using parts::outward;
using parts::Side;

namespace {

// mm: so far a stack runs out past the wood, that rounded settings leave no fin at the edge. Common
// practice, no source.
constexpr double overrun = 2;
// mm: a stop stands no nearer to the cut. Common practice, no source.
constexpr double least_at_stop = 5;

// The wall the stack is set to, the width it clears from there, and its highest corner.
struct Stack {
  Plane wall;  // normal out of the wood that stays, into the waste
  double width = 0;
  bool two_walls = false;
  Vec3 up, corner;   // of wall and floor
  double table = 0;  // how far the open face is against `up`
  // A point on wall and floor, or one a width further along the floor.
  double height() const {
    return table + std::max(dot(up, corner), dot(up, corner + wall.n * width));
  }
};

std::optional<Stack> stack_at(const Derivation& at, const Pocket& pocket, std::size_t chosen) {
  if (!pocket.floor || pocket.walls.empty() || pocket.walls.size() > 2) return {};
  Stack stack;
  stack.wall = pocket.walls[chosen].flipped();
  stack.two_walls = pocket.walls.size() == 2;
  const Vec3 out = outward(pocket.open);
  const Plane& floor = *pocket.floor;
  if (std::abs(dot(stack.wall.n, floor.n)) > no_angle) return {};
  if (std::abs(dot(cross(stack.wall.n, floor.n), out)) > no_angle) return {};
  if (stack.two_walls) {
    const Plane& other = pocket.walls[1 - chosen];
    if (norm(other.n - stack.wall.n) > no_angle) return {};
    stack.width = other.d - stack.wall.d;
  } else {
    stack.width = at.high(stack.wall.n) - stack.wall.d;
  }
  stack.up = -out;
  stack.corner = stack.wall.n * stack.wall.d + floor.n * floor.d;
  stack.table = at.high(out);
  return stack;
}

bool stack_can(const model::Saw& saw, const Stack& stack, const Step& step) {
  const bool dado = saw.widest_stack->mm > 0;
  if (stack.height() < tolerance::weld) return false;
  if (step.tool == Tool::blade) return true;
  const double width = stack.width + tolerance::weld;  // a nominal size stays one after sums
  // Upright, passes side by side add up to any width from the narrowest cut on.
  if (step.exact.tilt == 0)
    return width >= (dado ? std::min(saw.narrowest_stack->mm, saw.kerf->mm) : saw.kerf->mm);
  return dado && width >= saw.narrowest_stack->mm &&
         width <= saw.widest_stack->mm + 2 * tolerance::weld;
}

// Where only one wall stands the stack runs out past the wood; tilted as far as it is wide.
void run_out(const model::Saw& saw, const Step& step, Stack& stack) {
  if (stack.two_walls) return;
  const double room = step.exact.tilt == 0 ? overrun : saw.widest_stack->mm - stack.width;
  stack.width += std::clamp(room, 0.0, overrun);
}

void offer_stack(const Derivation& at, Stack stack, const Lying& lying, std::optional<Step>& best,
                 double& best_fit) {
  std::optional<Step> step = set_blade(at, lying, stack.wall);
  if (!step) return;
  const bool beyond = step->waste_right != step->reference_right;
  if (stack.two_walls && !beyond) return;
  // A stop beside the blade is in its way, and a short end at it does not lead the work.
  const bool gauged = step->guide == Guide::gauge;
  if (gauged && step->exact.distance < stack.width + least_at_stop) return;
  const bool one_kerf =
      stack.two_walls && std::abs(stack.width - at.shop->saw.kerf->mm) < tolerance::weld;
  step->tool = one_kerf ? Tool::blade : Tool::stack;
  run_out(at.shop->saw, *step, stack);
  step->exact.width = stack.width;
  step->exact.height = stack.height();
  step->cuts_through = false;
  step->runs_out = !stack.two_walls;
  if (!stack_can(at.shop->saw, stack, *step)) return;
  double fit = fitness(at, *step);
  if (fit < 0) return;
  if (gauged && step->exact.distance < short_at_stop) fit += 0.3;
  if (!beyond) {
    step->flags.push_back(Flag::sacrificial);
    fit += 0.3;
  }
  if (fit >= best_fit - 1e-12) return;
  best_fit = fit;
  best = std::move(step);
}

}  // namespace

std::optional<Step> by_stack(const Derivation& at, const Pocket& pocket) {
  std::optional<Step> best;
  double fit = 1e9;
  for (std::size_t wall = 0; wall < pocket.walls.size(); ++wall) {
    const std::optional<Stack> stack = stack_at(at, pocket, wall);
    if (!stack) continue;
    for (const Side against : all_sides) {
      if (std::abs(dot(outward(against), outward(pocket.open))) > 0.5) continue;
      for (const bool right : {true, false})
        offer_stack(at, *stack, {Machine::table_saw, Guide::fence, pocket.open, against, right},
                    best, fit);
      if (std::abs(outward(against).x) < 0.5 && std::abs(outward(pocket.open).x) < 0.5)
        offer_stack(at, *stack, {Machine::table_saw, Guide::gauge, pocket.open, against, true},
                    best, fit);
    }
  }
  if (best) best->flags.push_back(Flag::guard_off);
  return best;
}

std::vector<Pocket> by_passes(const Derivation& at, const Pocket& slot) {
  constexpr int most = 4;  // more is no work for a plain blade
  if (!slot.floor || slot.walls.size() != 2) return {};
  const Plane &wall = slot.walls[0], &other = slot.walls[1];
  const double kerf = at.shop->saw.kerf->mm, width = wall.d + other.d;
  if (norm(wall.n + other.n) > no_angle || width < kerf - tolerance::weld) return {};
  const int count = static_cast<int>(std::ceil((width - tolerance::weld) / kerf));
  if (count > most) return {};
  std::vector<Pocket> passes;
  for (int i = 0; i < count; ++i) {
    const double far = wall.d - std::min(i * kerf, width - kerf);
    Pocket pass{slot.open, slot.floor, {{wall.n, far}, {other.n, kerf - far}}};
    if (!by_stack(at, pass)) return {};
    passes.push_back(std::move(pass));
  }
  return passes;
}

}  // namespace splay::fabrication
