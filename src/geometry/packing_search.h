// Packing rectangles into sheets, or into one strip, by guillotine cuts: a first layout at once by
// best-fit insertion, then ruin and recreate towards a goal (a budget for sheets, a height for the
// strip) that is tightened each time every piece has found its place.
//
// S. Gardeyn, T. Wauters, "A goal-driven ruin and recreate heuristic for the 2D variable-sized bin
// packing problem with guillotine constraints", European Journal of Operational Research 301
// (2022), https://arxiv.org/html/2508.19306v1; the trees and the insertion are those of
// packing_slicing.h. A worse layout is accepted as by E. Burke, Y. Bykov, "The late acceptance
// hill-climbing heuristic", European Journal of Operational Research 258 (2017).
//
// A step is one ruin and recreate. Results are the same for the same input and steps.
#pragma once

#include "geometry/packing_slicing.h"

namespace splay::packing {

struct PackedSheet {
  int stock = -1;
  SlicingTree tree;
};

struct Packing {
  std::vector<PackedSheet> sheets;
  std::vector<int> unplaced;  // pieces that fit no sheet on hand
  double cost = 0;            // of the sheets
  std::int64_t steps = 0;     // spent
};

// Packs all pieces at little cost. The search ends when the cost reaches `enough` (a proven bound,
// see packing_bound.h) or the effort is spent. If some piece fits no sheet, or the sheets on hand
// do not suffice, the pieces left are in `unplaced`.
Packing pack_sheets(const std::vector<Stock>& stocks, const std::vector<Piece>& pieces,
                    const Effort& effort, double enough = 0);

// Goes on from a packing of the same stocks and pieces.
void improve_sheets(Packing& packing, const std::vector<Stock>& stocks,
                    const std::vector<Piece>& pieces, const Effort& effort, double enough = 0);

// Moves the pieces of a complete packing so that its emptiest sheet keeps a larger off-cut over its
// full width or height. The sheets used stay the same.
void gather_off_cut(Packing& packing, const std::vector<Piece>& pieces, const Effort& effort);

// Packs all pieces into a strip of the given width at little height; the packing has one sheet of
// that height. Throws std::invalid_argument if a piece is wider than the strip in every position.
Packing pack_strip(Units width, const std::vector<Piece>& pieces, const Effort& effort);

}  // namespace splay::packing
