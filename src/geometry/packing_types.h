// Rectangles to be cut from rectangles by edge-to-edge (guillotine) cuts: the words shared by the
// searches of this folder.
//
// Lengths are whole numbers of some unit (`Units`) chosen by the caller, so that sums are exact;
// the searches know nothing of kerf. A kerf k is met by adding k to every piece and to every sheet:
// a sheet of W + k parts into pieces of w + k exactly when W parts into pieces of w with a kerf
// between neighbours. packing_sheets.h does this for sheets measured in millimetres.
// The origin is the lower left corner of a sheet, x along its width, y along its height.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

namespace splay::packing {

using Units = std::int64_t;

// One rectangle to be cut. `may_turn` allows a quarter turn.
struct Piece {
  Units width = 0;
  Units height = 0;
  bool may_turn = false;
};

inline double area(const Piece& piece) {
  return static_cast<double>(piece.width) * static_cast<double>(piece.height);
}

// A kind of sheet. `count` is how many are on hand, -1 for as many as wanted. `cost` is what using
// one costs, in any unit, at least 0.
struct Stock {
  Units width = 0;
  Units height = 0;
  std::int64_t count = -1;
  double cost = 1;
};

// Areas go beyond what Units hold exactly.
constexpr double product(Units a, Units b) {
  return static_cast<double>(a) * static_cast<double>(b);
}

inline constexpr double thinnest_cut = 1e-3;  // mm of material: no saw takes less off

// The direction along which a region is divided: a cut with axis x is a line of constant x.
enum class Axis : std::uint8_t { x, y };
constexpr Axis other(Axis axis) { return axis == Axis::x ? Axis::y : Axis::x; }

enum class Content : std::uint8_t { split, piece, off_cut };

// A region of a sheet: divided by one straight cut from edge to edge, or a piece, or left over.
struct CutNode {
  Units x = 0, y = 0, width = 0, height = 0;
  Content content = Content::off_cut;
  Axis axis = Axis::x;          // of the cut
  Units at = 0;                 // where the cut lies, in sheet coordinates
  int first = -1, second = -1;  // the two sides of the cut: indices into the tree
  int piece = -1;               // index of the piece
  bool turned = false;          // whether the piece lies turned by a quarter
};

// The cuts of one sheet. Node 0 is the whole sheet; children come after their parent.
using CutTree = std::vector<CutNode>;

// How much work a search may do, counted in its own steps and never in seconds, so that the same
// input always gives the same result. `progress`, if given, is called at every better result and
// every thousand steps with the steps done and the value reached; the search stops with the best
// result so far when it returns false.
struct Effort {
  std::int64_t steps = 0;
  std::function<bool(std::int64_t done, double value)> progress;
};

}  // namespace splay::packing
