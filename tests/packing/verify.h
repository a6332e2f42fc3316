// Checks of layouts that know nothing of how they were found: rectangles, sheets and a saw only.
// Every function returns the first thing wrong, or `sound` if nothing is.
#pragma once

#include <string>

#include "geometry/packing_boards.h"
#include "geometry/packing_search.h"
#include "geometry/packing_sheets.h"

namespace splay::packing {
inline constexpr double inch = 25.4;  // mm, exactly (NIST SP 811)
}

namespace splay::packing::verify {

inline const std::string sound;  // nothing wrong

struct Rect {
  double x = 0, y = 0, width = 0, height = 0;
};

// Inside the sheet, a kerf apart, and parted by cuts from edge to edge alone: a cut is looked for
// between the rectangles themselves, again on either side of it, and so on.
std::string rectangles(const std::vector<Rect>& rects, const Rect& sheet, double kerf,
                       double tolerance);

// A cut tree in whole units: every piece within its allowed positions and at most or exactly the
// number of times given (by index of `pieces`).
std::string tree(const CutTree& tree, Units width, Units height, const std::vector<Piece>& pieces,
                 const std::vector<std::int64_t>& most);

// The whole plan: every copy of every part placed once or listed as unplaced, sizes and grain kept,
// sequences together and in order, sheets within their count, areas as stated; and the cuts, made
// one after the other on a sheet, give exactly the parts and the off-cuts.
std::string plan(const SheetTask& task, const SheetPlan& plan);

std::string plan(const BoardTask& task, const BoardPlan& plan);

// Every sheet's tree sound, and every piece once: on a sheet or unplaced.
std::string placed_once(const Packing& packing, const std::vector<Piece>& pieces);

}  // namespace splay::packing::verify
