#include "geometry/packing_cuts.h"

#include <algorithm>

namespace splay::packing {

namespace {

// A run of cuts in one direction divides a region into a row; each level of rows is one stage.
void collect_stage(const CutTree& tree, int node, std::vector<int>& cuts, std::vector<int>& next) {
  const Axis axis = tree[static_cast<std::size_t>(node)].axis;
  const auto visit = [&](const auto& self, int n) -> void {
    const CutNode& region = tree[static_cast<std::size_t>(n)];
    if (region.content != Content::split) return;
    if (region.axis != axis) {
      next.push_back(n);
      return;
    }
    cuts.push_back(n);
    self(self, region.first);
    self(self, region.second);
  };
  visit(visit, node);
}

}  // namespace

int split_region(CutTree& tree, int node, Axis axis, Units size) {
  const CutNode whole = tree[static_cast<std::size_t>(node)];
  CutNode near = whole, far = whole;
  (axis == Axis::x ? near.width : near.height) = size;
  (axis == Axis::x ? far.x : far.y) += size;
  (axis == Axis::x ? far.width : far.height) -= size;
  const int first = static_cast<int>(tree.size());
  tree.push_back(near);
  tree.push_back(far);
  CutNode& cut = tree[static_cast<std::size_t>(node)];
  cut.content = Content::split;
  cut.axis = axis;
  cut.at = (axis == Axis::x ? whole.x : whole.y) + size;
  cut.first = first;
  cut.second = first + 1;
  return first;
}

int trim_region(CutTree& tree, int node, Units width, Units height) {
  const CutNode whole = tree[static_cast<std::size_t>(node)];
  const Units beside = whole.width - width, above = whole.height - height;
  const double x_first = std::max(product(beside, whole.height), product(above, width));
  const double y_first = std::max(product(above, whole.width), product(beside, height));
  const auto trim_x = [&] {
    if (beside > 0) node = split_region(tree, node, Axis::x, width);
  };
  if (x_first >= y_first) trim_x();
  if (above > 0) node = split_region(tree, node, Axis::y, height);
  if (x_first < y_first) trim_x();
  return node;
}

std::vector<int> regions_with(const CutTree& tree, Content content) {
  std::vector<int> found;
  const auto visit = [&](const auto& self, int n) -> void {
    const CutNode& region = tree[static_cast<std::size_t>(n)];
    if (region.content == content) found.push_back(n);
    if (region.content != Content::split) return;
    self(self, region.first);
    self(self, region.second);
  };
  if (!tree.empty()) visit(visit, 0);
  return found;
}

std::vector<int> cut_order(const CutTree& tree) {
  std::vector<int> cuts, stage;
  if (!tree.empty()) stage.push_back(0);
  while (!stage.empty()) {
    std::vector<int> next;
    for (const int node : stage) collect_stage(tree, node, cuts, next);
    stage = std::move(next);
  }
  return cuts;
}

}  // namespace splay::packing
