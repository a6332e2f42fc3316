// Will it hold, move, stand and fit through the door: what follows from the solids, the woods and
// the room, for the checks, the pages and the report. Millimetres, newtons, kilograms.
#pragma once

#include <string>
#include <vector>

#include "geometry/polygon.h"
#include "geometry/vec.h"
#include "model/room.h"

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

// A solid panel that only grooves hold, across its grain, pinned in its middle.
struct PanelRoom {
  int row = 0;
  double room = 0;     // mm that both grooves leave it, from the solids: twice the lesser
  double swells = 0;   // from made to dampest
  double in = 0;       // how far it reaches into the shallower groove
  double shrinks = 0;  // from made to driest
};

// A pin that is fast in one part and runs in a slot of another, of solid wood that moves across its
// grain about its middle: a breadboard's outer pins.
struct PinSlot {
  int row = 0;         // of the part with the slot
  std::string pin_in;  // mark of the other
  double off = 0;      // mm from the part's middle
  double pin = 0;      // its diameter
  double length = 0;   // of the slot, from the solid: the pin and twice the lesser room beside it
  double needs = 0;    // the pin and twice what the wood moves there to one side
  bool enough() const { return length >= needs - 1e-6; }
};

// A level part that is carried only at places along its length. Of its two long edges the one that
// sags more counts.
struct ShelfSag {
  struct Edge {
    std::string name;
    double sag = 0;  // when first loaded
  };
  int row = 0;
  double span = 0;   // clear, between the supports that are furthest apart
  double load = 0;   // N over the span
  double sag = 0;    // when first loaded
  double later = 0;  // after years
  double limit = 0;
  double can_span = 0;                 // with what is joined to it
  std::vector<Edge> edges;             // two; none of a rail
  std::vector<std::string> joined;     // marks of what stiffens it along its length
  std::vector<std::string> uncounted;  // and of what would, were its own stiffness known
  bool known = false;                  // the stiffness is; else nothing but span and load holds
  bool rail = false;                   // on edge, the load at its middle, for a short time
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

// What a drawer holds when it is full: its inside by 16 CFR 1261's measure, width by depth by the
// height from its bottom to an eighth of an inch under the lowest thing over it.
struct DrawerLoad {
  std::string name;
  double volume = 0;  // mm3
  double mass = 0;    // kg
  Vec3 centre;        // shut
};

struct Balance {
  double mass = 0;                 // kg, of what is in its drawers too when they are loaded
  Vec3 centre, low, high;          // of mass; and the piece's overall box
  std::vector<TippingEdge> edges;  // none for a piece that hangs
  bool open = false;               // reckoned with its doors and drawers open
  bool loaded = false;             // and its drawers full
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

// A way something has to go: its box as it passes best.
struct Passage {
  std::string name;
  double across = 0, up = 0, along = 0;
  bool passes = false;
};

// What is carried in by itself where the whole doesn't pass.
struct SubAssembly {
  std::vector<int> parts;         // indices into Assembly::parts, ascending
  Vec3 size;                      // of its smallest box, the longest side first
  double mass = 0;                // kg
  std::vector<Passage> passages;  // each way
  double turned_up = 0;           // the height it needs while it is turned up, as it will stand
};

// A joint that isn't glued, and what holds it.
struct DryJoint {
  int joint = 0;  // index into Assembly::joints
  std::string how;
};

// A break at which a piece comes apart and goes together again on the spot, along straight lines.
struct KnockDown {
  std::vector<DryJoint> joints;
  std::vector<SubAssembly> pieces;  // heaviest first; empty where none is needed
  std::vector<int> too_large;       // parts that don't pass by themselves: no break helps
  bool found() const { return !pieces.empty() && too_large.empty(); }
};

struct Soundness {
  double made = 0, driest = 0, dampest = 0;  // moisture content, percent
  std::vector<WidthChange> changes;
  std::vector<PanelRoom> panels;
  std::vector<PinSlot> slots;
  std::vector<ShelfSag> shelves;
  std::vector<Balance> balances;  // shut; open when something opens; open and loaded with drawers
  std::vector<DrawerLoad> loads;
  std::vector<Passage> passages;
  KnockDown knock_down;
  std::vector<Opening> openings;
  std::vector<Play> plays;
  double turned_up = 0;  // the height it needs while it is turned up from lying, at the least
};

// Each judges one thing into plan.soundness and appends its findings: "held-across-grain" (stop),
// "screws-need-slots", "panel-too-tight" (stop), "panel-comes-out", "slot-too-short" (stop),
// "shelf-sags", "tips-easily", "clothing-storage", "too-large-for-way", "too-high-to-turn-up",
// "drawer-cannot-open" (stop), "drawer-meets-door", "play-too-small".
void judge_movement(Plan& plan);
void judge_panels(Plan& plan);
void judge_slots(Plan& plan);
void judge_balance(Plan& plan);
void judge_passage(Plan& plan);
void judge_shelves(Plan& plan);  // what the way in has made up dry doesn't stiffen a shelf
void judge_openings(Plan& plan);
void judge_play(Plan& plan);

// How far the corners of a four-sided frame with these sides are out of square, radians, by its two
// diagonals as measured: of a parallelogram they are d2^2 - d1^2 = 4 a b sin(error).
double out_of_square(double diagonal_1, double diagonal_2, double side_1, double side_2);

// The height that a piece this high and this deep needs while it is turned up.
double turning_height(double height, double depth);

// The longest rectangle of a width that turns a right-angled corner between passages so wide, lying
// flat; negative when it is wider than either. With no width: (a^(2/3) + b^(2/3))^(3/2).
double longest_round_corner(double width, double passage_a, double passage_b);

// How a box of these sizes passes a way best: on end, on its side or on its back.
Passage best_passage(const model::Way& way, const std::vector<Vec3>& boxes);
// Does whatever needs so much height while it is turned up have it?
bool turns_up(const model::Room& room, double height);

// What holds a joint of this kind when it isn't glued: "no glue; a bolt through the cheeks".
std::string held_dry(const std::string& joint_kind);

// What joins are left dry so that everything passes; of no need when the plan's piece passes whole.
// Needs plan.rows and plan.soundness.balances.
KnockDown find_knock_down(const Plan& plan);

}  // namespace splay::fabrication
