// Will it hold, move, stand and fit through the door: what follows from the solids, the woods and
// the room, for the checks, the pages and the report. Millimetres, newtons, kilograms.
#pragma once

#include <string>
#include <vector>

#include "geometry/polygon.h"
#include "geometry/vec.h"

namespace splay::fabrication {

struct Plan;

// A solid wood part across its grain, from its width as made. Signed: shrinking is negative.
struct WidthChange {
  int row = 0;
  double width = 0;
  double least = 0, greatest = 0;  // at the driest, at the dampest
  std::string held_by;             // mark of a part that lets it move nowhere, "" when none
  double held_width = 0;           // over how much of its width
  bool stops = false;              // held over more than wood stands
};

// A level part that is carried only at places along its length.
struct ShelfSag {
  int row = 0;
  double span = 0;   // clear, between the supports that are furthest apart
  double load = 0;   // N over the span
  double sag = 0;    // when first loaded
  double later = 0;  // after years
  double limit = 0;
  bool known = false;  // the stiffness is; else nothing but span and load holds
  bool rail = false;   // on edge, the load at its middle, for a short time
  bool holds() const { return later <= limit; }
};

// How far the piece can be tipped over one edge of its feet before it falls by itself.
struct TippingEdge {
  std::string way;   // "forwards", "backwards", "to the left", "to the right"
  double reach = 0;  // from the centre of mass to the edge, level
  double angle = 0;  // radians
  double force = 0;  // N, pushing level at the top, empty
  double top = 0;    // height of the top
};

struct Balance {
  double mass = 0;
  Vec3 centre, low, high;          // of mass; and the piece's overall box
  std::vector<TippingEdge> edges;  // none for a piece that hangs
  bool open = false;               // reckoned with its doors and drawers open
  double pulled = 0;  // mm that what is open stands out past the front edge of the feet
  double hangs = 0;   // kg on the foremost edge that tip it; 0 when nothing stands out
};

// A drawer pulled out in the model.
struct Opening {
  std::string name;
  double travel = 0;    // mm it is to come out
  double opens = 0;     // mm it does
  std::string touches;  // the part that stops it, "" when none does
};

// The play of a door or drawer front between the two edges of its opening, along one direction.
struct Play {
  std::string name, way;  // way: "across" or "up"
  double gaps = 0;        // both together, from the solids
  double swells = 0;      // from made to dampest
  double cuts = 0;        // what the shop's accuracy may take off
  double needs() const { return swells + cuts; }
  bool enough() const { return gaps >= needs() - 1e-6; }
};

// A way the piece has to go: which two of its sizes have to pass it.
struct Passage {
  std::string name;
  double across = 0, up = 0;  // of the piece as it passes best
  bool passes = false;
};

struct Soundness {
  double made = 0, driest = 0, dampest = 0;  // moisture content, percent
  std::vector<WidthChange> changes;
  std::vector<ShelfSag> shelves;
  std::vector<Balance> balances;  // closed, then open when something opens
  std::vector<Passage> passages;
  std::vector<Opening> openings;
  std::vector<Play> plays;
  double turned_up = 0;  // the height it needs while it is turned up from lying, at the least
};

// Each judges one thing into plan.soundness and appends its findings: "held-across-grain" (stop),
// "shelf-sags", "tips-easily", "clothing-storage", "too-large-for-way", "too-high-to-turn-up",
// "drawer-cannot-open" (stop), "drawer-meets-door", "play-too-small".
void judge_movement(Plan& plan);
void judge_shelves(Plan& plan);
void judge_balance(Plan& plan);
void judge_passage(Plan& plan);
void judge_openings(Plan& plan);
void judge_play(Plan& plan);

// How far the corners of a four-sided frame with these sides are out of square, radians, by its two
// diagonals as measured: of a parallelogram they are d2^2 - d1^2 = 4 a b sin(error).
double out_of_square(double diagonal_1, double diagonal_2, double side_1, double side_2);

// The height that a piece this high and this deep needs while it is turned up.
double turning_height(double height, double depth);

}  // namespace splay::fabrication
