// Between sheets in millimetres (packing_sheets.h) and the pieces and stocks of the searches: kerf,
// trim and sequences (part of packing_sheets.h).
#pragma once

#include "geometry/packing_sheets.h"

namespace splay::packing {

// The pieces to pack: single parts, and sequences as one piece each. Kerf added to all.
struct SheetPieces {
  struct Origin {
    int part = -1;
    int sequence = -1;  // the whole sequence, if not -1
  };
  Units kerf = 0;
  std::vector<Stock> stocks;
  std::vector<Piece> pieces;
  std::vector<Origin> origins;
};

SheetPieces pieces_of(const SheetTask& task);

// The cuts of one sheet of stock `stock`, back in millimetres.
SheetLayout layout_of(const SheetTask& task, const SheetPieces& pieces, int stock, CutTree tree);

}  // namespace splay::packing
