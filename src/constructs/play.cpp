#include "constructs/play.h"

#include <algorithm>
#include <cmath>

#include "model/movement.h"

namespace splay::constructs {

namespace {

double rounded_up(const model::Project& project, double mm) {
  const double step = project.job.figures().step_mm();
  return step * std::ceil(mm / step - 1e-9);
}

}  // namespace

double swelling(const model::Project& project, const std::string& stock, double across) {
  const model::Stock* of = project.stocks.find(stock);
  if (of == nullptr || *of->kind != model::StockKind::board) return 0;
  const model::Moistures at = model::moistures(project.room);
  return model::movement(across, of->timber.across_coefficient(), 0,
                         std::max(0.0, at.dampest - at.made));
}

double both_gaps(const model::Project& project, double swells) {
  return rounded_up(project, swells + project.shop.off_in_all());
}

double one_gap(const model::Project& project, double swells) {
  return rounded_up(project, (swells + project.shop.off_in_all()) / 2);
}

}  // namespace splay::constructs
