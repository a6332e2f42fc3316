// The author's clamps, as the rows of a stage take them.
#include <algorithm>

#include "fabrication/glue_clamping.h"

namespace splay::fabrication {

namespace {

constexpr double short_reach = 200;  // mm: up to here a hand screw is thought of; common practice

int needed(double each, double force, int least) {
  return std::max(least, clamps_for(force, 1, each));
}

}  // namespace

Rack::Rack(const model::GlueUp& glue_up) : clamps_(glue_up.clamps) {
  for (std::size_t i = 0; i < clamps_.size(); ++i) left_.push_back(*clamps_[i].count);
}

void Rack::choose(Clamping& row, double force, int least) {
  const bool band = row.how == ClampWay::band;
  std::size_t best = clamps_.size();
  bool best_enough = false;
  for (std::size_t i = 0; i < clamps_.size(); ++i) {
    const model::Clamp& clamp = clamps_[i];
    if ((*clamp.kind == model::ClampKind::band) != band || clamp.reach->mm < row.reach) continue;
    const bool enough = left_[i] >= needed(clamp.newtons(), force, least);
    const bool better = best == clamps_.size() || (enough && !best_enough) ||
                        (enough == best_enough && clamp.reach->mm < clamps_[best].reach->mm);
    if (!better) continue;
    best = i;
    best_enough = enough;
  }
  if (best < clamps_.size()) {
    row.clamp = clamps_[best].name;
    row.kind = *clamps_[best].kind;
    row.each = clamps_[best].newtons();
  } else {
    row.kind = band                       ? model::ClampKind::band
               : row.reach <= short_reach ? model::ClampKind::screw
                                          : model::ClampKind::parallel;
    row.each = model::usual_force(row.kind);
  }
  row.count = needed(row.each, force, least);
  row.enough = best_enough || !listed();
  if (best < clamps_.size()) left_[best] -= row.count;
}

bool Rack::has_band(double girth) const {
  for (std::size_t i = 0; i < clamps_.size(); ++i)
    if (*clamps_[i].kind == model::ClampKind::band && clamps_[i].reach->mm >= girth &&
        *clamps_[i].count > 0)
      return true;
  return !listed();
}

}  // namespace splay::fabrication
