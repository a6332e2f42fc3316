#include "geometry/packing_slicing.h"

#include <algorithm>

namespace splay::packing {

namespace {}  // namespace

SlicingTree::SlicingTree(Units width, Units height)
    : nodes_(1), sheet_{width, height}, free_area_(product(width, height)) {
  nodes_[0].used = true;
  nodes_[0].room[0] = width;
  nodes_[0].room[1] = height;
}

// One piece in one position against every row: `length[axis]` is its size along that axis.
struct SlicingTree::Search {
  Units length[2];
  bool turned;
  double piece_area;
  std::optional<Slot>& best;

  void offer(int node, int across, double waste) const {
    const double loss = waste / piece_area;
    if (!best || loss < best->loss) best = Slot{node, across, turned, loss};
  }
};

void SlicingTree::search_row(int row, Search& search) const {
  const Node& r = at(row);
  const int along = r.axis, over = 1 - r.axis;
  const Units length = search.length[along], thickness = search.length[over];
  const Units slack = r.room[along] - r.size[along];
  if (thickness > r.room[over]) return;
  if (length <= slack) {
    const Units step = thickness - r.size[over];
    search.offer(row, 0, step <= 0 ? product(length, -step) : product(r.size[along], step));
  }
  int across = 0;
  Units run = 0;
  double hidden = 0;  // what lies unused between the chosen blocks and the thickest of them
  Units under = 0;
  for (int b = r.first; b >= 0; b = at(b).next) {
    const Node& block = at(b);
    if (block.size[over] + thickness > r.room[over]) break;
    hidden += product(run, block.size[over] - under);
    under = block.size[over];
    run += block.size[along];
    ++across;
    if (across == 1 && block.first >= 0) continue;  // the block is a row itself and will be asked
    if (block.next < 0 && row != 0) break;          // across all: the row above will be asked
    const Units step = length - run;
    if (step > slack) continue;
    const double waste = step > 0 ? product(step, under) : product(-step, thickness);
    const Units rise = under + thickness - r.size[over];
    const double lost = rise > 0 ? product(r.size[along] - run, rise) : 0;
    search.offer(row, across, waste + hidden + lost);
  }
}

std::optional<Slot> SlicingTree::best_slot(const Piece& piece) const {
  std::optional<Slot> best;
  if (area(piece) > free_area_) return best;
  const int positions = piece.may_turn && piece.width != piece.height ? 2 : 1;
  for (int turn = 0; turn < positions; ++turn) {
    const Units w = turn == 0 ? piece.width : piece.height;
    const Units h = turn == 0 ? piece.height : piece.width;
    if (w > sheet_[0] || h > sheet_[1]) continue;
    Search search{{w, h}, turn == 1, area(piece), best};
    for (int n = 0; n < node_count(); ++n)
      if (at(n).used && (at(n).first >= 0 || n == 0)) search_row(n, search);
  }
  return best;
}

int SlicingTree::new_node() {
  if (spare_.empty()) {
    nodes_.emplace_back();
    spare_.push_back(node_count() - 1);
  }
  const int node = spare_.back();
  spare_.pop_back();
  at(node) = Node{};
  at(node).used = true;
  return node;
}

int SlicingTree::new_row(int axis) {
  const int row = new_node();
  at(row).axis = static_cast<std::uint8_t>(axis);
  return row;
}

void SlicingTree::link(int row, int block) {
  const int over = 1 - at(row).axis;
  const Units thickness = at(block).size[over];
  int* place = &at(row).first;
  while (*place >= 0 && at(*place).size[over] < thickness) place = &at(*place).next;
  at(block).next = *place;
  at(block).parent = row;
  *place = block;
}

void SlicingTree::unlink(int block) {
  int* place = &at(at(block).parent).first;
  while (*place != block) place = &at(*place).next;
  *place = at(block).next;
  at(block).next = -1;
  at(block).parent = -1;
}

void SlicingTree::measure(int row) {
  Node& r = at(row);
  const int along = r.axis, over = 1 - r.axis;
  r.size[along] = r.size[over] = 0;
  for (int b = r.first; b >= 0; b = at(b).next) {
    r.size[along] += at(b).size[along];
    r.size[over] = at(b).size[over];  // the last is the thickest
  }
}

void SlicingTree::measure_upwards(int row) {
  while (row >= 0) {
    const int parent = at(row).parent;
    measure(row);
    if (parent >= 0) {
      unlink(row);
      link(parent, row);
    }
    row = parent;
  }
  share_room(0);
}

void SlicingTree::share_room(int row) {
  const Node& r = at(row);
  const int along = r.axis, over = 1 - r.axis;
  const Units slack = r.room[along] - r.size[along];
  for (int b = r.first; b >= 0; b = at(b).next) {
    at(b).room[along] = at(b).size[along] + slack;
    at(b).room[over] = r.room[over];
    if (at(b).first >= 0) share_room(b);
  }
}

void SlicingTree::insert(int piece_index, const Piece& piece, const Slot& slot) {
  const int leaf = new_node();
  at(leaf).piece = piece_index;
  at(leaf).turned = slot.turned;
  at(leaf).size[slot.turned ? 1 : 0] = piece.width;
  at(leaf).size[slot.turned ? 0 : 1] = piece.height;
  free_area_ -= area(piece);
  ++leaves_;
  const int row = slot.node;
  if (slot.across == 0) {
    link(row, leaf);
    measure_upwards(row);
    return;
  }
  const int stack = new_row(1 - at(row).axis);
  int below = at(row).first;
  if (slot.across == 1) {
    unlink(below);
  } else {
    below = new_row(at(row).axis);
    for (int i = 0; i < slot.across; ++i) {
      const int block = at(row).first;
      unlink(block);
      link(below, block);
    }
    measure(below);
  }
  link(stack, below);
  link(stack, leaf);
  measure(stack);
  link(row, stack);
  measure_upwards(row);
}

void SlicingTree::release(int node, std::vector<int>& pieces) {
  for (int b = at(node).first; b >= 0;) {
    const int next = at(b).next;
    release(b, pieces);
    b = next;
  }
  if (at(node).piece >= 0) {
    pieces.push_back(at(node).piece);
    free_area_ += product(at(node).size[0], at(node).size[1]);
    --leaves_;
  }
  at(node).used = false;
  spare_.push_back(node);
}

// A row left with one block is no row: the block takes its place, and if that is a row itself its
// blocks join the row above, which has the same axis.
void SlicingTree::collapse(int row) {
  if (row == 0) return;
  const int only = at(row).first;
  if (only < 0 || at(only).next >= 0) return;
  const int parent = at(row).parent;
  unlink(only);
  unlink(row);
  if (at(only).first < 0) {
    link(parent, only);
  } else {
    while (at(only).first >= 0) {
      const int block = at(only).first;
      unlink(block);
      link(parent, block);
    }
    at(only).used = false;
    spare_.push_back(only);
  }
  at(row).used = false;
  spare_.push_back(row);
}

std::vector<int> SlicingTree::remove(int node) {
  std::vector<int> pieces;
  if (node == 0) {
    const Units width = sheet_[0], height = sheet_[1];
    pieces = this->pieces();
    *this = SlicingTree(width, height);
    return pieces;
  }
  const int row = at(node).parent;
  unlink(node);
  release(node, pieces);
  const int parent = at(row).parent;
  const bool gone = row != 0 && at(row).first >= 0 && at(at(row).first).next < 0;
  if (gone) collapse(row);
  measure_upwards(gone ? parent : row);
  return pieces;
}

bool SlicingTree::resize(Units width, Units height) {
  if (width < used_width() || height < used_height()) return false;
  free_area_ += product(width, height) - product(sheet_[0], sheet_[1]);
  sheet_[0] = at(0).room[0] = width;
  sheet_[1] = at(0).room[1] = height;
  share_room(0);
  return true;
}

int SlicingTree::pieces_below(int node) const {
  if (at(node).first < 0) return at(node).piece >= 0 ? 1 : 0;
  int sum = 0;
  for (int b = at(node).first; b >= 0; b = at(b).next) sum += pieces_below(b);
  return sum;
}

std::vector<int> SlicingTree::pieces() const {
  std::vector<int> found;
  for (const Node& n : nodes_)
    if (n.used && n.piece >= 0) found.push_back(n.piece);
  return found;
}

}  // namespace splay::packing
