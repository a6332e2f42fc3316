// A slicing tree: pieces joined side by side or one above the other into ever larger blocks, kept
// as small as they can be, so that the slack of a sheet belongs to no block before it is used.
//
// An inner node is a row of blocks along its axis; the axes alternate from level to level, and the
// root is always a row along x. The order of blocks in a row is free and is kept by growing
// thickness (the size across the row). A new piece joins a row at its end, or lies across the k
// thinnest blocks of a row, which then become a row of their own. Such trees are the layouts that
// guillotine cuts can make.
//
// Insertion into a tree without fixed free rectangles: K. Fleszar, "Three insertion heuristics and
// a justification improvement heuristic for two-dimensional bin packing with guillotine cuts",
// Computers & Operations Research 40 (2013) 463-474.
#pragma once

#include <limits>
#include <optional>

#include "geometry/packing_types.h"

namespace splay::packing {

// Where a piece could go, and at what loss (0 is a perfect fit; see SlicingTree::best_slot).
struct Slot {
  int node = -1;   // the row joined, or the row whose first blocks are lain across
  int across = 0;  // how many of its blocks, 0 to join the row itself
  bool turned = false;
  double loss = std::numeric_limits<double>::infinity();
};

class SlicingTree {
 public:
  SlicingTree(Units width, Units height);

  // The slot of least loss for a piece, if it fits anywhere.
  std::optional<Slot> best_slot(const Piece& piece) const;

  // Puts a piece into a slot found for it since the last change of the tree.
  void insert(int piece_index, const Piece& piece, const Slot& slot);

  // Takes out the block at `node` (an index below node_count() for which is_block holds) and
  // returns the pieces it held.
  std::vector<int> remove(int node);

  // Changes the sheet; false, and no change, if the pieces need more.
  bool resize(Units width, Units height);

  int node_count() const { return static_cast<int>(nodes_.size()); }
  bool is_block(int node) const { return nodes_[static_cast<std::size_t>(node)].used; }
  int leaf_count() const { return leaves_; }
  int pieces_below(int node) const;
  int parent(int node) const { return at(node).parent; }
  bool empty() const { return leaves_ == 0; }
  Units width() const { return sheet_[0]; }
  Units height() const { return sheet_[1]; }
  Units used_width() const { return at(0).size[0]; }
  Units used_height() const { return at(0).size[1]; }
  double free_area() const { return free_area_; }
  std::vector<int> pieces() const;

  // The tree as cuts of its sheet: long blocks first, the larger of the possible off-cuts kept
  // whole.
  CutTree cuts() const;

 private:
  struct Node {
    Units size[2] = {0, 0};  // width and height of the block
    Units room[2] = {0, 0};  // what the block could grow to, everything else unchanged
    int parent = -1;
    int first = -1;  // first block of the row, thinnest first; -1 in a leaf
    int next = -1;   // next block of the parent's row
    int piece = -1;
    std::uint8_t axis = 0;  // of the row
    bool turned = false;
    bool used = false;
  };
  struct Search;

  Node& at(int node) { return nodes_[static_cast<std::size_t>(node)]; }
  const Node& at(int node) const { return nodes_[static_cast<std::size_t>(node)]; }
  int new_node();
  int new_row(int axis);
  void link(int row, int block);
  void unlink(int block);
  void measure(int row);
  void measure_upwards(int row);
  void collapse(int row);
  void release(int node, std::vector<int>& pieces);
  void share_room(int row);
  void search_row(int row, Search& search) const;

  std::vector<Node> nodes_;
  std::vector<int> spare_;
  int leaves_ = 0;
  Units sheet_[2];
  double free_area_;
};

}  // namespace splay::packing
