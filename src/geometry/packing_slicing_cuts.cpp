// A slicing tree written out as cuts: where the slack of every level goes.
#include <algorithm>

#include "geometry/packing_slicing.h"

namespace splay::packing {

namespace {

double product(Units a, Units b) { return static_cast<double>(a) * static_cast<double>(b); }

struct Block {
  Units size[2] = {0, 0};
  int piece = -1;
  bool turned = false;
  int axis = 0;
  std::vector<Block> row;
};

// Thick blocks first, long before short, pieces in the order given.
bool comes_first(const Block& a, const Block& b, int along) {
  const int over = 1 - along;
  if (a.size[over] != b.size[over]) return a.size[over] > b.size[over];
  if (a.size[along] != b.size[along]) return a.size[along] > b.size[along];
  return a.piece < b.piece;
}

class Cutter {
 public:
  explicit Cutter(CutTree& tree) : tree_(tree) {}

  // Divides `node` at `size` along an axis; returns the two sides.
  std::pair<int, int> split(int node, int axis, Units size) {
    const CutNode whole = tree_[static_cast<std::size_t>(node)];
    CutNode near = whole, far = whole;
    (axis == 0 ? near.width : near.height) = size;
    (axis == 0 ? far.x : far.y) += size;
    (axis == 0 ? far.width : far.height) -= size;
    const int first = static_cast<int>(tree_.size());
    tree_.push_back(near);
    tree_.push_back(far);
    CutNode& cut = tree_[static_cast<std::size_t>(node)];
    cut.content = Content::split;
    cut.axis = axis == 0 ? Axis::x : Axis::y;
    cut.at = (axis == 0 ? whole.x : whole.y) + size;
    cut.first = first;
    cut.second = first + 1;
    return {first, first + 1};
  }

  // What is left of `node` after cutting off all beyond `size`.
  int trim(int node, int axis, Units size) {
    return extent(node, axis) == size ? node : split(node, axis, size).first;
  }

  void fill(int node, const Block& block) {
    const Units slack[2] = {extent(node, 0) - block.size[0], extent(node, 1) - block.size[1]};
    const double x_first =
        std::max(product(slack[0], extent(node, 1)), product(slack[1], block.size[0]));
    const double y_first =
        std::max(product(slack[1], extent(node, 0)), product(slack[0], block.size[1]));
    const int axis = x_first >= y_first ? 0 : 1;
    node = trim(node, axis, block.size[axis]);
    node = trim(node, 1 - axis, block.size[1 - axis]);
    if (block.piece >= 0) {
      CutNode& leaf = tree_[static_cast<std::size_t>(node)];
      leaf.content = Content::piece;
      leaf.piece = block.piece;
      leaf.turned = block.turned;
    } else {
      fill_row(node, block);
    }
  }

 private:
  Units extent(int node, int axis) const {
    const CutNode& n = tree_[static_cast<std::size_t>(node)];
    return axis == 0 ? n.width : n.height;
  }

  // The row's blocks stand side by side in a region of their total length. Where the rest of the
  // row is thinner, its common surplus is cut off in one strip if that leaves the larger off-cut.
  void fill_row(int node, const Block& block) {
    const int along = block.axis, over = 1 - along;
    Units rest = block.size[along];
    for (std::size_t i = 0; i < block.row.size(); ++i) {
      const Block& part = block.row[i];
      const Units thick = extent(node, over), strip = thick - part.size[over];
      double apart = 0;
      for (std::size_t j = i; j < block.row.size(); ++j)
        apart = std::max(apart, product(block.row[j].size[along], thick - block.row[j].size[over]));
      if (strip > 0 && product(rest, strip) >= apart)
        node = split(node, over, part.size[over]).first;
      if (i + 1 == block.row.size()) {
        fill(node, part);
        return;
      }
      const auto [mine, others] = split(node, along, part.size[along]);
      fill(mine, part);
      node = others;
      rest -= part.size[along];
    }
  }

  CutTree& tree_;
};

}  // namespace

CutTree SlicingTree::cuts() const {
  const auto block_of = [this](const auto& self, int node) -> Block {
    const Node& n = at(node);
    Block block{{n.size[0], n.size[1]}, n.piece, n.turned, n.axis, {}};
    for (int b = n.first; b >= 0; b = at(b).next) block.row.push_back(self(self, b));
    std::stable_sort(block.row.begin(), block.row.end(),
                     [&](const Block& a, const Block& b) { return comes_first(a, b, block.axis); });
    return block;
  };
  CutTree tree(1);
  tree[0].width = sheet_[0];
  tree[0].height = sheet_[1];
  if (!empty()) Cutter(tree).fill(0, block_of(block_of, 0));
  return tree;
}

}  // namespace splay::packing
