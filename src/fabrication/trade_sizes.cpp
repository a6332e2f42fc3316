#include "fabrication/trade_sizes.h"

#include <algorithm>

#include "base/quantity.h"

namespace splay::fabrication {

ThicknessBand structural_panel(double named) {
  const bool thin = named <= Length::inches(13.0 / 16).mm + 1e-6;
  const double off = thin ? Length::inches(1.0 / 32).mm : 0.05 * named;
  return {named - off, named + off};
}

ThicknessBand panel(double named) {
  const ThicknessBand structural = structural_panel(named);
  return {std::min(structural.least, named - Length::inches(3.0 / 64).mm), structural.most};
}

double least_dry_rough(double named) { return named - Length::inches(1.0 / 16).mm; }

}  // namespace splay::fabrication
