// A slicing tree written out as cuts: where the slack of every level goes.
#include <algorithm>

#include "geometry/packing_cuts.h"
#include "geometry/packing_slicing.h"

namespace splay::packing {

namespace {

Axis axis_of(int index) { return index == 0 ? Axis::x : Axis::y; }

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

class BlockCutter {
 public:
  explicit BlockCutter(CutTree& tree) : tree_(tree) {}

  void fill(int node, const Block& block) {
    node = trim_region(tree_, node, block.size[0], block.size[1]);
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
        node = split_region(tree_, node, axis_of(over), part.size[over]);
      if (i + 1 == block.row.size()) {
        fill(node, part);
        return;
      }
      const int mine = split_region(tree_, node, axis_of(along), part.size[along]);
      fill(mine, part);
      node = mine + 1;
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
  if (!empty()) BlockCutter(tree).fill(0, block_of(block_of, 0));
  return tree;
}

}  // namespace splay::packing
